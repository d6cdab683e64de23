/** What a strict parser says of a text. */
import { SaxesParser } from 'saxes';

const ENTITY = /<!ENTITY ([^ ]+) "([^"]+)">/g;

/** Whether a text is well-formed XML with namespaces, as saxes judges; it knows the entities that the text declares. */
export function isWellFormed(text: string): boolean {
  const parser = new SaxesParser({ xmlns: true });
  let isFaultless = true;
  parser.on('error', () => {
    isFaultless = false;
  });
  parser.on('doctype', (doctype) => {
    for (const [, name = '', value = ''] of doctype.matchAll(ENTITY)) parser.ENTITIES[name] ??= value;
  });
  parser.write(text).close();
  return isFaultless;
}

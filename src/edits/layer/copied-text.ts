/** Elements copied into the same file: their ids become others, and what refers to these follows. */
import { elementsWithin } from '../../markup/query';
import type { Attribute, ElementNode } from '../../markup/tree';
import { applyEdits, type TextEdit } from '../../text/text';

/** Ids that are not given yet. */
export class FreeIds {
  private readonly taken: Set<string>;

  constructor(root: ElementNode) {
    const ids = [...elementsWithin(root)].flatMap((element) => idOf(element)?.value ?? []);
    this.taken = new Set(ids);
  }

  /** The id itself if it is free, else the id with the first number from 2 that makes it so. */
  take(wanted: string): string {
    let id = wanted;
    for (let number = 2; this.taken.has(id); number += 1) id = `${wanted}-${number}`;
    this.taken.add(id);
    return id;
  }
}

export function idOf(element: ElementNode): Attribute | undefined {
  return element.attributes.find(({ name }) => name === 'id');
}

/**
 * The text of each of the elements, with other ids.
 * @param more edits of the same text that go into the copies
 */
export function copiesOf(
  text: string,
  elements: readonly ElementNode[],
  free: FreeIds,
  more: readonly TextEdit[] = [],
): string[] {
  const inside = elements.flatMap((element) => [...elementsWithin(element)]);
  const ids = inside.flatMap((element) => idOf(element) ?? []);
  const renamed = new Map(ids.map(({ value }) => [value, free.take(value)]));
  const references = inside.flatMap(({ attributes }) =>
    attributes.flatMap((attribute) => {
      const now = withReferences(text, attribute, renamed);
      return now === undefined ? [] : [valueEdit(attribute, now)];
    }),
  );
  const edits = [...ids.map((id) => valueEdit(id, renamed.get(id.value) ?? id.value)), ...references, ...more];
  return elements.map(({ span: { from, to } }) => {
    const own = edits.filter(({ span }) => span.from >= from && span.to <= to);
    const moved = own.map((edit) => ({ ...edit, span: { from: edit.span.from - from, to: edit.span.to - from } }));
    return applyEdits(text.slice(from, to), moved);
  });
}

/** The text of a value whose `#id` or `url(#id)` are of renamed elements; undefined where none is. */
function withReferences(
  text: string,
  { localName, valueSpan }: Attribute,
  renamed: ReadonlyMap<string, string>,
): string | undefined {
  const written = text.slice(valueSpan.from, valueSpan.to);
  if (!written.includes('#')) return undefined;
  const rename = (whole: string, before: string, id: string, after: string): string => {
    const now = renamed.get(id);
    return now === undefined ? whole : `${before}${now}${after}`;
  };
  const urls = written.replace(/(url\(\s*["']?#)([^"')\s]+)(["']?\s*\))/g, rename);
  const now = localName === 'href' ? urls.replace(/^(\s*#)(\S+)(\s*)$/, rename) : urls;
  return now === written ? undefined : now;
}

export function valueEdit({ valueSpan }: Attribute, text: string): TextEdit {
  return { span: valueSpan, text };
}

/** As the value of an attribute in double quotes. What XML 1.0 section 2.2 does not allow becomes U+FFFD. */
export function escaped(value: string): string {
  const allowed = value.replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd');
  return allowed.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}

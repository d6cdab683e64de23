/** Names and the prefixes in force (Namespaces in XML 1.0; XML 1.0, production 5). */
import { XML_NAMESPACE, XMLNS_NAMESPACE } from './namespaces';

const NAME_START =
  ':A-Z_a-z\\u{C0}-\\u{D6}\\u{D8}-\\u{F6}\\u{F8}-\\u{2FF}\\u{370}-\\u{37D}\\u{37F}-\\u{1FFF}\\u{200C}-\\u{200D}' +
  '\\u{2070}-\\u{218F}\\u{2C00}-\\u{2FEF}' +
  '\\u{3001}-\\u{D7FF}\\u{F900}-\\u{FDCF}\\u{FDF0}-\\u{FFFD}\\u{10000}-\\u{EFFFF}';
const NAME_REST = `${NAME_START}\\-.0-9\\u{B7}\\u{300}-\\u{36F}\\u{203F}-\\u{2040}`;
const NAME_PATTERN = new RegExp(`^[${NAME_START}][${NAME_REST}]*$`, 'u');
const NAME_START_PATTERN = new RegExp(`^[${NAME_START}]`, 'u');

const LOWER_A = 97;
const LOWER_Z = 122;

export function isName(text: string): boolean {
  return NAME_PATTERN.test(text);
}

export function startsName(text: string, offset: number): boolean {
  const code = text.charCodeAt(offset) | 32;
  if (code >= LOWER_A && code <= LOWER_Z) return true;
  return NAME_START_PATTERN.test(text.slice(offset, offset + 2));
}

export interface SplitName {
  readonly prefix: string;
  readonly localName: string;
}

/** A name that was met before, as written and in its parts. */
export interface KnownName extends SplitName {
  readonly name: string;
}

/** `svg:rect` gives `svg` and `rect`; a name without a colon, or with nothing on one side of it, has no prefix. */
export function splitName(name: string): SplitName {
  const colon = name.indexOf(':');
  if (colon <= 0 || colon === name.length - 1) return { prefix: '', localName: name };
  return { prefix: name.slice(0, colon), localName: name.slice(colon + 1) };
}

/** The prefixes in force while a document is read from front to back. All steps take constant time at any depth. */
export class NamespaceScope {
  private readonly uris = new Map<string, string[]>([
    ['', ['']],
    ['xml', [XML_NAMESPACE]],
    ['xmlns', [XMLNS_NAMESPACE]],
  ]);

  declare(prefix: string, uri: string): void {
    const declared = this.uris.get(prefix);
    if (declared === undefined) this.uris.set(prefix, [uri]);
    else declared.push(uri);
  }

  /** Takes back the latest declaration of each prefix, when the element that made it ends. */
  leave(prefixes: readonly string[]): void {
    for (const prefix of prefixes) this.uris.get(prefix)?.pop();
  }

  /** The URI that a prefix stands for; undefined where it is not declared. The empty prefix always has one. */
  resolve(prefix: string): string | undefined {
    return this.uris.get(prefix)?.at(-1);
  }
}

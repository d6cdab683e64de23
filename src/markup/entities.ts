/** Character references and entities (XML 1.0, section 4), bounded against entities that multiply each other. */
import { checkpoint } from '../base/checkpoint';
import { MARKUP_ROOM, shortened } from '../text/wording';

const PREDEFINED: ReadonlyMap<string, string> = new Map([
  ['lt', '<'],
  ['gt', '>'],
  ['amp', '&'],
  ['apos', "'"],
  ['quot', '"'],
]);

const MAX_NESTING = 32;
/** Code units that all entities of a document may grow to, above four times the length of its text. */
const EXPANSION_ALLOWANCE = 1_000_000;
/** No name of an entity is longer; what stands behind a lone `&` is not searched further for a semicolon. */
const MAX_REFERENCE_LENGTH = 256;

export type EntityResult = { readonly text: string } | { readonly fault: string };

/** What stands at a `&`: a reference up to its semicolon, or nothing that could be one. */
export interface EntityReference {
  /** Without `&` and `;`. */
  readonly name: string;
  readonly to: number;
}

/** The reference that begins with the `&` at `from`, if one ends before `limit`. */
export function referenceAt(text: string, from: number, limit: number): EntityReference | undefined {
  const stop = Math.min(limit, from + MAX_REFERENCE_LENGTH);
  for (let to = from + 1; to < stop; to += 1) {
    const code = text.charCodeAt(to);
    if (code === 59) return to === from + 1 ? undefined : { name: text.slice(from + 1, to), to: to + 1 };
    if (code === 38 || code === 60 || code === 34 || code === 39 || code <= 32) return undefined;
  }
  return undefined;
}

export class EntityTable {
  private readonly literals = new Map<string, string | undefined>();
  private readonly expanded = new Map<string, EntityResult>();
  private allowance: number;

  constructor(textLength: number) {
    this.allowance = EXPANSION_ALLOWANCE + 4 * textLength;
  }

  /** Declares an entity; undefined for one whose text is in another file. The first declaration of a name holds. */
  declare(name: string, literal: string | undefined): void {
    if (!this.literals.has(name)) this.literals.set(name, literal);
  }

  /** What a reference, given without `&` and `;`, stands for. */
  resolve(name: string): EntityResult {
    const result = name.startsWith('#') ? characterReference(name) : this.expand(name, 0);
    if ('fault' in result) return result;
    this.allowance -= result.text.length;
    return this.allowance < 0 ? { fault: tooMuch(name) } : result;
  }

  private expand(name: string, depth: number): EntityResult {
    const predefined = PREDEFINED.get(name);
    if (predefined !== undefined) return { text: predefined };
    const known = this.expanded.get(name);
    if (known !== undefined) return known;
    const result = this.expandLiteral(name, depth);
    this.expanded.set(name, result);
    return result;
  }

  private expandLiteral(name: string, depth: number): EntityResult {
    if (!this.literals.has(name)) return { fault: unknownEntity(name) };
    const literal = this.literals.get(name);
    if (literal === undefined) return { fault: `The text of ${told(name)} is in another file, which is not read.` };
    if (depth >= MAX_NESTING) return { fault: `${told(name)} leads back to itself, or is nested too deep.` };
    // Found again while it is being expanded, an entity leads back to itself.
    this.expanded.set(name, { fault: `${told(name)} leads back to itself, or is nested too deep.` });
    return this.expandReferences(name, literal, depth);
  }

  private expandReferences(name: string, literal: string, depth: number): EntityResult {
    const parts: string[] = [];
    let done = 0;
    for (let at = literal.indexOf('&'); at >= 0; at = literal.indexOf('&', at + 1)) {
      checkpoint(4);
      const reference = referenceAt(literal, at, literal.length);
      if (reference === undefined) continue;
      const inner = reference.name.startsWith('#')
        ? characterReference(reference.name)
        : this.expand(reference.name, depth + 1);
      if ('fault' in inner) return inner;
      this.allowance -= inner.text.length;
      if (this.allowance < 0) return { fault: tooMuch(name) };
      parts.push(literal.slice(done, at), inner.text);
      done = reference.to;
      at = done - 1;
    }
    return { text: parts.join('') + literal.slice(done) };
  }
}

function characterReference(name: string): EntityResult {
  const hexadecimal = name.startsWith('#x');
  const digits = name.slice(hexadecimal ? 2 : 1);
  const wellFormed = (hexadecimal ? /^[0-9a-fA-F]+$/ : /^[0-9]+$/).test(digits);
  const code = wellFormed ? parseInt(digits, hexadecimal ? 16 : 10) : NaN;
  if (!isXmlCharacter(code)) return { fault: `${told(name)} is not a character that XML allows.` };
  return { text: String.fromCodePoint(code) };
}

/** XML 1.0, production 2. */
function isXmlCharacter(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || (code >= 0x10000 && code <= 0x10ffff);
}

/** A reference as messages have room for it. */
function told(name: string): string {
  return `&${shortened(name, MARKUP_ROOM)};`;
}

function unknownEntity(name: string): string {
  return `${told(name)} is not declared in this file. For a plain "&" write &amp;.`;
}

function tooMuch(name: string): string {
  return `${told(name)} makes the file far too large, so it is left as it is.`;
}

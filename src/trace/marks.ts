/**
 * Marks: what the text of a traced program carries from the literal or call that made an element to the file that it
 * writes. They are attributes. Their values have no character that a format string, a regular expression's
 * replacement or an escape would change.
 */
import type { GeneratorMarks } from '../report/generator';

/** Begins the name of every mark, of any run. */
export const MARK_PREFIX = 'data-tombolo-at-';

/** Parts places in a mark. */
export const PLACE_SEPARATOR = ',';

/** A path as marks have it: what is no plain character is written as `~` and two hexadecimal digits a byte. */
export function encodePath(path: string): string {
  return path.replace(/[^\w./-]/gu, (character) =>
    [...new TextEncoder().encode(character)].map((byte) => `~${byte.toString(16).padStart(2, '0')}`).join(''),
  );
}

function decodePath(path: string): string {
  const url = path.replace(/%/g, '%25').replace(/~([0-9a-f]{2})/g, '%$1');
  try {
    return decodeURIComponent(url);
  } catch {
    return path;
  }
}

/**
 * Marks as they may have been written: quoted in XML, escaped once more as text, in JSON or in a URL. The blank before
 * one belongs to it.
 * @param attribute the mark's name, or a pattern of it
 */
export function markPattern(attribute: string): RegExp {
  return new RegExp(`(?:\\s+|%20)(?:${attribute})(?:=|%3D)("|'|\\\\"|&quot;|&#34;|&#x22;|%22)(.{0,4000}?)\\1`, 'gi');
}

export interface Stripped {
  readonly text: string;
  readonly marks: GeneratorMarks;
}

/** Takes all marks out of a text, and says where they were. */
export function stripMarks(text: string, pattern: RegExp): Stripped {
  const offsets: number[] = [];
  const places: (readonly string[])[] = [];
  const known = new Map<string, readonly string[]>();
  const kept: string[] = [];
  let done = 0;
  let length = 0;
  for (const match of text.matchAll(pattern)) {
    const value = match[2] ?? '';
    const list = known.get(value) ?? placesIn(value);
    known.set(value, list);
    kept.push(text.slice(done, match.index));
    length += match.index - done;
    done = match.index + match[0].length;
    offsets.push(length);
    places.push(list);
  }
  return { text: kept.length === 0 ? text : kept.join('') + text.slice(done), marks: { offsets, places } };
}

function placesIn(value: string): string[] {
  return value.replace(/%3A/gi, ':').replace(/%2C/gi, PLACE_SEPARATOR).split(PLACE_SEPARATOR).map(decodePath);
}

/** Reads attribute values that are lists of numbers: `points` and `viewBox`. */
import { checkpoint } from '../base/checkpoint';
import type { Span } from '../text/text';
import { NAME_ROOM, shortened } from '../text/wording';
import { characterAt, NumberReader } from './number-reader';

export interface NumberList {
  readonly values: readonly number[];
  /** Where each number stands in the text that was read. */
  readonly spans: readonly Span[];
  readonly error: NumberListError | undefined;
}

export interface NumberListError {
  readonly message: string;
  readonly span: Span;
}

/** Numbers divided by blanks, a comma, or both. Reads up to the first error and keeps what stands before it. */
export function parseNumberList(text: string): NumberList {
  const { values, places, error } = readNumberList(text);
  const spans = values.map((_, index) => ({ from: places[2 * index]!, to: places[2 * index + 1]! }));
  return { values, spans, error };
}

/** A list in as few objects as can be: begin and end of each number's place follow one another. */
export interface CompactList {
  readonly values: number[];
  readonly places: number[];
  error: NumberListError | undefined;
}

/** Pairs of coordinates. Of an odd count the last number is dropped, and is the error (SVG 2, "points"). */
export function readPoints(text: string): CompactList {
  const list = readNumberList(text);
  const { values, places } = list;
  if (values.length % 2 === 0) return list;
  values.pop();
  const to = places.pop()!;
  const from = places.pop()!;
  const x = shortened(text.slice(from, to), NAME_ROOM);
  list.error ??= { message: `Points come in pairs: the y for ${x} is missing.`, span: { from, to } };
  return list;
}

function readNumberList(text: string): CompactList {
  const reader = new NumberReader(text);
  reader.skipBlanks();
  const list = readNumbers(reader);
  if (!reader.atEnd) list.error ??= unexpected(reader);
  return list;
}

/** Four numbers: left, top, width, height. With an error no values are given, as it makes the attribute void. */
export function parseViewBoxNumbers(text: string): NumberList {
  const { values, spans, error } = parseNumberList(text);
  const whole = trimmedSpan(text);
  const fault =
    error ??
    (values.length !== 4
      ? { message: `A viewBox has four numbers (left, top, width and height), not ${values.length}.`, span: whole }
      : negativeExtent(values, spans));
  return fault === undefined ? { values, spans, error } : { values: [], spans: [], error: fault };
}

function negativeExtent(values: readonly number[], spans: readonly Span[]): NumberListError | undefined {
  const index = values.findIndex((value, at) => at >= 2 && value < 0);
  if (index < 0) return undefined;
  return { message: `The ${index === 2 ? 'width' : 'height'} of a viewBox cannot be negative.`, span: spans[index]! };
}

function readNumbers(reader: NumberReader): CompactList {
  const values: number[] = [];
  const places: number[] = [];
  let comma = -1;
  while (reader.atNumber) {
    const from = reader.position;
    checkpoint(2);
    const value = reader.readNumber();
    const to = reader.position;
    if (!Number.isFinite(value)) {
      return { values, places, error: { message: 'This number is too large.', span: { from, to } } };
    }
    values.push(value);
    places.push(from, to);
    comma = reader.skipSeparator();
  }
  if (comma < 0) return { values, places, error: undefined };
  const message = 'A number is missing after this comma.';
  return { values, places, error: { message, span: { from: comma, to: comma + 1 } } };
}

function unexpected(reader: NumberReader): NumberListError {
  const character = characterAt(reader.text, reader.position);
  const span = { from: reader.position, to: reader.position + character.length };
  const found = character === '' ? 'The value ends too soon' : `"${character}" is not allowed here`;
  return { message: `${found}: a number was expected.`, span };
}

function trimmedSpan(text: string): Span {
  const from = text.length - text.trimStart().length;
  return { from, to: Math.max(from, text.trimEnd().length) };
}

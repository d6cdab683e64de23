/** Reads attribute values that are lists of numbers: `points` and `viewBox`. */
import type { Span } from '../text';
import { NumberReader, characterAt } from './number-reader';

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
  const reader = new NumberReader(text);
  reader.skipBlanks();
  const { values, spans, error } = readNumbers(reader);
  if (error !== undefined || reader.atEnd) return { values, spans, error };
  return { values, spans, error: unexpected(reader, 'a number was expected') };
}

/** Pairs of coordinates. Of an odd count the last number is dropped, and is the error (SVG 2, "points"). */
export function parsePoints(text: string): NumberList {
  const list = parseNumberList(text);
  if (list.values.length % 2 === 0) return list;
  const last = list.spans.at(-1)!;
  const lone = { message: `Points come in pairs: the y for ${text.slice(last.from, last.to)} is missing.`, span: last };
  return { values: list.values.slice(0, -1), spans: list.spans.slice(0, -1), error: list.error ?? lone };
}

/** Four numbers: left, top, width, height. With an error no values are given, as it makes the attribute void. */
export function parseViewBox(text: string): NumberList {
  const { values, spans, error } = parseNumberList(text);
  const whole = trimmedSpan(text);
  const fault =
    error ??
    (values.length !== 4
      ? { message: `A viewBox has four numbers: left, top, width and height. Here are ${values.length}.`, span: whole }
      : negativeExtent(values, spans));
  return fault === undefined ? { values, spans, error } : { values: [], spans: [], error: fault };
}

function negativeExtent(values: readonly number[], spans: readonly Span[]): NumberListError | undefined {
  const index = values.findIndex((value, at) => at >= 2 && value < 0);
  if (index < 0) return undefined;
  return { message: `The ${index === 2 ? 'width' : 'height'} of a viewBox cannot be negative.`, span: spans[index]! };
}

function readNumbers(reader: NumberReader): { values: number[]; spans: Span[]; error: NumberListError | undefined } {
  const values: number[] = [];
  const spans: Span[] = [];
  let comma = -1;
  while (reader.atNumber) {
    const from = reader.position;
    const value = reader.readNumber();
    const span = { from, to: reader.position };
    if (!Number.isFinite(value)) return { values, spans, error: { message: 'This number is too large.', span } };
    values.push(value);
    spans.push(span);
    comma = reader.skipSeparator();
  }
  if (comma < 0) return { values, spans, error: undefined };
  const message = 'A number was expected after this comma.';
  return { values, spans, error: { message, span: { from: comma, to: comma + 1 } } };
}

function unexpected(reader: NumberReader, expected: string): NumberListError {
  const character = characterAt(reader.text, reader.position);
  const span = { from: reader.position, to: reader.position + character.length };
  const found = character === '' ? 'The value ends too soon' : `“${character}” cannot stand here`;
  return { message: `${found}: ${expected}.`, span };
}

function trimmedSpan(text: string): Span {
  const from = text.length - text.trimStart().length;
  return { from, to: Math.max(from, text.trimEnd().length) };
}

/** Transform lists: the `transform` attribute of SVG, and the 2D functions of the CSS property of that name. */

import { defined } from '../../base/defined';
import type { Matrix } from '../../geometry/base/curve-types';
import { IDENTITY, multiply, rotation, scaling, translation } from '../../geometry/base/matrix';
import { DEGREES_PER_UNIT, PX_PER_UNIT } from '../../text/css-units';
import type { Span } from '../../text/text';
import { quoted } from '../../text/wording';

export interface TransformFunction {
  /** In lower case: `translate`, `rotate`, `skewx`, … */
  readonly name: string;
  readonly values: readonly TransformValue[];
}

/** Lengths are px, angles degrees; `%` is of the reference box. */
export interface TransformValue {
  readonly value: number;
  readonly unit: '' | '%';
}

export interface TransformError {
  readonly message: string;
  /** In the string that was read. */
  readonly span: Span;
}

export type TransformList =
  | { readonly functions: readonly TransformFunction[]; readonly error?: undefined }
  | { readonly functions?: undefined; readonly error: TransformError };

export interface ReferenceBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How many values each function takes. */
const ARITY: Readonly<Record<string, readonly number[]>> = {
  matrix: [6],
  translate: [1, 2],
  translatex: [1],
  translatey: [1],
  scale: [1, 2],
  scalex: [1],
  scaley: [1],
  rotate: [1, 3],
  skewx: [1],
  skewy: [1],
  skew: [1, 2],
};

const UNITS: Readonly<Record<string, number>> = { '': 1, ...PX_PER_UNIT, ...DEGREES_PER_UNIT };

const NAME = /[a-z][a-z0-9]*/iy;
const NUMBER = /([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(%|[a-z]*)/iy;
const BLANKS = /[ \t\r\n\f]*/y;
const SEPARATOR = /[ \t\r\n\f]*,?[ \t\r\n\f]*/y;

/**
 * Reads a transform list; `none` and blanks give an empty one.
 * The list is read as a whole: with an error anywhere, all of it is invalid (CSS Transforms 1, "transform" syntax).
 */
export function parseTransformList(text: string): TransformList {
  if (/^\s*none\s*$/i.test(text)) return { functions: [] };
  const functions: TransformFunction[] = [];
  let at = skipMatch(BLANKS, text, 0);
  while (at < text.length) {
    const read = readFunction(text, at);
    if ('message' in read) return { error: read };
    functions.push(read.read);
    at = skipMatch(SEPARATOR, text, read.end);
  }
  return { functions };
}

function skipMatch(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  pattern.exec(text);
  return Math.max(at, pattern.lastIndex);
}

function readFunction(text: string, from: number): { read: TransformFunction; end: number } | TransformError {
  NAME.lastIndex = from;
  const written = NAME.exec(text)?.[0];
  const name = written?.toLowerCase() ?? '';
  const arity = Object.hasOwn(ARITY, name) ? ARITY[name] : undefined;
  if (!written || !arity) {
    const span = { from, to: Math.min(text.length, from + (written?.length ?? 1)) };
    const what = written ? `${quoted([written])[0]} is not a 2D transform` : 'A transform begins with its name';
    return { message: `${what}: translate, scale, rotate, skewX, skewY or matrix was expected.`, span };
  }
  const open = skipMatch(BLANKS, text, from + written.length);
  if (text[open] !== '(') {
    return { message: `A "(" is missing after ${written}.`, span: { from: open, to: Math.min(text.length, open + 1) } };
  }
  return readValues(text, open + 1, { written, name, arity, from });
}

function readValues(
  text: string,
  from: number,
  head: { written: string; name: string; arity: readonly number[]; from: number },
): { read: TransformFunction; end: number } | TransformError {
  const values: TransformValue[] = [];
  let at = skipMatch(BLANKS, text, from);
  while (at < text.length && text[at] !== ')') {
    const value = readValue(text, at);
    if (!value) return { message: `"${text[at]}" is not part of a number.`, span: { from: at, to: at + 1 } };
    values.push(value.read);
    at = skipMatch(SEPARATOR, text, value.end);
  }
  const span = { from: head.from, to: Math.min(text.length, at + 1) };
  if (at >= text.length) return { message: `${head.written}( is not closed: its ")" is missing.`, span };
  if (!head.arity.includes(values.length)) {
    return { message: `${head.written} takes ${head.arity.join(' or ')} values, not ${values.length}.`, span };
  }
  return { read: { name: head.name, values }, end: at + 1 };
}

function readValue(text: string, at: number): { read: TransformValue; end: number } | undefined {
  NUMBER.lastIndex = at;
  const match = NUMBER.exec(text);
  if (!match) return undefined;
  const unit = (match[2] ?? '').toLowerCase();
  const value = Number(match[1]);
  if (unit === '%') return { read: { value, unit: '%' }, end: NUMBER.lastIndex };
  const factor = Object.hasOwn(UNITS, unit) ? UNITS[unit] : undefined;
  return factor === undefined ? undefined : { read: { value: value * factor, unit: '' }, end: NUMBER.lastIndex };
}

/** The product of the list, first function outermost. Percentages are of `box`. */
export function transformMatrix(functions: readonly TransformFunction[], box: ReferenceBox): Matrix {
  let result = IDENTITY;
  for (const item of functions) result = multiply(result, functionMatrix(item, box));
  return result;
}

function functionMatrix({ name, values }: TransformFunction, box: ReferenceBox): Matrix {
  const scalar = (index: number): number => {
    const value = values[index];
    return value === undefined ? 0 : value.unit === '%' ? value.value / 100 : value.value;
  };
  const lengthOf = (index: number, whole: number): number =>
    values[index]?.unit === '%' ? scalar(index) * whole : scalar(index);
  switch (name) {
    case 'matrix':
      return { a: scalar(0), b: scalar(1), c: scalar(2), d: scalar(3), e: scalar(4), f: scalar(5) };
    case 'translate':
      return translation(lengthOf(0, box.width), lengthOf(1, box.height));
    case 'translatex':
      return translation(lengthOf(0, box.width), 0);
    case 'translatey':
      return translation(0, lengthOf(0, box.height));
    case 'scale':
      return scaling(scalar(0), values.length > 1 ? scalar(1) : scalar(0));
    case 'scalex':
      return scaling(scalar(0), 1);
    case 'scaley':
      return scaling(1, scalar(0));
    case 'rotate':
      return rotationAbout(scalar(0), scalar(1), scalar(2));
    case 'skewx':
      return skew(scalar(0), 0);
    case 'skewy':
      return skew(0, scalar(0));
    default:
      return skew(scalar(0), scalar(1));
  }
}

function rotationAbout(degrees: number, x: number, y: number): Matrix {
  const turn = exactRotation(degrees);
  return x === 0 && y === 0 ? turn : multiply(multiply(translation(x, y), turn), translation(-x, -y));
}

/** Quarter turns come out exact, so that boxes stay boxes. */
function exactRotation(degrees: number): Matrix {
  const quarters = degrees / 90;
  if (!Number.isInteger(quarters)) return rotation((degrees * Math.PI) / 180);
  const turn = ((quarters % 4) + 4) % 4;
  const cosine = defined([1, 0, -1, 0][turn]);
  const sine = defined([0, 1, 0, -1][turn]);
  return { a: cosine, b: sine, c: sine === 0 ? 0 : -sine, d: cosine, e: 0, f: 0 };
}

function skew(degreesX: number, degreesY: number): Matrix {
  return { ...IDENTITY, c: Math.tan((degreesX * Math.PI) / 180), b: Math.tan((degreesY * Math.PI) / 180) };
}

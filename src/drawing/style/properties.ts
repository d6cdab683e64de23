/** The properties that bear on what is painted: their values, initial values, and whether they are inherited. */

import type { FillRule } from '../../geometry/base/polygon-types';
import { INITIAL_FONT_SIZE, type Length, parseSvgLength, toUserUnits } from '../viewport/units';
import { BLACK, type Colour, type PaintValue, parseColour, parsePaint, parseReference } from './colour';

export type LineJoin = 'miter' | 'miter-clip' | 'round' | 'bevel' | 'arcs';

/** `url(#id)`: what stands between the brackets; null for `none`. */
export type UrlReference = { readonly target: string } | null;

/** Inherited properties by their CSS names. Lengths in font units have been made user units; percentages stay. */
export interface InheritedValues {
  readonly color: Colour;
  readonly fill: PaintValue;
  readonly 'fill-opacity': number;
  readonly 'fill-rule': FillRule;
  readonly 'clip-rule': FillRule;
  readonly stroke: PaintValue;
  readonly 'stroke-width': Length;
  readonly 'stroke-linecap': 'butt' | 'round' | 'square';
  readonly 'stroke-linejoin': LineJoin;
  readonly 'stroke-miterlimit': number;
  /** Empty for `none`. */
  readonly 'stroke-dasharray': readonly Length[];
  readonly 'stroke-dashoffset': Length;
  readonly 'stroke-opacity': number;
  readonly visibility: 'visible' | 'hidden';
  /** px */
  readonly 'font-size': number;
  /** px: of the outermost element, which `rem` is a multiple of. No property of its own. */
  readonly rootFontSize: number;
  readonly 'paint-order': 'fill-first' | 'stroke-first';
  readonly 'marker-start': UrlReference;
  readonly 'marker-mid': UrlReference;
  readonly 'marker-end': UrlReference;
  /** Custom properties by their names, with their variables replaced. */
  readonly variables: ReadonlyMap<string, string>;
}

/** Properties that are not inherited. */
export interface OwnValues {
  readonly display: 'none' | 'shown';
  readonly opacity: number;
  readonly 'clip-path': UrlReference | 'shape';
  readonly mask: boolean;
  readonly filter: boolean;
  readonly 'transform-origin': readonly [Length, Length];
  readonly 'transform-box': 'view-box' | 'fill-box';
  readonly overflow: 'hidden' | 'visible' | 'by-element';
  readonly 'mix-blend-mode': string;
  readonly 'vector-effect': string;
  readonly 'stop-color': PaintValue;
  readonly 'stop-opacity': number;
}

export type PropertyValues = Omit<InheritedValues, 'variables' | 'rootFontSize'> & OwnValues;
export type PropertyName = keyof PropertyValues;

export interface Property<Value> {
  readonly inherited: boolean;
  readonly initial: Value;
  /** Undefined where the text is no value of the property: the declaration then does not count. */
  parse(text: string): Value | undefined;
}

const ZERO: Length = { value: 0, unit: '' };

/** Font sizes by keyword in px, for `medium` = 16px (CSS Fonts 4, "absolute-size"). */
const FONT_SIZES: Readonly<Record<string, number>> = {
  'xx-small': 9,
  'x-small': 10,
  small: 13,
  medium: 16,
  large: 18,
  'x-large': 24,
  'xx-large': 32,
};

function property<Value>(
  inherited: boolean,
  initial: Value,
  parse: (text: string) => Value | undefined,
): Property<Value> {
  return { inherited, initial, parse };
}

export const PROPERTIES: { readonly [Name in PropertyName]: Property<PropertyValues[Name]> } = {
  color: property(true, BLACK, parseColour),
  fill: property<PaintValue>(true, { kind: 'colour', colour: BLACK }, parsePaint),
  'fill-opacity': property(true, 1, parseOpacity),
  'fill-rule': property<FillRule>(true, 'nonzero', oneOf('nonzero', 'evenodd')),
  'clip-rule': property<FillRule>(true, 'nonzero', oneOf('nonzero', 'evenodd')),
  stroke: property<PaintValue>(true, { kind: 'none' }, parsePaint),
  'stroke-width': property<Length>(true, { value: 1, unit: '' }, parseNonNegativeLength),
  'stroke-linecap': property<'butt' | 'round' | 'square'>(true, 'butt', oneOf('butt', 'round', 'square')),
  'stroke-linejoin': property<LineJoin>(true, 'miter', oneOf('miter', 'miter-clip', 'round', 'bevel', 'arcs')),
  'stroke-miterlimit': property(true, 4, parseMiterLimit),
  'stroke-dasharray': property<readonly Length[]>(true, [], parseDashArray),
  'stroke-dashoffset': property<Length>(true, ZERO, parseSvgLength),
  'stroke-opacity': property(true, 1, parseOpacity),
  visibility: property<'visible' | 'hidden'>(true, 'visible', parseVisibility),
  'font-size': property<number>(true, INITIAL_FONT_SIZE, () => undefined),
  'paint-order': property<'fill-first' | 'stroke-first'>(true, 'fill-first', parsePaintOrder),
  'marker-start': property<UrlReference>(true, null, parseOptionalReference),
  'marker-mid': property<UrlReference>(true, null, parseOptionalReference),
  'marker-end': property<UrlReference>(true, null, parseOptionalReference),
  display: property<'none' | 'shown'>(false, 'shown', (text) => (keyword(text) === 'none' ? 'none' : 'shown')),
  opacity: property(false, 1, parseOpacity),
  'clip-path': property<UrlReference | 'shape'>(false, null, parseClipPath),
  mask: property(false, false, (text) => keyword(text) !== 'none'),
  filter: property(false, false, (text) => keyword(text) !== 'none'),
  'transform-origin': property<readonly [Length, Length]>(false, [ZERO, ZERO], parseOrigin),
  'transform-box': property<'view-box' | 'fill-box'>(false, 'view-box', parseTransformBox),
  overflow: property<'hidden' | 'visible' | 'by-element'>(false, 'by-element', parseOverflow),
  'mix-blend-mode': property(false, 'normal', keyword),
  'vector-effect': property(false, 'none', keyword),
  'stop-color': property<PaintValue>(false, { kind: 'colour', colour: BLACK }, parsePaint),
  'stop-opacity': property(false, 1, parseOpacity),
};

/** All of these may also be written as presentation attributes (SVG 2, "Presentation attributes"). */
export function isPropertyName(name: string): name is PropertyName {
  return Object.hasOwn(PROPERTIES, name);
}

/** Reads a font size, given the parent's and the root's in px. */
export function parseFontSize(text: string, parent: number, root = INITIAL_FONT_SIZE): number | undefined {
  const word = keyword(text);
  if (word === 'smaller') return parent / 1.2;
  if (word === 'larger') return parent * 1.2;
  const named = Object.hasOwn(FONT_SIZES, word) ? FONT_SIZES[word] : undefined;
  if (named !== undefined) return named;
  const length = parseSvgLength(text);
  if (!length || length.value < 0) return undefined;
  return toUserUnits(length, 'x', { width: parent, height: parent }, parent, root);
}

function keyword(text: string): string {
  return text.trim().toLowerCase();
}

function oneOf<Word extends string>(...words: readonly Word[]): (text: string) => Word | undefined {
  return (text) => words.find((word) => word === keyword(text));
}

function parseOpacity(text: string): number | undefined {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(%?)\s*$/i.exec(text);
  if (!match) return undefined;
  return Math.min(1, Math.max(0, Number(match[1]) / (match[2] ? 100 : 1)));
}

function parseNonNegativeLength(text: string): Length | undefined {
  const length = parseSvgLength(text);
  return length && length.value >= 0 ? length : undefined;
}

function parseMiterLimit(text: string): number | undefined {
  const length = parseSvgLength(text);
  return length && length.unit === '' && length.value >= 1 ? length.value : undefined;
}

/** With an odd count the list counts twice; all zero is `none`; a negative length makes the list void. */
function parseDashArray(text: string): readonly Length[] | undefined {
  if (keyword(text) === 'none') return [];
  const lengths = text
    .trim()
    .split(/\s*,\s*|\s+/)
    .map(parseSvgLength);
  const valid = lengths.filter((length) => length !== undefined && length.value >= 0) as Length[];
  if (valid.length !== lengths.length) return undefined;
  if (valid.every((length) => length.value === 0)) return [];
  return valid.length % 2 === 0 ? valid : [...valid, ...valid];
}

function parseVisibility(text: string): 'visible' | 'hidden' | undefined {
  const word = oneOf('visible', 'hidden', 'collapse')(text);
  return word === 'collapse' ? 'hidden' : word;
}

function parsePaintOrder(text: string): 'fill-first' | 'stroke-first' | undefined {
  const words = keyword(text).split(/\s+/);
  if (!words.every((word) => ['normal', 'fill', 'stroke', 'markers'].includes(word))) return undefined;
  const fill = words.indexOf('fill');
  const stroke = words.indexOf('stroke');
  return stroke >= 0 && (fill < 0 || stroke < fill) ? 'stroke-first' : 'fill-first';
}

function parseOptionalReference(text: string): UrlReference | undefined {
  if (keyword(text) === 'none') return null;
  const reference = parseReference(text.trim());
  return reference && { target: reference.target };
}

function parseClipPath(text: string): UrlReference | 'shape' | undefined {
  const reference = parseOptionalReference(text);
  return reference === undefined && /^[a-z-]+\(/i.test(text.trim()) ? 'shape' : reference;
}

function parseTransformBox(text: string): 'view-box' | 'fill-box' | undefined {
  const word = oneOf('view-box', 'fill-box', 'border-box', 'content-box', 'stroke-box')(text);
  return word && (word === 'view-box' || word === 'border-box' ? 'view-box' : 'fill-box');
}

function parseOverflow(text: string): 'hidden' | 'visible' | undefined {
  const word = oneOf('visible', 'auto', 'hidden', 'scroll', 'clip')(text);
  return word && (word === 'visible' || word === 'auto' ? 'visible' : 'hidden');
}

const ORIGIN_WORDS: Readonly<Record<string, number>> = { left: 0, top: 0, center: 50, right: 100, bottom: 100 };

function parseOrigin(text: string): readonly [Length, Length] | undefined {
  const words = keyword(text).split(/\s*,\s*|\s+/);
  if (words.length > 3) return undefined;
  const parts = words.map((word) =>
    Object.hasOwn(ORIGIN_WORDS, word) ? { value: ORIGIN_WORDS[word] ?? 0, unit: '%' as const } : parseSvgLength(word),
  );
  const upright = words[0] === 'top' || words[0] === 'bottom' || words[1] === 'left' || words[1] === 'right';
  const centre: Length = { value: 50, unit: '%' };
  const [first, second = centre] = parts;
  if (!first || parts.some((part) => part === undefined)) return undefined;
  return upright ? [second, first] : [first, second];
}

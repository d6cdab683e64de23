/** Lengths as SVG and CSS write them, and what they measure in user units. */
import { NumberReader } from '../../markup/number-reader';
import { MM_PER_PX, MM_PER_UNIT, PX_PER_UNIT } from '../../text/css-units';

export type LengthUnit = '' | 'px' | 'mm' | 'cm' | 'q' | 'in' | 'pt' | 'pc' | '%' | 'em' | 'rem' | 'ex' | 'ch';

/** A number with its unit as written, in lower case; '' where there is none (user units). */
export interface Length {
  readonly value: number;
  readonly unit: LengthUnit;
}

/** What a percentage is a percentage of (SVG 2, "Units"): the viewport's width, its height, or its mean diagonal. */
export type Axis = 'x' | 'y' | 'diagonal';

export interface ViewportSize {
  readonly width: number;
  readonly height: number;
}

/** User units in one unit; '' stands for user units themselves. */
const USER_UNITS: Readonly<Record<string, number>> = { '': 1, ...PX_PER_UNIT };

/** The font size that `rem` refers to and that fonts have unless stated, in px (CSS Fonts, `medium`). */
export const INITIAL_FONT_SIZE = 16;

const LENGTH = /^[ \t\r\n\f]*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(%|[a-z]*)[ \t\r\n\f]*$/i;

/** Reads `12`, `-3.5mm`, `50%`. Undefined where the text is not one length, or its unit is not known. */
export function parseSvgLength(text: string): Length | undefined {
  const number = plainNumber(text);
  if (Number.isFinite(number)) return { value: number, unit: '' };
  const match = LENGTH.exec(text);
  if (!match) return undefined;
  const value = Number(match[1]);
  const unit = (match[2] ?? '').toLowerCase();
  return Number.isFinite(value) && isUnit(unit) ? { value, unit } : undefined;
}

/** Units of the window that a page is shown in (CSS Values 4, "Viewport-percentage Lengths"). A sheet has no window. */
const WINDOW_LENGTH = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?[sld]?v(?:w|h|i|b|min|max)\s*$/i;

/** Whether the text is a length that depends on the window. */
export function isWindowLength(text: string): boolean {
  return WINDOW_LENGTH.test(text);
}

/** The value of a text that is a number and nothing else, as most lengths are; NaN or infinite where it is not. */
function plainNumber(text: string): number {
  const reader = new NumberReader(text);
  const value = reader.readNumber();
  return reader.atEnd ? value : NaN;
}

function isUnit(unit: string): unit is LengthUnit {
  return unit in USER_UNITS || unit === '%' || unit === 'em' || unit === 'rem' || unit === 'ex' || unit === 'ch';
}

/** Whether the unit measures in the world, not on a screen or relative to something else. */
export function isPhysical(unit: LengthUnit): boolean {
  return unit !== '' && unit !== 'px' && unit in USER_UNITS;
}

/** Millimetres in a length with an absolute unit (px included); undefined for relative ones. */
export function toMillimetres({ value, unit }: Length): number | undefined {
  const factor = unit === '' ? MM_PER_PX : MM_PER_UNIT[unit];
  return factor === undefined ? undefined : value * factor;
}

/**
 * Makes font-relative lengths user units and leaves percentages as they are.
 * `ex` and `ch` count as half an em: CSS Values allows that where the font's own measure is not known.
 */
export function resolveFontUnits(length: Length, fontSize: number, rootFontSize: number): Length {
  const factor = fontFactor(length.unit, fontSize, rootFontSize);
  return factor === undefined ? length : { value: length.value * factor, unit: '' };
}

function fontFactor(unit: LengthUnit, fontSize: number, rootFontSize: number): number | undefined {
  if (unit === 'em') return fontSize;
  if (unit === 'ex' || unit === 'ch') return fontSize / 2;
  return unit === 'rem' ? rootFontSize : undefined;
}

/**
 * User units in a length. Percentages are of the nearest viewport's `axis`; font sizes are in user units, that of the
 * root element for `rem`.
 */
export function toUserUnits(
  length: Length,
  axis: Axis,
  viewport: ViewportSize,
  fontSize: number,
  rootFontSize = INITIAL_FONT_SIZE,
): number {
  const { value, unit } = length;
  if (unit === '') return value;
  if (unit === '%') return (value / 100) * percentageBase(axis, viewport);
  return value * (USER_UNITS[unit] ?? fontFactor(unit, fontSize, rootFontSize) ?? 1);
}

function percentageBase(axis: Axis, { width, height }: ViewportSize): number {
  if (axis === 'x') return width;
  return axis === 'y' ? height : Math.hypot(width, height) / Math.SQRT2;
}

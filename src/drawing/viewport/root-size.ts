/** The physical size of the artwork, and how the root's user units map to it. */

import type { Matrix } from '../../geometry/base/curve-types';
import { attributeOf } from '../../markup/query';
import type { Attribute, ElementNode } from '../../markup/tree';
import { MM_PER_PX } from '../../text/css-units';
import { noSheetSide, noSize, noViewBox } from '../messages';
import type { Problems } from '../problems';
import { isNoSheetSide } from '../reach';
import type { DeclaredStyle } from '../style/cascade';
import type { OwnSize } from '../types';
import {
  INITIAL_FONT_SIZE,
  isPhysical,
  type Length,
  parseSvgLength,
  toMillimetres,
  toUserUnits,
  type ViewportSize,
} from './units';
import {
  DEFAULT_ASPECT_RATIO,
  parseAspectRatio,
  parseViewBoxAttribute,
  type ViewBox,
  viewportTransform,
} from './viewport';

export interface RootSize {
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly sizeStated: boolean;
  readonly ownSize: OwnSize;
  /** From the root's user units to sheet mm; undefined where the viewBox is empty, so that nothing is painted. */
  readonly toMm: Matrix | undefined;
  /** What percentages are of, in user units, with its origin. */
  readonly viewBox: ViewBox;
  /** Millimetres in one px of the root's viewport: the host's coordinates, for strokes that do not scale. */
  readonly mmPerPx: number;
}

export interface SizeOptions {
  /** mm; overrides the stated size. */
  readonly width?: number;
  readonly height?: number;
}

/** The size that CSS gives to pictures that state none and have no ratio (CSS 2, "Inline, replaced elements"), px. */
const DEFAULT_SIZE: ViewportSize = { width: 300, height: 150 };

/**
 * The size in order of rank: `options`, `data-tombolo-width` and `-height`, `width` and `height`, the viewBox's size
 * in px. Where one of a pair is missing, it follows the ratio of the viewBox or of the stated sizes.
 */
export function readRootSize(
  root: ElementNode,
  declared: DeclaredStyle,
  options: SizeOptions,
  problems: Problems,
): RootSize {
  const attribute = attributeOf(root, 'viewBox');
  const box = attribute && parseViewBoxAttribute(attribute.value);
  if (attribute && !box) {
    problems.add('unreadable-markup', 'warning', noViewBox(attribute.value), attribute.valueSpan);
  }
  const stated = statedSize(root, declared, box);
  const own = ownSize(root, problems);
  const asked = { width: positive(options.width), height: positive(options.height) };
  const override = asked.width === undefined && asked.height === undefined ? own : asked;
  const size = overrideSize(stated, override);
  const viewBox = box ?? { x: 0, y: 0, width: stated.width / MM_PER_PX, height: stated.height / MM_PER_PX };
  const unusable = [size.width, size.height].find(isNoSheetSide);
  if (unusable !== undefined) problems.add('unsupported', 'error', noSheetSide(unusable), root.startTag);
  const empty =
    unusable !== undefined || !(viewBox.width > 0) || !(viewBox.height > 0) || !(size.width > 0) || !(size.height > 0);
  const ratioText = attributeOf(root, 'preserveAspectRatio')?.value;
  const ratio = (ratioText === undefined ? undefined : parseAspectRatio(ratioText)) ?? DEFAULT_ASPECT_RATIO;
  const toMm = empty ? undefined : viewportTransform(viewBox, size, ratio);
  if (attribute && box && toMm && ratio.align && !ratio.slice) reportLetterbox(attribute, box, size, toMm, problems);
  const mmPerPx = stated.width > 0 ? (MM_PER_PX * size.width) / stated.width : MM_PER_PX;
  return {
    ...size,
    ownSize: stated,
    sizeStated: stated.physical || own.width !== undefined || own.height !== undefined,
    toMm,
    viewBox,
    mmPerPx,
  };
}

/** mm, and as a share of the side: what is left over by rounding of the size is not worth a word. */
const ROUNDED = 0.1;
const ROUNDED_SHARE = 0.002;

/** Where the picture does not fill its size, the sheet is larger than the artist sees. */
function reportLetterbox(
  { valueSpan }: Attribute,
  box: ViewBox,
  { width, height }: ViewportSize,
  { a, d }: Matrix,
  problems: Problems,
): void {
  const [beside, above] = [width - box.width * a, height - box.height * d];
  const isMeant = (room: number, side: number): boolean => room > Math.max(ROUNDED, ROUNDED_SHARE * side);
  const side = isMeant(beside, width) ? 'width' : isMeant(above, height) ? 'height' : undefined;
  if (side === undefined) return;
  const room = Math.max(beside, above).toFixed(1);
  problems.add(
    'unsupported',
    'info',
    {
      message: `The viewBox has not the shape of the size: ${room} mm of the sheet's ${side} stay empty.`,
      detail: 'The sheet is cut at its stated size, and the picture fitted into it. Give viewBox and size one shape.',
    },
    valueSpan,
  );
}

function statedSize(root: ElementNode, declared: DeclaredStyle, box: ViewBox | undefined): OwnSize {
  const width = readSize(root, declared, 'width');
  const height = readSize(root, declared, 'height');
  const ratio = box && box.width > 0 && box.height > 0 ? box.width / box.height : undefined;
  const wide = width && absolute(width);
  const high = height && absolute(height);
  const physical = (width !== undefined && isPhysical(width.unit)) || (height !== undefined && isPhysical(height.unit));
  const byStyle = declared.has('width') || declared.has('height');
  const said = { physical, byStyle };
  if (wide !== undefined && high !== undefined) return { width: wide, height: high, ...said };
  const fallback = box ?? DEFAULT_SIZE;
  if (wide !== undefined) {
    return { width: wide, height: ratio ? wide / ratio : DEFAULT_SIZE.height * MM_PER_PX, ...said };
  }
  if (high !== undefined) {
    return { width: ratio ? high * ratio : DEFAULT_SIZE.width * MM_PER_PX, height: high, ...said };
  }
  return { width: fallback.width * MM_PER_PX, height: fallback.height * MM_PER_PX, physical: false, byStyle };
}

function readSize(root: ElementNode, declared: DeclaredStyle, name: 'width' | 'height'): Length | undefined {
  const text = declared.get(name)?.value ?? attributeOf(root, name)?.value;
  const length = text === undefined ? undefined : parseSvgLength(text);
  return length && length.value >= 0 ? length : undefined;
}

/** mm; undefined for percentages, which are of a window that a sheet does not have. */
function absolute(length: Length): number | undefined {
  if (length.unit === '%') return undefined;
  return toMillimetres(length) ?? toUserUnits(length, 'x', DEFAULT_SIZE, INITIAL_FONT_SIZE) * MM_PER_PX;
}

function ownSize(root: ElementNode, problems: Problems): { width: number | undefined; height: number | undefined } {
  const read = (name: string): number | undefined => {
    const attribute = attributeOf(root, name);
    if (!attribute) return undefined;
    const length = parseSvgLength(attribute.value);
    if (length && isPhysical(length.unit) && length.value > 0) return toMillimetres(length);
    problems.add('unreadable-markup', 'warning', noSize(name), attribute.valueSpan);
    return undefined;
  };
  return { width: read('data-tombolo-width'), height: read('data-tombolo-height') };
}

function overrideSize(
  stated: ViewportSize,
  { width, height }: Partial<Record<'width' | 'height', number | undefined>>,
): ViewportSize {
  const ratio = stated.width > 0 && stated.height > 0 ? stated.width / stated.height : 1;
  if (width !== undefined) return { width, height: height ?? width / ratio };
  if (height !== undefined) return { width: height * ratio, height };
  return { width: stated.width, height: stated.height };
}

function positive(value: number | undefined): number | undefined {
  return value !== undefined && value > 0 && Number.isFinite(value) ? value : undefined;
}

/** The pen that a stroke is drawn with, and the space in which it is round. */
import type { Matrix } from '../../geometry/base/curve-types';
import { IDENTITY, invert, isSameMatrix, maxScale, meanScale, scaling } from '../../geometry/base/matrix';
import { STROKE_OUTLINE } from '../../geometry/base/tolerances';

export interface Pen {
  /** Half the stroke's width in pen units. */
  readonly half: number;
  readonly cap: 'butt' | 'round' | 'square';
  readonly join: 'miter' | 'round' | 'bevel';
  readonly miterLimit: number;
  /** How far pieces may stay from the true outline, in pen units. */
  readonly tolerance: number;
  /** From sheet mm to pen units, and back. Pen units are mm wherever the transform keeps circles round. */
  readonly fromMm: Matrix;
  readonly toMm: Matrix;
  /** Whether `toMm` turns the plane over. */
  readonly mirrored: boolean;
  /** Pen units in one user unit, for dash lengths. */
  readonly unit: number;
}

/** Whether they paint alike along a chain; the length of dashes is not theirs, and whether it turns the plane over lies in the map. */
export function isSamePen(a: Pen, b: Pen): boolean {
  return (
    a.half === b.half &&
    a.cap === b.cap &&
    a.join === b.join &&
    a.miterLimit === b.miterLimit &&
    a.tolerance === b.tolerance &&
    isSameMatrix(a.fromMm, b.fromMm) &&
    isSameMatrix(a.toMm, b.toMm)
  );
}

export interface PenStyle {
  /** User units. */
  readonly width: number;
  readonly cap: Pen['cap'];
  readonly join: Pen['join'];
  readonly miterLimit: number;
}

/** How far the outline of a stroke may be off, mm. Less than the flattening tolerance of sheets, as both add up. */
const STROKE_TOLERANCE_MM = STROKE_OUTLINE;

/**
 * The pen for strokes of elements whose user units `toMm` maps. Undefined where it leaves no mark or the map cannot be
 * undone. With a map that keeps circles round the pen works in mm, else in user units, where SVG defines strokes.
 */
export function makePen(style: PenStyle, toMm: Matrix): Pen | undefined {
  const { cap, join, miterLimit } = style;
  const shared = { cap, join, miterLimit };
  if (keepsCircles(toMm)) {
    const unit = meanScale(toMm);
    const half = (style.width * unit) / 2;
    if (!(half > 0) || !Number.isFinite(half)) return undefined;
    const maps = { fromMm: IDENTITY, toMm: IDENTITY, mirrored: false };
    return { ...shared, ...maps, half, unit, tolerance: STROKE_TOLERANCE_MM };
  }
  const fromMm = invert(toMm);
  const half = style.width / 2;
  if (!fromMm || !(half > 0) || !Number.isFinite(half)) return undefined;
  const mirrored = toMm.a * toMm.d - toMm.b * toMm.c < 0;
  return { ...shared, fromMm, toMm, mirrored, half, unit: 1, tolerance: STROKE_TOLERANCE_MM / maxScale(toMm) };
}

/** The pen for `vector-effect: non-scaling-stroke`: widths and dashes are px of the root's viewport. */
export function makeHostPen(style: PenStyle, mmPerPx: number): Pen | undefined {
  return makePen(style, scaling(mmPerPx));
}

/** Whether the map is a similarity, mirrored or not, to rounding. */
function keepsCircles({ a, b, c, d }: Matrix): boolean {
  const size = Math.abs(a) + Math.abs(b) + Math.abs(c) + Math.abs(d);
  const turned = Math.abs(a - d) + Math.abs(b + c);
  const mirrored = Math.abs(a + d) + Math.abs(b - c);
  return Math.min(turned, mirrored) <= 1e-9 * size;
}

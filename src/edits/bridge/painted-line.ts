/** A stroked line, places on it, and what it paints there. In any frame in which lines have one width. */
import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { add, dot, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { lengthOf, pointAt, tangentAt } from '../../geometry/curve/index';

/** A line with a width: a chain of curves, closed or open. */
export interface PaintedLine {
  readonly curves: readonly Curve[];
  readonly closed: boolean;
  readonly width: number;
  readonly cap: 'butt' | 'round' | 'square';
  /** How far mitres reach, in half widths of the line; 1 where its corners have none. */
  readonly miterLimit?: number;
}

/** A place on a line: the number of the curve plus the parameter on it. */
export type LinePosition = number;

/** The way along a line: with its course, or against it. */
export type Way = 1 | -1;

/** Undefined beyond the end of an open line; no farther than half into the next curve. */
export function advance({ curves, closed }: PaintedLine, place: LinePosition, far: number): LinePosition | undefined {
  const count = curves.length;
  const curve = curves[Math.min(count - 1, Math.floor(place))];
  const next = place + far / Math.max(1e-9, curve ? lengthOf(curve) : 1);
  const bounded = Math.max(Math.floor(place) - 0.5, Math.min(Math.floor(place) + 1.5, next));
  if (bounded >= 0 && bounded < count) return bounded;
  return closed ? wrapPosition(bounded, count) : undefined;
}

export function wrapPosition(place: LinePosition, count: number): LinePosition {
  return ((place % count) + count) % count;
}

export function pointOnLine({ curves }: PaintedLine, place: LinePosition): Point {
  const index = Math.min(curves.length - 1, Math.floor(place));
  return pointAt(defined(curves[index]), place - index);
}

/** Of length 1, with the line's course. */
export function directionOnLine({ curves }: PaintedLine, place: LinePosition): Point {
  const index = Math.min(curves.length - 1, Math.floor(place));
  return tangentAt(defined(curves[index]), place - index);
}

/** From side to side, square to the course. */
export function crossSectionAt(line: PaintedLine, place: LinePosition): [Point, Point] {
  return sidesOf(pointOnLine(line, place), directionOnLine(line, place), line.width);
}

function sidesOf(centre: Point, along: Point, width: number): [Point, Point] {
  const half = scale(perpendicular(along), width / 2);
  return [add(centre, half), subtract(centre, half)];
}

/**
 * The corners of what a line paints on the outer side where one of its curves begins: from the side of the curve before by
 * the tip of the mitre, or the bulge of a round join, to the side of this one.
 * @param number of the curve; undefined where an open line begins or ends
 */
export function jointAt(line: PaintedLine, number: number): readonly Point[] | undefined {
  const { curves, closed, width, miterLimit = 1 } = line;
  const count = curves.length;
  if (!closed && (number <= 0 || number >= count)) return undefined;
  const [before, after] = [curves[wrapPosition(number - 1, count)], curves[wrapPosition(number, count)]];
  if (!before || !after) return undefined;
  const at = after.start;
  const [arriving, leaving] = [tangentAt(before, 1), tangentAt(after, 0)];
  const turn = arriving.x * leaving.y - arriving.y * leaving.x;
  const outer = turn >= 0 ? -1 : 1;
  const [from, to] = [arriving, leaving].map((along) => add(at, scale(perpendicular(along), (outer * width) / 2)));
  if (!from || !to) return undefined;
  // SVG 2, "stroke-miterlimit": 1/sin(θ/2) for the angle θ between the pieces is 1/cos of half the turn.
  const halfCosine = Math.sqrt(Math.max(0, (1 + dot(arriving, leaving)) / 2));
  if (halfCosine < 1e-6) return [at, from, to];
  const reach = halfCosine * miterLimit >= 1 ? 1 / (2 * halfCosine ** 2) : 0.5 / halfCosine;
  return [at, from, add(at, scale(subtract(add(from, to), scale(at, 2)), reach)), to];
}

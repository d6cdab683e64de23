/** Two straight segments: how near they come, and where. Closed forms, in whatever unit the coordinates have. */

import { hypotenuse } from '../base/vector';

/** From (ax, ay) to (bx, by). */
export interface Segment {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

/** A stretch of a segment: 0 is its start, 1 its end. */
export interface ParameterInterval {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretch of `segment` that lies within `distance` of `other`; undefined when none does. The places within a
 * distance of a segment are a convex figure, two discs and the rectangle between them: so there is one stretch at most.
 */
export function intervalWithin(segment: Segment, other: Segment, distance: number): ParameterInterval | undefined {
  const dx = segment.bx - segment.ax;
  const dy = segment.by - segment.ay;
  const start = withinDisc(segment, dx, dy, other.ax, other.ay, distance);
  const end = withinDisc(segment, dx, dy, other.bx, other.by, distance);
  return around(around(start, end), withinBeam(segment, dx, dy, other, distance));
}

/** The stretch from the begin of the first to the end of the last. */
function around(a: ParameterInterval | undefined, b: ParameterInterval | undefined): ParameterInterval | undefined {
  if (!a || !b) return a ?? b;
  return { from: Math.min(a.from, b.from), to: Math.max(a.to, b.to) };
}

function withinDisc(
  { ax, ay }: Segment,
  dx: number,
  dy: number,
  x: number,
  y: number,
  radius: number,
): ParameterInterval | undefined {
  const [fx, fy] = [ax - x, ay - y];
  const a = dx * dx + dy * dy;
  const half = fx * dx + fy * dy;
  const c = fx * fx + fy * fy - radius * radius;
  if (a === 0) return c <= 0 ? { from: 0, to: 1 } : undefined;
  const root = half * half - a * c;
  if (root < 0) return undefined;
  const step = Math.sqrt(root);
  return intersectIntervals((-half - step) / a, (-half + step) / a);
}

/** Within the rectangle on both sides of `other`. */
function withinBeam(
  { ax, ay }: Segment,
  dx: number,
  dy: number,
  other: Segment,
  distance: number,
): ParameterInterval | undefined {
  const [ux, uy] = [other.bx - other.ax, other.by - other.ay];
  const length = hypotenuse(ux, uy);
  if (length === 0) return undefined;
  const [fx, fy] = [ax - other.ax, ay - other.ay];
  const along = intervalBetween((fx * ux + fy * uy) / length, (dx * ux + dy * uy) / length, 0, length);
  const across = intervalBetween((fx * uy - fy * ux) / length, (dx * uy - dy * ux) / length, -distance, distance);
  return along && across
    ? intersectIntervals(Math.max(along.from, across.from), Math.min(along.to, across.to))
    : undefined;
}

/** Where low ≤ start + t·slope ≤ high. */
function intervalBetween(start: number, slope: number, low: number, high: number): ParameterInterval | undefined {
  if (slope === 0) return start >= low && start <= high ? { from: 0, to: 1 } : undefined;
  const [one, two] = [(low - start) / slope, (high - start) / slope];
  return intersectIntervals(Math.min(one, two), Math.max(one, two));
}

function intersectIntervals(from: number, to: number): ParameterInterval | undefined {
  const [low, high] = [Math.max(0, from), Math.min(1, to)];
  return low <= high ? { from: low, to: high } : undefined;
}

export interface SegmentApproach {
  readonly distance: number;
  /** Where on the segment: 0 is its start, 1 its end. */
  readonly t: number;
  /** Where on the other one. */
  readonly u: number;
}

/** Of several ways as short, to this fraction of the length, the one from the middle of the stretch is given. */
const AS_SHORT = 1e-9;

/** The shortest way from a stretch of a segment to another segment. */
export function nearestApproach(segment: Segment, { from, to }: ParameterInterval, other: Segment): SegmentApproach {
  const [dx, dy] = [segment.bx - segment.ax, segment.by - segment.ay];
  const [ux, uy] = [other.bx - other.ax, other.by - other.ay];
  const crossing = crossingOf(segment, dx, dy, other, ux, uy);
  if (crossing && crossing.t >= from && crossing.t <= to) return crossing;
  const middle = approachAt(segment, other, (from + to) / 2);
  const asShort = AS_SHORT * (1 + middle.distance);
  const towardsStart = project(other.ax - segment.ax, other.ay - segment.ay, dx, dy, from, to);
  const towardsEnd = project(other.ax + ux - segment.ax, other.ay + uy - segment.ay, dx, dy, from, to);
  let best = middle;
  for (let way = 0; way < 4; way += 1) {
    const t = way === 0 ? from : way === 1 ? to : way === 2 ? towardsStart : towardsEnd;
    const each = approachAt(segment, other, t);
    if (each.distance < best.distance - asShort) best = each;
  }
  return best;
}

/** The shortest way from one place of a segment. */
function approachAt(segment: Segment, other: Segment, t: number): SegmentApproach {
  const x = segment.ax + t * (segment.bx - segment.ax);
  const y = segment.ay + t * (segment.by - segment.ay);
  const ux = other.bx - other.ax;
  const uy = other.by - other.ay;
  const u = project(x - other.ax, y - other.ay, ux, uy, 0, 1);
  return { distance: hypotenuse(other.ax + u * ux - x, other.ay + u * uy - y), t, u };
}

function project(x: number, y: number, dx: number, dy: number, low: number, high: number): number {
  const square = dx * dx + dy * dy;
  return square > 0 ? Math.max(low, Math.min(high, (x * dx + y * dy) / square)) : low;
}

function crossingOf(
  segment: Segment,
  dx: number,
  dy: number,
  other: Segment,
  ux: number,
  uy: number,
): SegmentApproach | undefined {
  const turn = dx * uy - dy * ux;
  if (turn === 0) return undefined;
  const [fx, fy] = [other.ax - segment.ax, other.ay - segment.ay];
  const t = (fx * uy - fy * ux) / turn;
  const u = (fx * dy - fy * dx) / turn;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? { distance: 0, t, u } : undefined;
}

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
  const [dx, dy] = [segment.bx - segment.ax, segment.by - segment.ay];
  const found = [
    withinDisc(segment, dx, dy, other.ax, other.ay, distance),
    withinDisc(segment, dx, dy, other.bx, other.by, distance),
    withinBeam(segment, dx, dy, other, distance),
  ].filter((stretch) => stretch !== undefined);
  if (found.length === 0) return undefined;
  return { from: Math.min(...found.map(({ from }) => from)), to: Math.max(...found.map(({ to }) => to)) };
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
  const at = (t: number): SegmentApproach => {
    const [x, y] = [segment.ax + t * dx, segment.ay + t * dy];
    const u = project(x - other.ax, y - other.ay, ux, uy, 0, 1);
    return { distance: hypotenuse(other.ax + u * ux - x, other.ay + u * uy - y), t, u };
  };
  const towards = (u: number): SegmentApproach =>
    at(project(other.ax + u * ux - segment.ax, other.ay + u * uy - segment.ay, dx, dy, from, to));
  const middle = at((from + to) / 2);
  return [at(from), at(to), towards(0), towards(1)].reduce(
    (best, each) => (each.distance < best.distance - AS_SHORT * (1 + middle.distance) ? each : best),
    middle,
  );
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

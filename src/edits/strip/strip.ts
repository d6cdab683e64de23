/** The strip of material that a bridge leaves across an opening: a convex quadrilateral. */
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply, determinant } from '../../geometry/base/matrix';
import type { Box, Polygon } from '../../geometry/base/polygon-types';
import { distanceToEdge, ringOfPoints } from '../../geometry/base/ring';
import { add, crossFrom, distance, perpendicular, scale, subtract } from '../../geometry/base/vector';
import type { RootFillet } from '../roots/fillet';

/**
 * Four corners in the order in which the shoelace sum (x·dy − y·dx) is positive. The strip's long sides are corners 0–1
 * and 2–3. In any affine frame: sheet mm or an element's own user units.
 */
export interface Strip {
  readonly corners: readonly [Point, Point, Point, Point];
  /** In sheet mm whatever the frame of the corners; none where roots stay sharp. */
  readonly fillets?: readonly RootFillet[];
}

/**
 * The rectangle along from→to, `width` wide, reaching `before` beyond `from` and `after` beyond `to` (mm).
 * @throws RangeError if from and to coincide
 */
export function stripAlong(from: Point, to: Point, width: number, before: number, after = before): Strip {
  const length = distance(from, to);
  if (!(length > 0)) throw new RangeError('A strip needs two different ends.');
  const along = scale(subtract(to, from), 1 / length);
  const side = scale(perpendicular(along), width / 2);
  const start = subtract(from, scale(along, before));
  const end = add(to, scale(along, after));
  return { corners: [subtract(start, side), subtract(end, side), add(end, side), add(start, side)] };
}

/** The same strip with its long sides farther apart, by `extra` in all; in any frame. */
export function widenStrip({ corners: [a, b, c, d] }: Strip, extra: number): Strip {
  const [start, end] = [subtract(a, d), subtract(b, c)];
  const apart = Math.abs(crossFrom(a, b, d)) / distance(a, b);
  const [first, last] = [scale(start, extra / 2 / apart), scale(end, extra / 2 / apart)];
  return { corners: [add(a, first), add(b, last), subtract(c, last), subtract(d, first)] };
}

/** The same strip with its ends farther apart, by `extra` in all; in any frame. */
export function lengthenStrip({ corners: [a, b, c, d] }: Strip, extra: number): Strip {
  const [e, f, g, h] = widenStrip({ corners: [b, c, d, a] }, extra).corners;
  return { corners: [h, e, f, g] };
}

/** The same strip in another frame; a mirroring map keeps the order of corners positive. */
export function transformStrip(strip: Strip, matrix: Matrix): Strip {
  const [a, b, c, d] = strip.corners.map((corner) => apply(matrix, corner)) as [Point, Point, Point, Point];
  return { corners: determinant(matrix) < 0 ? [b, a, d, c] : [a, b, c, d] };
}

/** How far inside all sides a point lies: the least of its cross products, positive inside. */
export function depthInStrip(strip: Strip, point: Point): number {
  return Math.min(
    ...strip.corners.map((corner, index) => {
      const next = cornerAt(strip, index + 1);
      return crossFrom(corner, next, point) / distance(corner, next);
    }),
  );
}

/** From a point to the strip; none within. */
export function distanceToStrip(strip: Strip, point: Point): number {
  if (depthInStrip(strip, point) >= 0) return 0;
  return Math.min(
    ...strip.corners.map(({ x, y }, index) => {
      const next = cornerAt(strip, index + 1);
      return distanceToEdge(point.x, point.y, x, y, next.x, next.y);
    }),
  );
}

export function cornerAt(strip: Strip, index: number): Point {
  return strip.corners[(((index % 4) + 4) % 4) as 0 | 1 | 2 | 3];
}

/**
 * Where a point on the strip's border stands on its way round: the number of the side plus the fraction along it,
 * in [0, 4). The nearest side is taken.
 */
export function borderPosition(strip: Strip, point: Point): number {
  let best = { place: 0, away: Infinity };
  strip.corners.forEach((corner, index) => {
    const along = subtract(cornerAt(strip, index + 1), corner);
    const size = along.x * along.x + along.y * along.y;
    const offset = subtract(point, corner);
    const fraction = Math.min(1, Math.max(0, (offset.x * along.x + offset.y * along.y) / size));
    const away = distance(point, add(corner, scale(along, fraction)));
    if (away < best.away) best = { place: index + Math.min(fraction, 1 - 1e-12), away };
  });
  return best.place;
}

export function borderPoint(strip: Strip, place: number): Point {
  const side = Math.floor(place);
  const from = cornerAt(strip, side);
  return add(from, scale(subtract(cornerAt(strip, side + 1), from), place - side));
}

export function boxOfCorners(corners: readonly Point[]): Box {
  const [x, y] = [corners.map((corner) => corner.x), corners.map((corner) => corner.y)];
  return { minX: Math.min(...x), minY: Math.min(...y), maxX: Math.max(...x), maxY: Math.max(...y) };
}

export function polygonOf({ corners }: Strip): Polygon {
  return { outer: ringOfPoints(corners), holes: [] };
}

/** By separating axes: two convex quadrilaterals are apart when one has a side that the other lies wholly beyond. */
export function areStripsApart(a: Strip, b: Strip): boolean {
  return areFarApart(a, b) || hasSideBefore(a, b) || hasSideBefore(b, a);
}

/** Whether circles round both do not meet: cheap, and true for most. */
function areFarApart(a: Strip, b: Strip): boolean {
  const [p, q, r, s] = [a.corners[0], a.corners[2], b.corners[0], b.corners[2]];
  const between = Math.hypot((p.x + q.x - r.x - s.x) / 2, (p.y + q.y - r.y - s.y) / 2);
  return between > (Math.hypot(p.x - q.x, p.y - q.y) + Math.hypot(r.x - s.x, r.y - s.y)) / 2;
}

function hasSideBefore(a: Strip, b: Strip): boolean {
  return a.corners.some((corner, index) => {
    const next = cornerAt(a, index + 1);
    return b.corners.every((other) => crossFrom(corner, next, other) < 0);
  });
}

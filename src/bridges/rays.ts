/** What a ray meets first among the edges of a region. Millimetres. */
import type { Point } from '../geometry/curve';
import { add, cross, scale } from '../geometry/point';
import { forEachSegmentInBox, type SegmentIndex } from '../geometry/segment-index';

export interface Hit {
  readonly edge: number;
  /** From the ray's origin. */
  readonly distance: number;
  readonly point: Point;
  /** The number of the polygon that the edge belongs to. */
  readonly polygon: number;
}

/** Nothing nearer than this is a hit, so that a ray may begin on an edge. */
const START = 1e-6;
const FIRST_STEP = 2;

/**
 * The first edge that the ray meets within `limit`. The ray is followed in steps that double in length, so that short
 * answers are found without looking far.
 * @param direction of length 1
 */
export function firstHit(index: SegmentIndex, origin: Point, direction: Point, limit: number): Hit | undefined {
  for (let from = 0, step = FIRST_STEP; from < limit; from += step, step *= 2) {
    const to = Math.min(limit, from + step);
    const hit = hitBetween(index, origin, direction, from, to);
    if (hit) return hit;
  }
  return undefined;
}

function hitBetween(
  index: SegmentIndex, origin: Point, direction: Point, from: number, to: number,
): Hit | undefined {
  const [a, b] = [add(origin, scale(direction, from)), add(origin, scale(direction, to))];
  const box = {
    minX: Math.min(a.x, b.x), minY: Math.min(a.y, b.y), maxX: Math.max(a.x, b.x), maxY: Math.max(a.y, b.y),
  };
  let best: { edge: number; distance: number } | undefined;
  forEachSegmentInBox(index, box, (edge) => {
    const distance = distanceTo(index, edge, origin, direction);
    if (distance > START && distance <= to && distance < (best?.distance ?? Infinity)) best = { edge, distance };
  });
  if (!best) return undefined;
  const point = add(origin, scale(direction, best.distance));
  return { ...best, point, polygon: index.polygon[best.edge] ?? 0 };
}

/** Infinite where the ray passes the edge by. */
function distanceTo(index: SegmentIndex, edge: number, origin: Point, direction: Point): number {
  const start = { x: (index.x0[edge] ?? 0) - origin.x, y: (index.y0[edge] ?? 0) - origin.y };
  const along = { x: (index.x1[edge] ?? 0) - (index.x0[edge] ?? 0), y: (index.y1[edge] ?? 0) - (index.y0[edge] ?? 0) };
  const turn = cross(direction, along);
  if (turn === 0) return Infinity;
  const share = cross(start, direction) / turn;
  return share >= 0 && share <= 1 ? cross(start, along) / turn : Infinity;
}

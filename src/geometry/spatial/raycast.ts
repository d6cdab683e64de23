/** What a ray meets first among the edges of a region. Millimetres. */

import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Box } from '../base/polygon-types';
import { SAME_POINT } from '../base/tolerances';
import { add, scale } from '../base/vector';
import { forEachSegmentInBox, type SegmentIndex } from './segment-index';

export interface Hit {
  readonly edge: number;
  /** From the ray's origin. */
  readonly distance: number;
  readonly point: Point;
  /** The number of the polygon that the edge belongs to. */
  readonly polygon: number;
}

/** Nothing nearer than this is a hit, so that a ray may begin on an edge. */
const START = SAME_POINT;

/** mm: the box round a step of a slanting ray grows with its square, so steps do not grow beyond all bounds. */
const FIRST_STEP = 1;
const MAX_STEP = 8;

/**
 * The first edge that the ray meets within `limit`. The ray is followed in steps that double in length up to a
 * bound, so that short answers are found without looking far.
 * @param direction of length 1
 */
export function firstHit(index: SegmentIndex, origin: Point, direction: Point, limit: number): Hit | undefined {
  for (let from = 0, step = FIRST_STEP; from < limit; from += step, step = Math.min(MAX_STEP, 2 * step)) {
    const to = Math.min(limit, from + step);
    const hit = hitBetween(index, origin, direction, from, to);
    if (hit) return hit;
  }
  return undefined;
}

export interface HitPair {
  /** Against the direction, and along it. */
  readonly back: Hit | undefined;
  readonly ahead: Hit | undefined;
}

/** The same, along the direction and against it, each within `limit`. */
export function firstHits(index: SegmentIndex, origin: Point, direction: Point, limit: number): HitPair {
  let hits: HitPair = { back: undefined, ahead: undefined };
  for (
    let reach = 0, step = FIRST_STEP;
    reach < limit && !(hits.back && hits.ahead);
    step = Math.min(MAX_STEP, 2 * step)
  ) {
    reach = Math.min(limit, reach + step);
    hits = hitsWithin(index, origin, direction, reach);
  }
  return hits;
}

function hitsWithin(index: SegmentIndex, origin: Point, direction: Point, reach: number): HitPair {
  let [back, ahead] = [-1, -1];
  let [backAt, aheadAt] = [-Infinity, Infinity];
  forEachSegmentInBox(index, boxAlong(origin, direction, -reach, reach), (edge) => {
    const at = distanceTo(index, edge, origin, direction);
    if (Math.abs(at) <= START || Math.abs(at) > reach) return;
    if (at > 0 && at < aheadAt) {
      ahead = edge;
      aheadAt = at;
    } else if (at < 0 && at > backAt) {
      back = edge;
      backAt = at;
    }
  });
  const hit = (edge: number, at: number): Hit | undefined =>
    edge < 0
      ? undefined
      : {
          edge,
          distance: Math.abs(at),
          point: add(origin, scale(direction, at)),
          polygon: defined(index.polygon[edge]),
        };
  return { back: hit(back, backAt), ahead: hit(ahead, aheadAt) };
}

function boxAlong(origin: Point, direction: Point, from: number, to: number): Box {
  const [a, b] = [add(origin, scale(direction, from)), add(origin, scale(direction, to))];
  return { minX: Math.min(a.x, b.x), minY: Math.min(a.y, b.y), maxX: Math.max(a.x, b.x), maxY: Math.max(a.y, b.y) };
}

function hitBetween(index: SegmentIndex, origin: Point, direction: Point, from: number, to: number): Hit | undefined {
  let best: { edge: number; distance: number } | undefined;
  forEachSegmentInBox(index, boxAlong(origin, direction, from, to), (edge) => {
    const distance = distanceTo(index, edge, origin, direction);
    if (distance > START && distance <= to && distance < (best?.distance ?? Infinity)) best = { edge, distance };
  });
  if (!best) return undefined;
  const point = add(origin, scale(direction, best.distance));
  return { ...best, point, polygon: defined(index.polygon[best.edge]) };
}

/** Infinite where the ray passes the edge by. */
function distanceTo(index: SegmentIndex, edge: number, origin: Point, direction: Point): number {
  const startX = defined(index.x0[edge]) - origin.x;
  const startY = defined(index.y0[edge]) - origin.y;
  const alongX = defined(index.x1[edge]) - defined(index.x0[edge]);
  const alongY = defined(index.y1[edge]) - defined(index.y0[edge]);
  const turn = direction.x * alongY - direction.y * alongX;
  if (turn === 0) return Infinity;
  const share = (startX * direction.y - startY * direction.x) / turn;
  return share >= 0 && share <= 1 ? (startX * alongY - startY * alongX) / turn : Infinity;
}

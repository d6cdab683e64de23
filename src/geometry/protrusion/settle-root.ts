/**
 * The last step of the search for lobes: a root that was found between sampled vertices of a simplified ring settles on the
 * ring itself, where the reach less the root's length is greatest. So a lobe has the same root however it is posed.
 */
import type { Point } from '../base/curve-types';
import type { Ring } from '../base/polygon-types';
import { ringOfPoints } from '../base/ring';
import { OVERLAY_GRID } from '../base/tolerances';
import { distance, interpolate } from '../base/vector';
import { forEachSegmentInBox, nearestSegment, type SegmentIndex } from '../spatial/segment-index';
import type { ArcLengthRing, RingInterval } from './ring-arclength';

/** What is known of a lobe before. */
interface Lobe {
  readonly from: Point;
  readonly to: Point;
  readonly tip: Point;
}

interface SettledLobe extends Lobe {
  readonly root: number;
  readonly reach: number;
  readonly outline: Ring;
}

/** mm: steps along the ring are halved down to this. */
const FINEST = OVERLAY_GRID;

/** Both ends one way, the other way, or one at a time. */
const MOVES = [
  [1, -1],
  [-1, 1],
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
] as const;

/** @param step mm along the ring that either end is tried away at first */
export function settleRoot(
  exact: { readonly index: SegmentIndex; readonly ring: ArcLengthRing },
  lobe: Lobe,
  step: number,
): SettledLobe {
  const { index, ring } = exact;
  const placeOf = (point: Point): number => {
    const place = nearestSegment(index, point);
    return place ? ring.placeOf(place.edge, place.t) : 0;
  };
  const found = { start: placeOf(lobe.from), end: placeOf(lobe.to) };
  const settled = climb(ring, found, lobe.tip, step);
  return describe(ring, isClear(exact, settled) ? settled : found);
}

function climb(ring: ArcLengthRing, found: RingInterval, tip: Point, step: number): RingInterval {
  let [best, worth] = [found, worthOf(ring, found, tip)];
  for (let size = step; size > FINEST; size /= 2) {
    for (let tries = 0; tries < 8; tries += 1) {
      let better = false;
      for (const [s, e] of MOVES) {
        const moved = { start: wrap(ring, best.start + s * size), end: wrap(ring, best.end + e * size) };
        const value = worthOf(ring, moved, tip);
        if (value > worth + FINEST * FINEST) [best, worth, better] = [moved, value, true];
      }
      if (!better) break;
    }
  }
  return best;
}

function worthOf(ring: ArcLengthRing, { start, end }: RingInterval, tip: Point): number {
  const [from, to] = [ring.pointAt(start), ring.pointAt(end)];
  return distance(interpolate(from, to, 0.5), tip) - distance(from, to);
}

function wrap({ length }: ArcLengthRing, place: number): number {
  return place < 0 ? place + length : place >= length ? place - length : place;
}

/** Whether no edge of the ring crosses the root. */
function isClear(
  { index, ring }: { readonly index: SegmentIndex; readonly ring: ArcLengthRing },
  { start, end }: RingInterval,
): boolean {
  const [from, to] = [ring.pointAt(start), ring.pointAt(end)];
  const [a, b] = [interpolate(from, to, 1e-3), interpolate(from, to, 1 - 1e-3)];
  const box = {
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
  let clear = true;
  forEachSegmentInBox(index, box, (edge) => {
    if (crosses(a, b, index, edge)) clear = false;
  });
  return clear;
}

function crosses(a: Point, b: Point, { x0, y0, x1, y1 }: SegmentIndex, edge: number): boolean {
  const c = { x: x0[edge] ?? 0, y: y0[edge] ?? 0 };
  const d = { x: x1[edge] ?? 0, y: y1[edge] ?? 0 };
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) > 0 !== side(a, b, d) > 0 && side(c, d, a) > 0 !== side(c, d, b) > 0;
}

function describe(ring: ArcLengthRing, { start, end }: RingInterval): SettledLobe {
  const [from, to] = [ring.pointAt(start), ring.pointAt(end)];
  const middle = interpolate(from, to, 0.5);
  const between = [...ring.pointsBetween(start, end, Infinity)].filter(
    (point) => distance(point, from) > 0 && distance(point, to) > 0,
  );
  let tip = middle;
  for (const point of between) if (distance(point, middle) > distance(tip, middle)) tip = point;
  const outline = ringOfPoints([from, ...between, to]);
  return { from, to, root: distance(from, to), reach: distance(tip, middle), tip, outline };
}

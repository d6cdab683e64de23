/** Where the ring of a region leaves the outline of a shape and comes back to it. Millimetres. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Curve, Point } from '../../../geometry/base/curve-types';
import type { Region, Ring } from '../../../geometry/base/polygon-types';
import { boxesTouch, boxOfRing, growBox, pointsOf } from '../../../geometry/base/ring';
import { DRAWN_ALIKE, FLATTENING } from '../../../geometry/base/tolerances';
import { interpolate } from '../../../geometry/base/vector';
import { clipToBox, offset, regionContains } from '../../../geometry/boolean/index';
import { flattenSubpath } from '../../../geometry/curve/flatten';
import { boundsOf, nearestOn } from '../../../geometry/curve/index';

/** A place on an outline: which of its subpaths, which curve of that, and where on the curve. */
export interface OutlinePlace {
  readonly subpath: number;
  readonly curve: number;
  readonly t: number;
}

/** A stretch of the ring outside the shape. */
export interface OuterChain {
  readonly from: OutlinePlace;
  readonly to: OutlinePlace;
  /** Both ends included. */
  readonly points: readonly Point[];
}

interface Crossing {
  /** Index of the ring's edge, and the share of the edge before it. */
  readonly along: number;
  readonly point: Point;
  readonly place: OutlinePlace;
}

/**
 * @param outline the curves of the shape's subpaths
 * @param inside what the shape fills
 */
export function outerChains(ring: Ring, outline: readonly (readonly Curve[])[], inside: Region): OuterChain[] {
  const points = pointsOf(ring);
  const about = offset(clipToBox(inside, growBox(boxOfRing(ring), 1)), DRAWN_ALIKE);
  const crossings = crossingsOf(ring, points, outline);
  return crossings.flatMap((from, i): OuterChain[] => {
    const to = defined(crossings[(i + 1) % crossings.length]);
    const between = pointsBetween(points, from.along, to.along, i === crossings.length - 1);
    const chain = [from.point, ...between, to.point];
    return isOutside(chain, about) ? [{ from: from.place, to: to.place, points: chain }] : [];
  });
}

function crossingsOf(ring: Ring, points: readonly Point[], outline: readonly (readonly Curve[])[]): Crossing[] {
  const box = boxOfRing(ring);
  const found: Crossing[] = [];
  outline.forEach((curves, subpath) => {
    curves.forEach((curve, index) => {
      if (!boxesTouch(boundsOf(curve), box)) return;
      const edges = [...pointsOf(flattenSubpath([curve], FLATTENING)), curve.end];
      for (let k = 1; k < edges.length; k += 1) {
        const [a, b] = [defined(edges[k - 1]), defined(edges[k])];
        if (a.x === b.x && a.y === b.y) continue;
        checkpoint(points.length);
        points.forEach((start, at) => {
          const end = defined(points[(at + 1) % points.length]);
          const share = crossingShare(start, end, a, b);
          if (share === undefined) return;
          const point = interpolate(start, end, share);
          found.push({ along: at + share, point, place: { subpath, curve: index, t: nearestOn(curve, point).t } });
        });
      }
    });
  });
  return found.sort((one, other) => one.along - other.along);
}

/** Where an edge crosses another one: as a share of its length; undefined where it does not. */
function crossingShare(start: Point, end: Point, a: Point, b: Point): number | undefined {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const side0 = (start.x - a.x) * dy - (start.y - a.y) * dx;
  const side1 = (end.x - a.x) * dy - (end.y - a.y) * dx;
  if (side0 > 0 === side1 > 0) return undefined;
  const share = side0 / (side0 - side1);
  const { x, y } = interpolate(start, end, share);
  const along = ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy);
  return along >= 0 && along < 1 ? share : undefined;
}

function pointsBetween(points: readonly Point[], from: number, to: number, wraps: boolean): Point[] {
  const last = Math.floor(to) + (wraps ? points.length : 0);
  const first = Math.floor(from) + 1;
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => defined(points[(first + i) % points.length]));
}

/** Whether it is anywhere plainly outside: along the outline itself it may cross it many times. */
function isOutside(chain: readonly Point[], inside: Region): boolean {
  return chain.some((point, i) => {
    const next = chain[i + 1] ?? point;
    return !regionContains(inside, point) || !regionContains(inside, interpolate(point, next, 0.5));
  });
}

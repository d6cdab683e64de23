/**
 * Polygons that a union need not look at. Artwork commonly stands on a background, and a flag's field holds all of it:
 * what lies wholly inside another polygon adds nothing, and is neither cut nor traced.
 */
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Polygon, Region, Ring } from '../base/polygon-types';
import { boxContainsBox, boxOfRing, growBox, ringContains, ringsOf } from '../base/ring';
import { TOUCHING } from '../base/tolerances';
import { nearnessTo } from './near-rings';

/** So many of the largest polygons are looked at as what may hold others, so that the work grows no faster than they. */
const MAX_CONTAINERS = 8;

/** mm: what keeps so far from the border of another is cut by none of its edges after rounding to the grid. */
const CLEAR = 2 * TOUCHING;

/** The polygons that do not lie inside one of the others, in their order. The union of both lists is the same. */
export function withoutCovered(polygons: Region): Region {
  const boxes = polygons.map(({ outer }) => boxOfRing(outer));
  const areas = boxes.map(({ minX, minY, maxX, maxY }) => (maxX - minX) * (maxY - minY));
  const bySize = [...boxes.keys()].sort((a, b) => defined(areas[b]) - defined(areas[a]));
  const covered = new Set<number>();
  for (const number of bySize.slice(0, MAX_CONTAINERS)) {
    if (covered.has(number)) continue;
    const inner = growBox(defined(boxes[number]), -CLEAR);
    const within = bySize.filter((other) => !covered.has(other) && boxContainsBox(inner, defined(boxes[other])));
    if (within.length === 0) continue;
    const isCovered = coverBy(defined(polygons[number]));
    for (const other of within) if (isCovered(defined(polygons[other]).outer)) covered.add(other);
  }
  return covered.size > 0 ? polygons.filter((_, number) => !covered.has(number)) : polygons;
}

/** Whether a ring lies inside the polygon, with all that it encloses. */
function coverBy(polygon: Polygon): (ring: Ring) => boolean {
  const { outer, holes } = polygon;
  const isNear = nearnessTo(ringsOf(polygon), CLEAR);
  return (ring) => {
    if (isNear(ring) || !ringContains(outer, firstPoint(ring))) return false;
    const box = boxOfRing(ring);
    return !holes.some(
      (hole) =>
        ringContains(hole, firstPoint(ring)) ||
        (boxContainsBox(box, boxOfRing(hole)) && ringContains(ring, firstPoint(hole))),
    );
  };
}

function firstPoint(ring: Ring): Point {
  return { x: defined(ring[0]), y: defined(ring[1]) };
}

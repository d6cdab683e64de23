import { defined } from '../../base/defined';
import type { Point } from './curve-types';
import type { Ring } from './polygon-types';
import { boxOfRing, forEachEdge } from './ring';

/**
 * A point well within a polygon: on the level line at half its height,
 * the middle of the widest stretch that runs inside. The middle of the box where nothing is inside.
 */
export function pointInside(outer: Ring, holes: readonly Ring[] = []): Point {
  const { minX, minY, maxX, maxY } = boxOfRing(outer);
  const y = (minY + maxY) / 2;
  let best = { x: (minX + maxX) / 2, width: -1 };
  for (const [left, right] of stretchesInside([outer, ...holes], y)) {
    if (right - left > best.width) best = { x: (left + right) / 2, width: right - left };
  }
  return { x: best.x, y };
}

/** Where the line at height y runs inside, from left to right. */
function stretchesInside(rings: readonly Ring[], y: number): (readonly [number, number])[] {
  const crossings: number[] = [];
  for (const ring of rings) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      if (y0 > y !== y1 > y) crossings.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
    });
  }
  crossings.sort((a, b) => a - b);
  return crossings.flatMap((right, i) => (i % 2 === 1 ? [[defined(crossings[i - 1]), right] as const] : []));
}

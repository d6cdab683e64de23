/** How often closed chains of curves go round a point. */

import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import type { Box, Ring } from '../../geometry/base/polygon-types';
import { boxOfRing } from '../../geometry/base/ring';
import { flattenSubpath } from '../../geometry/curve/flatten';

/** Closed chains with straight edges. */
export interface RingWindings {
  readonly rings: readonly { readonly ring: Ring; readonly box: Box }[];
}

/** @param tolerance how far the straight edges may stay from the curves */
export function indexWindings(chains: readonly (readonly Curve[])[], tolerance: number): RingWindings {
  return {
    rings: chains.map((curves) => flattenSubpath(curves, tolerance)).map((ring) => ({ ring, box: boxOfRing(ring) })),
  };
}

/** Turns round a point: positive for rings with a positive shoelace sum. Unreliable on the rings themselves. */
export function windingNumber({ rings }: RingWindings, point: Point): number {
  let turns = 0;
  for (const { ring, box } of rings) {
    if (point.x < box.minX || point.x > box.maxX || point.y < box.minY || point.y > box.maxY) continue;
    turns += turnsOf(ring, point);
  }
  return turns;
}

function turnsOf(ring: Ring, { x, y }: Point): number {
  let turns = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [x0, y0, x1, y1] = [defined(ring[j]), defined(ring[j + 1]), defined(ring[i]), defined(ring[i + 1])];
    if (y0 <= y === y1 <= y) continue;
    const side = (x1 - x0) * (y - y0) - (x - x0) * (y1 - y0);
    if (y0 <= y && side > 0) turns += 1;
    if (y0 > y && side < 0) turns -= 1;
  }
  return turns;
}

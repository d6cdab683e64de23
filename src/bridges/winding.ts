/** How often closed chains of curves go round a point. */
import type { Curve, Point } from '../geometry/curve';
import { flattenSubpath } from '../geometry/flatten';
import type { Ring } from '../geometry/region';

/** Turns of all rings round a point: positive for rings with a positive shoelace sum. Unreliable on the rings themselves. */
export function windingNumber(rings: readonly Ring[], { x, y }: Point): number {
  let turns = 0;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [x0, y0, x1, y1] = [ring[j], ring[j + 1], ring[i], ring[i + 1]] as [number, number, number, number];
      if (y0 <= y === y1 <= y) continue;
      const side = (x1 - x0) * (y - y0) - (x - x0) * (y1 - y0);
      if (y0 <= y && side > 0) turns += 1;
      if (y0 > y && side < 0) turns -= 1;
    }
  }
  return turns;
}

/** Closed chains as rings, for `windingNumber`. */
export function ringsOf(chains: readonly (readonly Curve[])[], tolerance: number): Ring[] {
  return chains.map((curves) => flattenSubpath(curves, tolerance));
}

/** Regions in another place, or of another size. */

import { defined } from '../../base/defined';
import type { Matrix } from '../base/curve-types';
import { apply } from '../base/matrix';
import type { Region, Ring } from '../base/polygon-types';

/** @param matrix that keeps the sense in which rings turn: a mirrored ring would bound what lies outside of it */
export function transformRegion(region: Region, matrix: Matrix): Region {
  return region.map(({ outer, holes }) => ({
    outer: transformRing(outer, matrix),
    holes: holes.map((hole) => transformRing(hole, matrix)),
  }));
}

function transformRing(ring: Ring, matrix: Matrix): Ring {
  const there = new Float64Array(ring.length);
  for (let at = 0; at + 1 < ring.length; at += 2) {
    const { x, y } = apply(matrix, { x: defined(ring[at]), y: defined(ring[at + 1]) });
    there[at] = x;
    there[at + 1] = y;
  }
  return there;
}

/** A path that was moved for the kerf, as curves again. Millimetres. */
import type { Ring } from '../geometry/base/polygon-types';
import { pointsOf } from '../geometry/base/ring';
import { MEANT_TO_MEET, WRITTEN_STEP } from '../geometry/base/tolerances';
import { fitRing } from '../geometry/curve/fit';
import { simplifyRing } from '../geometry/polygon/simplify';
import { buildSegmentIndex, segmentsNear } from '../geometry/spatial/segment-index';
import { type Chain, chainOfRing, ringOfChain } from './chains';

/** How far off its place it may lie; what is left to 0.01 mm is for arcs and for what other programs make of it. */
const MOST = MEANT_TO_MEET + WRITTEN_STEP;

/** Curves are fitted through points, and stray a little between: the tolerances with which it is tried. */
const TRIED = [MEANT_TO_MEET - WRITTEN_STEP, MEANT_TO_MEET / 2, MEANT_TO_MEET / 5];

/** Lines and cubics along the ring, by as few as stay near enough. */
export function fittedPath(ring: Ring): Chain {
  for (const tolerance of TRIED) {
    const chain = fitRing(ring, tolerance);
    const own = ringOfChain(chain);
    if (isNear(own, ring) && isNear(ring, own)) return chain;
  }
  return chainOfRing(simplifyRing(ring, WRITTEN_STEP));
}

function isNear(ring: Ring, other: Ring): boolean {
  const index = buildSegmentIndex([{ outer: other, holes: [] }]);
  return pointsOf(ring).every((point) => segmentsNear(index, point, MOST).length > 0);
}

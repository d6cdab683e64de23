/** Ways straight across from all round an island, in all directions out of it. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import type { SegmentIndex } from '../../../geometry/spatial/segment-index';
import { type BridgeCandidate, samplesOf, straightCandidates } from '../candidates';
import { cornersOf } from './corners';

/** Degrees by which a way may lean from straight ahead. */
const LEANING = [0, 10, -10, 20, -20, 30, -30, 45, -45, 60, -60];

/**
 * From places all round and from each corner.
 * @param places so many at least
 * @param limit mm: no way is longer
 */
export function* waysAllRound(
  outer: Ring,
  places: number,
  island: number,
  limit: number,
  pieces: SegmentIndex,
): Iterable<BridgeCandidate> {
  for (const { point, outward } of [...samplesOf(outer, places), ...cornersOf(outer)]) {
    checkpoint(100);
    for (const lean of LEANING)
      yield* straightCandidates(pieces, island, { point, outward: turned(outward, lean) }, limit);
  }
}

function turned({ x, y }: Point, degrees: number): Point {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return { x: x * cos - y * sin, y: x * sin + y * cos };
}

/** Every way across from an island, for one that the usual search finds none for. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { boxOfRing } from '../../../geometry/base/ring';
import { samplesOf, straightCandidates } from '../candidates';
import { byCost, type ScoredCandidate, type Surroundings, scoreCandidate } from '../score';
import { cornersOf } from './corners';
import { rootedInPoints, STEEPEST } from './rooted';

/** So many places all round an island. */
const PLACES = 120;
/** Degrees by which a way may lean from straight ahead. */
export const LEANING = [0, 10, -10, 20, -20, 30, -30, 45, -45, 60, -60];
/** The cheapest are enough to choose from. */
const MOST = 80;

/**
 * From all round the island and from each of its corners, in all directions out of it; ends may lie on points.
 * @param limit mm: no way is longer
 * @param least mm as drawn: the least width
 */
export function everyWayFrom(
  outer: Ring,
  island: number,
  limit: number,
  least: number,
  around: Surroundings,
): ScoredCandidate[] {
  // What is narrower than a bridge every way is not held by one: it would be a part of the bridge.
  const { minX, minY, maxX, maxY } = boxOfRing(outer);
  if (Math.max(maxX - minX, maxY - minY) < least) return [];
  const found: ScoredCandidate[] = [];
  for (const { point, outward } of [...samplesOf(outer, PLACES), ...cornersOf(outer)]) {
    checkpoint(100);
    for (const lean of LEANING) {
      const sample = { point, outward: turned(outward, lean) };
      for (const way of straightCandidates(around.pieces, island, sample, limit)) {
        const scored = scoreCandidate(way, island, least, around, STEEPEST);
        const rooted = scored && rootedInPoints(scored, least, around);
        if (rooted && rooted.length <= around.longest) found.push(rooted);
      }
    }
  }
  return found.sort(byCost).slice(0, MOST);
}

export function turned({ x, y }: Point, degrees: number): Point {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return { x: x * cos - y * sin, y: x * sin + y * cos };
}

/** Every way across from an island, for one that the usual search finds none for. Sheet mm. */
import type { Ring } from '../../../geometry/base/polygon-types';
import { boxOfRing } from '../../../geometry/base/ring';
import { byCost, type ScoredCandidate, type Surroundings, scoreCandidate } from '../score';
import { waysAllRound } from './all-round';
import { rootedInPoints, STEEPEST } from './rooted';

/** So many places all round an island. */
const PLACES = 120;
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
  for (const way of waysAllRound(outer, PLACES, island, limit, around.pieces)) {
    const scored = scoreCandidate(way, island, least, around, STEEPEST);
    const rooted = scored && rootedInPoints(scored, least, around);
    if (rooted && rooted.length <= around.longest) found.push(rooted);
  }
  return found.sort(byCost).slice(0, MOST);
}

/** Ways across in all directions, for an island that the usual ones do not hold still. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import type { Ring } from '../../../geometry/base/polygon-types';
import { distance } from '../../../geometry/base/vector';
import { byCost, type ScoredCandidate, type Surroundings, scoreCandidate } from '../score';
import { waysAllRound } from './all-round';

/** So many places all round an island. */
const PLACES = 60;
/** mm: ways whose ends both lie nearer than this are the same, and the cheaper one is enough. */
const SAME = 2.5;
/** The cheapest are enough to choose from. */
const MOST = 120;

/**
 * Those with square ends only, from all round the island and its corners; spread, so that cheap ones of one place do not crowd out others.
 * @param limit mm: no way is longer
 * @param least mm as drawn: the least width
 */
export function manyWaysFrom(
  outer: Ring,
  island: number,
  limit: number,
  least: number,
  around: Surroundings,
): ScoredCandidate[] {
  const found: ScoredCandidate[] = [];
  for (const way of waysAllRound(outer, PLACES, island, limit, around.pieces)) {
    const scored = scoreCandidate(way, island, least, around);
    if (scored) found.push(scored);
  }
  return spread(found.sort(byCost));
}

function spread(ways: readonly ScoredCandidate[]): ScoredCandidate[] {
  const kept: ScoredCandidate[] = [];
  for (const way of ways) {
    if (kept.length === MOST) break;
    checkpoint(kept.length);
    const isSame = kept.some((other) => distance(other.from, way.from) < SAME && distance(other.to, way.to) < SAME);
    if (!isSame) kept.push(way);
  }
  return kept;
}

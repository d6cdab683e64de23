/** Bridges whose ends lie on points: rooted where the pieces are as wide as they. Sheet mm. */
import { add, normalise, scale, subtract } from '../../../geometry/base/vector';
import type { BridgeCandidate } from '../candidates';
import { laneAt } from '../lanes';
import { type ScoredCandidate, type Surroundings, scoreCandidate } from '../score';

/** How far a strip reaches beyond its end for sure, in widths. */
const REACHED = 0.8;
/** What such a bridge costs, in times of one with square ends. */
const SLANTED = 1.5;
/** How far the edge at an end may run along a bridge that is rooted, in widths. */
export const STEEPEST = 8;

/**
 * The point of a piece, as that of A's counter, goes into the bridge.
 * @param least mm as drawn: the least width
 */
export function rootedInPoints(
  way: ScoredCandidate,
  least: number,
  { pieces }: Pick<Surroundings, 'pieces'>,
): ScoredCandidate {
  // Where there is no better place, a slanted end is no fault.
  const costAt = (length: number) => (SLANTED * length * way.width) / least;
  const middle = laneAt(way, 0, way.island, pieces);
  const sides = [-0.5, 0.5].flatMap((lane) => laneAt(way, lane * way.width, way.island, pieces) ?? []);
  const along = normalise(subtract(way.to, way.from));
  if (!middle || !along) return way;
  const deeper = (end: 'back' | 'ahead') =>
    Math.max(0, ...sides.map((side) => side[end] - middle[end] - REACHED * way.width));
  const [back, ahead] = [deeper('back'), deeper('ahead')];
  if (back === 0 && ahead === 0) return { ...way, rooted: true, cost: Math.min(way.cost, costAt(way.length)) };
  const length = way.length + back + ahead;
  const [from, to] = [subtract(way.from, scale(along, back)), add(way.to, scale(along, ahead))];
  return { ...way, from, to, length, rooted: true, cost: costAt(length) };
}

/** The image of a bridge elsewhere, from edge to edge: rooted where that one is. */
export function scoreImage(
  image: BridgeCandidate,
  { rooted = false }: Pick<ScoredCandidate, 'rooted'>,
  island: number,
  least: number,
  around: Surroundings,
): ScoredCandidate | undefined {
  if (!rooted) return scoreCandidate(image, island, least, around);
  const scored = scoreCandidate(image, island, least, around, STEEPEST);
  return scored && rootedInPoints(scored, least, around);
}

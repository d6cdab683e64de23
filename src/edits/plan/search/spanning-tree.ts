/** In which order islands come to hang on the frame: through each other where the frame is not next to them. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { ScoredCandidate } from '../score';

/**
 * The cheapest tree towards the frame (Prim 1957), cut down to the islands asked for and those between them and the
 * frame. Given in the order in which they can be hung: each has a way to the frame or to an island before it.
 * @param ways for each piece the ways across that leave it, cheapest first
 */
export function minimumSpanningTree(
  ways: readonly (readonly ScoredCandidate[])[],
  frames: readonly number[],
  asked: readonly number[],
): number[] {
  const arriving = ways.map((): ScoredCandidate[] => []);
  for (const leaving of ways) for (const way of leaving) arriving[way.target]?.push(way);
  const order: number[] = [];
  const parents = new Map<number, number>();
  const best = new Map<number, ScoredCandidate>();
  const joined = new Set<number>();
  const join = (piece: number): void => {
    joined.add(piece);
    best.delete(piece);
    checkpoint();
    for (const way of defined(arriving[piece])) {
      if (!joined.has(way.island) && way.cost < (best.get(way.island)?.cost ?? Infinity)) best.set(way.island, way);
    }
  };
  frames.forEach(join);
  while (best.size > 0) {
    const next = [...best.values()].reduce((cheapest, way) => (way.cost < cheapest.cost ? way : cheapest));
    parents.set(next.island, next.target);
    order.push(next.island);
    join(next.island);
  }
  const needed = withAncestors(asked, parents);
  return order.filter((piece) => needed.has(piece));
}

function withAncestors(asked: readonly number[], parents: ReadonlyMap<number, number>): Set<number> {
  const needed = new Set<number>();
  for (const piece of asked) {
    for (let at: number | undefined = piece; at !== undefined && !needed.has(at); at = parents.get(at)) needed.add(at);
  }
  return needed;
}

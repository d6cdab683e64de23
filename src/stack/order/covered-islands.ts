/** Which islands of a layer later layers cover, for every set of later layers. Sets are bit masks of layers. */
import { checkpoint } from '../../base/checkpoint';
import type { Polygon, Region } from '../../geometry/base/polygon-types';
import { isCoveredByLater, withoutHairlines } from '../covered-by-later';
import { bitsOf } from './best-order';
import { overlapOf } from './print-order';

/** How many islands of the layer are left when the layers of a set are sprayed later. */
export type IslandsLeft = (later: number) => number;

/**
 * @param islands of one layer, as cut
 * @param painted what each of the stack's layers paints, as cut
 * @param may the layers that may be sprayed after this one
 * @param slip mm
 */
export function islandsLeft(islands: Region, painted: readonly Region[], may: number, slip: number): IslandsLeft {
  // Many islands are covered by the same layers: those are counted together.
  const alike = new Map<string, { readonly sets: readonly number[]; count: number }>();
  for (const island of islands) {
    const sets = leastCovers(island, painted, may, slip);
    const key = sets.join();
    const known = alike.get(key);
    if (known) known.count += 1;
    else alike.set(key, { sets, count: 1 });
  }
  const groups = [...alike.values()];
  const memory = new Map<number, number>();
  const matters = groups.reduce((all, { sets }) => sets.reduce((some, set) => some | set, all), 0);
  return (later) => {
    const set = later & matters;
    const known = memory.get(set);
    if (known !== undefined) return known;
    const left = groups.reduce(
      (sum, { sets, count }) => sum + (sets.some((each) => (each & ~set) === 0) ? 0 : count),
      0,
    );
    memory.set(set, left);
    return left;
  };
}

/** The least sets of layers that cover an island: with each of them, every greater set covers it too. */
function leastCovers(island: Polygon, painted: readonly Region[], may: number, slip: number): number[] {
  const near = painted.map((region, layer) =>
    (may & (1 << layer)) === 0 ? [] : withoutHairlines(overlapOf(region, [island])),
  );
  const covers = (set: number): boolean => {
    checkpoint(50);
    const later = near.flatMap((region, layer) => ((set & (1 << layer)) === 0 ? [] : region));
    return isCoveredByLater([island], later, slip);
  };
  const all = near.reduce((set, region, layer) => (region.length > 0 ? set | (1 << layer) : set), 0);
  if (all === 0 || !covers(all)) return [];
  // Without the layers that no other can stand for, few sets are left to be tried.
  const singles = bitsIn(all);
  const needed = singles.filter((bit) => !covers(all & ~bit)).reduce((set, bit) => set | bit, 0);
  return leastSets(needed, all & ~needed, covers);
}

/** The least sets that cover, each of the needed layers and some of the others; the smallest first. */
function leastSets(needed: number, others: number, covers: (set: number) => boolean): number[] {
  const found: number[] = [];
  for (const some of subsetsOf(others)) {
    const set = needed | some;
    if (!found.some((least) => (least & ~set) === 0) && covers(set)) found.push(set);
    if (some === 0 && found.length > 0) return found;
  }
  return found;
}

/** In ascending number of layers. */
function subsetsOf(set: number): number[] {
  const subsets = [0];
  for (const bit of bitsIn(set)) subsets.push(...subsets.map((subset) => subset | bit));
  return subsets.sort((a, b) => bitsOf(a) - bitsOf(b) || a - b);
}

function bitsIn(set: number): number[] {
  const bits: number[] = [];
  for (let rest = set; rest !== 0; rest &= rest - 1) bits.push(rest & -rest);
  return bits;
}

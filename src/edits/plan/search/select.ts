/** Which of the places round one island get its bridges. */
import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import { distance, interpolate } from '../../../geometry/base/vector';
import { areStripsApart, type Strip } from '../../strip/strip';
import type { ScoredCandidate } from '../score';
import { costOfSet, type Need } from './set-cost';
import { stripOf, stripsAmong } from './strips';

export interface Choice {
  readonly need: Need;
  /** So many bridges at most. */
  readonly most: number;
  readonly near: Point | undefined;
  /** Strips of others that are already there. */
  readonly taken: readonly Strip[];
  /** Whether a bridge leads to something that hangs on the frame already. */
  readonly held: (way: ScoredCandidate) => boolean;
}

/** Only the cheapest few are tried as the first of a set. */
const MAX_STARTS = 12;
/** A set is gone through so many times at most. */
const MAX_ROUNDS = 6;
/** mm: less is no improvement, but rounding. */
export const GAIN = 1e-6;
/** A further bridge that leads to what does not hang yet counts as so much dearer. */
const NOT_HELD = 1.3;

/** The best set that is found, one of it at least a held one; empty where there is no room. */
export function selectBridges(ways: readonly ScoredCandidate[], choice: Choice): readonly ScoredCandidate[] {
  if (choice.most <= 0) return [];
  const taken = stripsAmong(choice.taken, ways);
  const free = ways.filter((way) => isClear(way, taken));
  const starts = choice.near ? sortByDistance(free, choice.near).slice(0, 1) : free;
  let best: { set: readonly ScoredCandidate[]; cost: number } | undefined;
  for (const start of starts.filter(choice.held).slice(0, MAX_STARTS)) {
    const set = extend([start], free, choice);
    const cost = costOfSet(set, choice.need);
    if (!best || cost < best.cost - GAIN) best = { set, cost };
  }
  if (!best) return [];
  return choice.near ? best.set : improveSet(best.set, free, choice);
}

function sortByDistance(ways: readonly ScoredCandidate[], near: Point): ScoredCandidate[] {
  const away = ({ from, to }: ScoredCandidate): number => distance(interpolate(from, to, 0.5), near);
  return [...ways].sort((a, b) => away(a) - away(b));
}

/** One by one, as long as it is worth it. */
function extend(
  start: readonly ScoredCandidate[],
  free: readonly ScoredCandidate[],
  { need, most, held }: Choice,
): ScoredCandidate[] {
  const set = [...start];
  while (set.length < most) {
    const now = costOfSet(set, need);
    let best: { way: ScoredCandidate; cost: number } | undefined;
    checkpoint(20 * free.length + 4);
    for (const way of free) {
      const limit = best?.cost ?? now - GAIN;
      const more = held(way) ? 0 : (NOT_HELD - 1) * way.cost;
      const cost = costOfSet([...set, way], need, limit - more) + more;
      if (cost < limit && isClearOf(way, set)) best = { way, cost };
    }
    if (!best) break;
    set.push(best.way);
  }
  return set;
}

/** Swaps, adds and drops bridges until nothing is better. */
export function improveSet(
  start: readonly ScoredCandidate[],
  free: readonly ScoredCandidate[],
  choice: Choice,
  costOf: (set: readonly ScoredCandidate[], limit: number) => number = (set, limit) =>
    costOfSet(set, choice.need, limit),
): readonly ScoredCandidate[] {
  let [set, cost] = [start, costOf(start, Infinity)];
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const before = cost;
    for (const changed of neighboursOf(() => set, free, choice)) {
      const tried = costOf(changed, cost - GAIN);
      if (tried < cost - GAIN) [set, cost] = [changed, tried];
    }
    if (cost >= before) break;
  }
  return set;
}

/** Sets with one bridge fewer, one other or one more than what is the best by then. */
function* neighboursOf(
  current: () => readonly ScoredCandidate[],
  free: readonly ScoredCandidate[],
  { most, held }: Choice,
): Iterable<readonly ScoredCandidate[]> {
  const size = current().length;
  for (let at = 0; at <= size; at += 1) {
    const without = (): readonly ScoredCandidate[] => current().filter((_, i) => i !== at);
    if (at < current().length && without().some(held)) yield without();
    for (const way of free) {
      checkpoint(10);
      const rest = without();
      if (rest.length < most && isClearOf(way, rest) && (held(way) || rest.some(held))) yield [...rest, way];
    }
  }
}

function isClearOf(way: ScoredCandidate, others: readonly ScoredCandidate[]): boolean {
  return others.every((other) => other !== way && areStripsApart(stripOf(way), stripOf(other)));
}

export function isClear(way: ScoredCandidate, strips: readonly Strip[]): boolean {
  const strip = stripOf(way);
  return strips.every((other) => areStripsApart(strip, other));
}

/** Whether there is room for all of a set, beside each other and what is there. */
export function areClear(set: readonly ScoredCandidate[], taken: readonly Strip[]): boolean {
  const strips = stripsAmong(taken, set);
  return set.every((way, i) => isClear(way, strips) && isClearOf(way, set.slice(i + 1)));
}

/**
 * The best of some sets, where it is worth its cost; else what is usual.
 * @param worth so many times the usual cost, in the mean of its bridges; below 1 in all
 */
export function preferredSet(
  sets: readonly (readonly ScoredCandidate[])[],
  usual: readonly ScoredCandidate[],
  { need, taken, held }: Choice,
  worth: number,
): readonly ScoredCandidate[] {
  let best: { set: readonly ScoredCandidate[]; cost: number } | undefined;
  for (const set of sets) {
    if (!set.some(held)) continue;
    // The flattening of curves makes no axis better than another.
    const limit = best ? 0.99 * best.cost : Infinity;
    const cost = costOfSet(set, need, limit);
    if (cost < limit && areClear(set, taken)) best = { set, cost };
  }
  if (!best || usual.length === 0) return best?.set ?? usual;
  const share = worth < 1 ? 1 : usual.length / best.set.length;
  return best.cost * share <= worth * costOfSet(usual, need) ? best.set : usual;
}

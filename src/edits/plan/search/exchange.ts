/** Makes a plan better by exchange: island by island bridges are swapped, added and dropped, until nothing is better. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { ScoredCandidate } from '../score';
import { besideOf } from './beside';
import { type Assignment, choiceFor, hangingOn, type Layout, tiesOf } from './layout';
import { improveSet, isClear } from './select';
import { costOfSet } from './set-cost';
import { stripsAmong } from './strips';

/** All islands are gone through so many times at most. */
const MAX_ROUNDS = 3;

/**
 * @param layout is changed
 * @param settled islands whose bridges stay as they are
 */
export function exchange(state: Assignment, layout: Layout, settled: ReadonlySet<number>): void {
  if (state.options.near) return;
  let waiting = new Set([...layout.keys()].filter((number) => !settled.has(number)));
  for (let round = 0; round < MAX_ROUNDS && waiting.size > 0; round += 1) {
    const next = new Set<number>();
    for (const number of waiting) {
      const before = layout.get(number) ?? [];
      const after = improved(state, layout, number);
      if (after === before) continue;
      layout.set(number, after);
      for (const other of neighboursOf(state, number)) if (layout.has(other) && !settled.has(other)) next.add(other);
    }
    waiting = next;
  }
}

/** What its ways lead to, and what leads to it: there room was made, or hold. */
function neighboursOf({ ways }: Assignment, number: number): Set<number> {
  const near = new Set(defined(ways[number]).map(({ target }) => target));
  checkpoint(ways.length);
  ways.forEach((own, other) => {
    if (own.some(({ target }) => target === number || near.has(target))) near.add(other);
  });
  near.delete(number);
  return near;
}

function improved(state: Assignment, layout: Layout, number: number): readonly ScoredCandidate[] {
  const before = layout.get(number) ?? [];
  const others = new Map([...layout].filter(([other]) => other !== number));
  const ties = tiesOf(others);
  const firm = hangingOn(state.frames, ties);
  const hangs = (way: ScoredCandidate): boolean => firm.has(way.target);
  const isHeldByOthers = firm.has(number);
  const choice = choiceFor(state, layout, number, isHeldByOthers ? () => true : hangs);
  const taken = stripsAmong(choice.taken, defined(state.ways[number]));
  const free = defined(state.ways[number]).filter((way) => layout.has(way.target) || state.frames.has(way.target));
  const clear = free.filter((way) => isClear(way, taken));
  if (clear.every(({ target }) => state.frames.has(target)) && ties.every(({ target }) => target !== number)) {
    return improveSet(before, clear, choice);
  }
  const beside = besideOf(state, others, ties, number);
  const whole = hangingOn(state.frames, [...ties, ...before]).size;
  return improveSet(before, clear, choice, (set, limit) => {
    const own = costOfSet(set, choice.need, limit);
    if (own >= limit) return own;
    if (hangingOn(state.frames, [...ties, ...set]).size < whole) return Infinity;
    return own + beside(set, limit - own);
  });
}

/** Which ways across become bridges, for all islands of a layer together. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import { regionContains } from '../../../geometry/boolean/index';
import type { ScoredCandidate } from '../score';
import { thinCombs } from '../stiffness/combs';
import { strengthen } from '../stiffness/strengthen';
import { exchange } from './exchange';
import { type Assignment, choiceFor, clustersOf, hangingOn, type Layout, needOfCluster, tiesOf } from './layout';
import { type Choice, preferredSet, selectBridges } from './select';
import { minimumSpanningTree } from './spanning-tree';
import { stripOf } from './strips';
import { isHidden, symmetrise } from './symmetrise';
import { wishesFor } from './wishes';

/**
 * Each island asked for hangs on the frame, if need be through others, by as many bridges as it needs: first one by one in
 * the order of a spanning tree, then made better by exchange. Where the bridges of others left no room for one, all is done
 * again with that one as early as can be.
 */
export function assignBridges(state: Assignment): ScoredCandidate[] {
  const tree = lettersFirst(state, minimumSpanningTree(state.ways, [...state.frames], [...state.asked]));
  const first = assignInOrder(state, tree);
  const left = looseAmong(state, tree, first);
  if (left.length === 0) return finish(state, first);
  const again = assignInOrder(state, moveToFront(left, tree, state));
  return finish(state, looseAmong(state, tree, again).length < left.length ? again : first);
}

/** What lies beside letters is to make room for their lines, so that all that are the same are bridged alike. */
function lettersFirst(state: Assignment, tree: readonly number[]): readonly number[] {
  const inWords = new Set(state.design?.rows.flatMap(({ counters }) => counters.map(({ piece }) => piece)));
  const letters = tree.filter((number) => inWords.has(number));
  return letters.length > 0 && letters.length < tree.length ? moveToFront(letters, tree, state) : tree;
}

function finish(state: Assignment, layout: Started): ScoredCandidate[] {
  symmetrise(state, layout.sets, layout.settled);
  exchange(state, layout.sets, layout.settled);
  strengthen(state, layout.sets);
  thinCombs(state, layout.sets);
  return tiesOf(layout.sets);
}

function looseAmong({ frames }: Assignment, tree: readonly number[], { sets }: Started): number[] {
  const hanging = hangingOn(frames, tiesOf(sets));
  return tree.filter((number) => !hanging.has(number));
}

/** Each island asked for gets its own bridges and no other does, whether or not what they lead to hangs on the frame. */
export function assignAlone(state: Assignment): ScoredCandidate[] {
  const layout: Layout = new Map();
  for (const number of state.asked) {
    const targets = defined(state.ways[number]).map(({ target }) => target);
    const firm = new Set(targets.filter((target) => state.frames.has(target)));
    const round = new Set(targets.filter((target) => surrounds(state, target, number)));
    const held = firm.size > 0 ? firm : round;
    const choice = choiceFor(state, layout, number, ({ target }) => held.size === 0 || held.has(target));
    layout.set(number, chosenFor(state, layout, number, defined(state.ways[number]), choice).set);
  }
  return tiesOf(layout);
}

/** Whether a piece lies round another one. */
function surrounds({ pieces }: Assignment, outer: number, inner: number): boolean {
  const { polygon } = defined(pieces[outer]);
  return regionContains([{ outer: polygon.outer, holes: [] }], defined(pieces[inner]).label);
}

/** Of the cost: mirrored bridges that are not cheaper than this are no better than others that are mirrored as well. */
const BETTER = 0.98;

/** As the eye would have them, where that is worth its cost. */
function chosenFor(
  state: Assignment,
  layout: Layout,
  number: number,
  usable: readonly ScoredCandidate[],
  choice: Choice,
): { set: readonly ScoredCandidate[]; settled: boolean } {
  const usual = selectBridges(usable, choice);
  const plain = { set: usual, settled: false };
  // What later paint covers the eye does not compare.
  if (usual.some((way) => isHidden(way, state.around))) return plain;
  if (choice.most <= 0 || choice.near || !choice.need.statics) return plain;
  for (const { sets, isMet, worth, asLetter } of wishesFor(state, layout, number, usual, choice)) {
    const met = usual.length > 0 && isMet(usual);
    const judged = asLetter ? { ...choice, need: { ...choice.need, statics: undefined } } : choice;
    const set = preferredSet(sets, usual, judged, met ? BETTER : worth);
    if (met || set !== usual) return { set, settled: true };
  }
  return plain;
}

/** The order in which the `early` ones come as soon as something that they can be tied to hangs. */
function moveToFront(early: readonly number[], order: readonly number[], { ways, frames }: Assignment): number[] {
  const waiting = new Set(early);
  const placed = new Set(frames);
  const place = (number: number): void => {
    waiting.delete(number);
    placed.add(number);
    for (const other of [...waiting]) if (ways[other]?.some(({ target }) => placed.has(target))) place(other);
  };
  frames.forEach(place);
  for (const number of order) if (!placed.has(number) && !waiting.has(number)) place(number);
  return [...placed, ...waiting].filter((number) => !frames.has(number));
}

interface Started {
  readonly sets: Layout;
  /** Islands whose bridges are as they are for the eye's sake. */
  readonly settled: Set<number>;
}

function assignInOrder(state: Assignment, order: readonly number[]): Started {
  const { frames } = state;
  const members = new Set([...frames, ...order]);
  const held = new Set(frames);
  const sets: Layout = new Map();
  const settled = new Set<number>();
  for (const number of order) {
    checkpoint(4 * sets.size + 4);
    const usable = defined(state.ways[number]).filter(({ target }) => members.has(target));
    const choice = choiceFor(state, sets, number, ({ target }) => held.has(target));
    const { set, settled: isSettled } = chosenFor(state, sets, number, usable, choice);
    sets.set(number, set);
    if (isSettled) settled.add(number);
    for (const { target } of set) held.add(number).add(target);
  }
  for (const cluster of clustersOf(state, tiesOf(sets))) holdCluster(state, cluster, sets);
  return { sets, settled };
}

/** Further bridges from a cluster of islands to the frame, where it would hinge as a whole. */
function holdCluster(state: Assignment, cluster: readonly number[], sets: Layout): void {
  const { frames, ways } = state;
  const ties = tiesOf(sets);
  const given = ties.filter(({ island, target }) => cluster.includes(island) && frames.has(target));
  const need = needOfCluster(state, cluster, given);
  const most = need.statics && state.options.count !== 1 ? need.wanted - given.length : 0;
  const usable = cluster.flatMap((number) => defined(ways[number]).filter(({ target }) => frames.has(target)));
  const choice = { need, most, near: undefined, taken: ties.map(stripOf), held: () => true };
  for (const way of selectBridges(usable, choice)) sets.set(way.island, [...(sets.get(way.island) ?? []), way]);
}

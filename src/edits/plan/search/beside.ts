/** What the bridges of one island mean to others: those that they lead to, and all that hang together by them. */
import type { ScoredCandidate } from '../score';
import { type Assignment, arrivalsAt, hangingOn, type Layout, needOf, needOfCluster } from './layout';
import { costOfSet, holdLack, type Need } from './set-cost';

type BridgeSet = readonly ScoredCandidate[];

/**
 * mm, in comparison with no bridge at all from that island.
 * @param others the bridges of all other islands
 * @param ties the same as a list
 */
export function besideOf(
  state: Assignment,
  others: Layout,
  ties: BridgeSet,
  number: number,
): (set: BridgeSet, limit: number) => number {
  const gain = gainOf(state, others);
  const lack = clusterLackOf(state, ties, number);
  return (set, limit) => {
    const beside = gain(set);
    return beside >= limit ? beside : beside + lack(set);
  };
}

/** By how much dearer, or cheaper, the islands that a set leads to are held with it. */
function gainOf(state: Assignment, others: Layout): (set: BridgeSet) => number {
  const known = new Map<number, { own: BridgeSet; need: Need; cost: number }>();
  const without = (number: number) => {
    const before = known.get(number);
    if (before) return before;
    const own = others.get(number) ?? [];
    const need = needOf(state, number, arrivalsAt(others, number));
    const made = { own, need, cost: costOfSet(own, need) };
    known.set(number, made);
    return made;
  };
  return (set) => {
    const targets = new Set(set.map(({ target }) => target).filter((target) => !state.frames.has(target)));
    let sum = 0;
    for (const number of targets) {
      const { own, need, cost } = without(number);
      const arriving = set.filter(({ target }) => target === number);
      const given = arriving.map(({ from, to, width }) => ({ from: to, to: from, width }));
      sum += costOfSet(own, { ...need, given: [...need.given, ...given] }) - cost;
    }
    return sum;
  };
}

/** How badly the cluster that an island is in hangs on the frame, as one body. */
function clusterLackOf(state: Assignment, ties: BridgeSet, number: number): (set: BridgeSet) => number {
  const { frames } = state;
  const isInner = ({ target }: ScoredCandidate): boolean => !frames.has(target);
  const inner = ties.filter(isInner);
  const needs = new Map<string, Need>();
  return (set) => {
    const cluster = [...hangingOn(new Set([number]), [...inner, ...set.filter(isInner)])].sort((a, b) => a - b);
    if (cluster.length === 1) return 0;
    const key = cluster.join(' ');
    const need = needs.get(key) ?? needOfCluster(state, cluster, []);
    needs.set(key, need);
    const members = new Set(cluster);
    const supports = [...ties, ...set].filter(({ island, target }) => members.has(island) && frames.has(target));
    const missing = Math.max(0, need.wanted - supports.length) * need.dearest;
    return missing + (need.statics ? holdLack(supports, need, need.statics) : 0);
  };
}

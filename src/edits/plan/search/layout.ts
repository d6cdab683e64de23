/** A plan while it is made: which bridges each island has, what they lead to, what hangs. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import { boxOfRing, joinBoxes } from '../../../geometry/base/ring';
import type { Piece } from '../../../sheet/types';
import type { Design } from '../design/index';
import { byCost, type ScoredCandidate, type Surroundings } from '../score';
import type { PlanOptions } from '../types';
import { type Body, bodyOf, joinBodies } from './body';
import { bridgeCountFor } from './count';
import type { Support } from './hold';
import type { Choice } from './select';
import type { Need } from './set-cost';
import { stripOf } from './strips';
import { WEIGHTS } from './weights';

export interface Assignment {
  readonly pieces: readonly Piece[];
  /** For each piece the ways across that leave it, cheapest first. */
  readonly ways: readonly (readonly ScoredCandidate[])[];
  readonly options: PlanOptions;
  readonly around: Surroundings;
  /** What is alike in the layer; undefined where the artist chooses the place. */
  readonly design: Design | undefined;
  /** The islands that it is for. */
  readonly asked: ReadonlySet<number>;
  /** What is firm. */
  readonly frames: ReadonlySet<number>;
  /** Whether long bridges may be wider than others: where these alone let an island lift too far. */
  readonly isStout?: boolean;
}

/** For each island the bridges that leave it; changed as the search goes on. */
export type Layout = Map<number, readonly ScoredCandidate[]>;

/** Bridges that go, and those that come for them. */
export interface Change {
  readonly out: readonly ScoredCandidate[];
  readonly in: readonly ScoredCandidate[];
}

/** @param layout is changed */
export function applyChange(layout: Layout, change: Change): void {
  for (const old of change.out) {
    layout.set(
      old.island,
      (layout.get(old.island) ?? []).filter((way) => way !== old),
    );
  }
  for (const way of change.in) layout.set(way.island, [...(layout.get(way.island) ?? []), way]);
}

/** More bridges than its size asks for, where it is not held well. */
const MORE = 3;

export function tiesOf(layout: Layout): ScoredCandidate[] {
  return [...layout.values()].flat();
}

/** The bridges that others have to a piece, seen from it. */
export function arrivalsAt(layout: Layout, number: number): Support[] {
  const found: Support[] = [];
  checkpoint(layout.size);
  for (const set of layout.values()) {
    for (const { target, from, to, width } of set) if (target === number) found.push({ from: to, to: from, width });
  }
  return found;
}

/** What is wanted of the islands asked for is not wanted of those that they hang on. */
function optionsFor({ asked, options }: Assignment, numbers: readonly number[]): PlanOptions {
  if (numbers.every((number) => asked.has(number))) return options;
  const { count: _count, near: _near, shortestOnly: _shortestOnly, ...others } = options;
  return others;
}

export function needOf(state: Assignment, number: number, given: readonly Support[]): Need {
  return needOfBody(state, [number], bodyOf(defined(state.pieces[number])), given, defined(state.ways[number])[0]);
}

/** A cluster of islands is held like one island of its size, so that it cannot hinge on a single bridge. */
export function needOfCluster(state: Assignment, cluster: readonly number[], given: readonly Support[]): Need {
  const body = joinBodies(cluster.map((number) => bodyOf(defined(state.pieces[number]))));
  const [cheapest] = cluster.flatMap((number) => defined(state.ways[number])[0] ?? []).sort(byCost);
  return needOfBody(state, cluster, body, given, cheapest);
}

function needOfBody(
  state: Assignment,
  numbers: readonly number[],
  body: Body,
  given: readonly Support[],
  cheapest: ScoredCandidate | undefined,
): Need {
  const { width, count, more = 0, shortestOnly = false } = optionsFor(state, numbers);
  const box = joinBoxes(numbers.map((number) => boxOfRing(defined(state.pieces[number]).polygon.outer)));
  const wanted = typeof count === 'number' ? Math.max(1, Math.round(count)) : bridgeCountFor(box, body.area) + more;
  const dearest = WEIGHTS.further.value * (cheapest?.cost ?? 0) + WEIGHTS.furtherWidths.value * width;
  return { body, wanted, given, dearest, statics: shortestOnly ? undefined : state.around.rule };
}

/** @param held whether a way leads to something that hangs already */
export function choiceFor(
  state: Assignment,
  layout: Layout,
  number: number,
  held: (way: ScoredCandidate) => boolean,
): Choice {
  const own = optionsFor(state, [number]);
  const need = needOf(state, number, arrivalsAt(layout, number));
  const fixed = typeof own.count === 'number' || own.shortestOnly || own.near !== undefined;
  const least = need.wanted - need.given.length;
  const taken = [...layout].flatMap(([other, set]) => (other === number ? [] : set.map(stripOf)));
  return { need, most: fixed || need.wanted === 1 ? least : Math.max(0, least) + MORE, near: own.near, taken, held };
}

/** The pieces that hang on what is firm, by bridges either way. */
export function hangingOn(
  firm: ReadonlySet<number>,
  ties: readonly Pick<ScoredCandidate, 'island' | 'target'>[],
): Set<number> {
  const neighbours = new Map<number, number[]>();
  const link = (a: number, b: number): void => {
    const known = neighbours.get(a);
    if (known) known.push(b);
    else neighbours.set(a, [b]);
  };
  checkpoint(4 * ties.length);
  for (const { island, target } of ties) {
    link(island, target);
    link(target, island);
  }
  const hanging = new Set(firm);
  for (const piece of hanging) for (const next of neighbours.get(piece) ?? []) hanging.add(next);
  return hanging;
}

/** Islands that hang together by bridges, apart from what is firm; single ones are no clusters. */
export function clustersOf({ frames }: Pick<Assignment, 'frames'>, ties: readonly ScoredCandidate[]): number[][] {
  const inner = ties.filter(({ island, target }) => !frames.has(island) && !frames.has(target));
  const clusters: number[][] = [];
  const seen = new Set<number>();
  for (const { island } of inner) {
    if (seen.has(island)) continue;
    const members = hangingOn(new Set([island]), inner);
    for (const member of members) seen.add(member);
    clusters.push([...members]);
  }
  return clusters;
}

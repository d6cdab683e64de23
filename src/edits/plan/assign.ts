/** Which ways across become bridges, for all islands of a layer together. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';
import { boxOfRing, centroidOfRing, joinBoxes } from '../../geometry/base/ring';
import { interpolate } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import type { Piece } from '../../sheet/types';
import type { ScoredCandidate, Surroundings } from './score';
import { bridgeCountFor, preferSymmetric, type SelectionOptions, selectCandidates, stripOf } from './select';
import { minimumSpanningTree } from './spanning-tree';
import { symmetricSets } from './symmetric-sets';
import type { PlanOptions } from './types';

export interface BridgeAssignment {
  readonly pieces: readonly Piece[];
  /** For each piece the ways across that leave it, cheapest first. */
  readonly ways: readonly (readonly ScoredCandidate[])[];
  readonly options: PlanOptions;
  readonly around: Surroundings;
}

/**
 * Each island asked for hangs on the frame, if need be through others, by as many ties as its size needs. Where the
 * ties of others left no room for one, all is done again with that one as early as can be.
 */
export function assignBridges(state: BridgeAssignment, asked: readonly number[]): ScoredCandidate[] {
  const frames = framesOf(state);
  const tree = minimumSpanningTree(state.ways, [...frames], asked);
  const ties = assignInOrder(state, tree, frames, asked);
  const left = tree.filter((number) => !isConnected(number, ties));
  if (left.length === 0) return ties;
  const again = assignInOrder(state, moveToFront(left, tree, state.ways, frames), frames, asked);
  const stillLeft = tree.filter((number) => !isConnected(number, again));
  return stillLeft.length < left.length ? again : ties;
}

/** Each island asked for gets its own ties and no other does, whether or not what they lead to hangs on the frame. */
export function assignAlone(state: BridgeAssignment, asked: readonly number[]): ScoredCandidate[] {
  const frames = framesOf(state);
  const ties: ScoredCandidate[] = [];
  for (const number of asked) {
    const ways = defined(state.ways[number]);
    const firm = new Set(ways.map(({ target }) => target).filter((target) => frames.has(target)));
    const around = new Set(ways.map(({ target }) => target).filter((target) => surrounds(state, target, number)));
    const held = firm.size > 0 ? firm : around;
    const options = optionsForIsland(state, number, ties, held, asked);
    ties.push(...chosenFor(state, number, ways, held.size > 0 ? options : { ...options, held: () => true }));
  }
  return ties;
}

/** As the eye would have them: mirrored where the island and its gap are, unless that costs too much. */
function chosenFor(
  { pieces, options: { width }, around }: BridgeAssignment,
  number: number,
  usable: readonly ScoredCandidate[],
  choice: SelectionOptions,
): readonly ScoredCandidate[] {
  const usual = selectCandidates(usable, choice);
  // What later paint covers the eye does not compare.
  if (usual.some(({ from, to }) => regionContains(around.hidden, interpolate(from, to, 0.5)))) return usual;
  if (choice.count <= 0 || choice.near || choice.shortestOnly || choice.given.length > 0) return usual;
  const { outer } = defined(pieces[number]).polygon;
  const island = { number, outer, middle: choice.middle, ways: usable };
  const symmetric = symmetricSets(island, choice.count, width, around);
  return symmetric ? preferSymmetric(symmetric, usual, choice) : usual;
}

function framesOf({ pieces }: BridgeAssignment): Set<number> {
  return new Set(pieces.flatMap((piece, number) => (piece.island ? [] : [number])));
}

/** Whether a piece lies round another one. */
function surrounds({ pieces }: BridgeAssignment, outer: number, inner: number): boolean {
  const { polygon } = defined(pieces[outer]);
  return regionContains([{ outer: polygon.outer, holes: [] }], defined(pieces[inner]).label);
}

/** The order in which the `early` ones come as soon as something that they can be tied to hangs. */
function moveToFront(
  early: readonly number[],
  order: readonly number[],
  ways: BridgeAssignment['ways'],
  frames: ReadonlySet<number>,
): number[] {
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

function isConnected(number: number, ties: readonly ScoredCandidate[]): boolean {
  return ties.some(({ island, target }) => island === number || target === number);
}

function assignInOrder(
  state: BridgeAssignment,
  order: readonly number[],
  frames: ReadonlySet<number>,
  asked: readonly number[],
): ScoredCandidate[] {
  const members = new Set([...frames, ...order]);
  const held = new Set(frames);
  const ties: ScoredCandidate[] = [];
  for (const number of order) {
    checkpoint(4 * ties.length + 4);
    const usable = defined(state.ways[number]).filter(({ target }) => members.has(target));
    const chosen = chosenFor(state, number, usable, optionsForIsland(state, number, ties, held, asked));
    ties.push(...chosen);
    for (const { target } of chosen) held.add(number).add(target);
  }
  for (const cluster of clustersOf(order, ties, frames))
    ties.push(...connectToFrame(state, cluster, ties, frames, asked));
  return ties;
}

export function middleOf({ polygon, label }: Piece): Point {
  return centroidOfRing(polygon.outer) ?? label;
}

function optionsForIsland(
  { pieces, options }: BridgeAssignment,
  number: number,
  ties: readonly ScoredCandidate[],
  held: ReadonlySet<number>,
  asked: readonly number[],
): SelectionOptions {
  const piece = defined(pieces[number]);
  const own = asked.includes(number) ? options : onTheWay(options);
  const given = ties.flatMap(({ island, target, from, to }) =>
    island === number ? [from] : target === number ? [to] : [],
  );
  return {
    ...commonOptions(own, ties),
    given,
    middle: middleOf(piece),
    count: countFor(piece.polygon.outer, piece.area, own) - given.length,
    held: (crosser) => held.has(crosser.target) || held.has(number),
  };
}

/** What is wanted of the islands asked for is not wanted of those that they hang on. */
function onTheWay({ count: _count, near: _near, shortestOnly: _shortestOnly, ...options }: PlanOptions): PlanOptions {
  return options;
}

function commonOptions(
  { width, near, shortestOnly = false }: PlanOptions,
  ties: readonly ScoredCandidate[],
): Pick<SelectionOptions, 'width' | 'near' | 'shortestOnly' | 'taken'> {
  return { width, near, shortestOnly, taken: ties.map((tie) => stripOf(tie, width)) };
}

function countFor(outer: Ring, area: number, { count, more = 0 }: PlanOptions): number {
  return typeof count === 'number' ? Math.max(1, Math.round(count)) : bridgeCountFor(boxOfRing(outer), area) + more;
}

/** Islands that hang together, apart from the frame. */
function clustersOf(
  tree: readonly number[],
  ties: readonly ScoredCandidate[],
  frames: ReadonlySet<number>,
): number[][] {
  const leader = new Map(tree.map((number) => [number, number]));
  for (const { island, target } of ties) {
    checkpoint(leader.size);
    if (frames.has(target)) continue;
    const [a, b] = [leader.get(island), leader.get(target)];
    for (const [member, lead] of leader) if (lead === b && a !== undefined) leader.set(member, a);
  }
  const clusters = new Map<number, number[]>();
  for (const [member, lead] of leader) clusters.set(lead, [...(clusters.get(lead) ?? []), member]);
  return [...clusters.values()].filter((cluster) => cluster.length > 1);
}

/** A cluster of islands is held like one island of its size, so that it cannot hinge on a single tie. */
function connectToFrame(
  { pieces, ways, options }: BridgeAssignment,
  cluster: readonly number[],
  ties: readonly ScoredCandidate[],
  frames: ReadonlySet<number>,
  asked: readonly number[],
): ScoredCandidate[] {
  const own = cluster.every((number) => asked.includes(number)) ? options : onTheWay(options);
  const members = cluster.map((number) => defined(pieces[number]));
  const box = joinBoxes(members.map(({ polygon }) => boxOfRing(polygon.outer)));
  const area = members.reduce((sum, piece) => sum + piece.area, 0);
  const given = ties.flatMap(({ island, target, from }) =>
    cluster.includes(island) && frames.has(target) ? [from] : [],
  );
  const usable = cluster.flatMap((number) => defined(ways[number]).filter(({ target }) => frames.has(target)));
  return selectCandidates(usable, {
    ...commonOptions(own, ties),
    given,
    near: undefined,
    middle: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
    count: own.shortestOnly || own.count === 1 ? 0 : bridgeCountFor(box, area) + (own.more ?? 0) - given.length,
    held: () => true,
  });
}

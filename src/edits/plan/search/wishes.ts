/** Sets of bridges that the design of the layer asks for round one island. Sheet mm. */
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { apply, invert, multiply } from '../../../geometry/base/matrix';
import { distance, interpolate } from '../../../geometry/base/vector';
import { mirrorAbout } from '../design/axis';
import type { LetterRow } from '../design/index';
import { laneAt } from '../lanes';
import { type ScoredCandidate, type Surroundings, scoreCandidate } from '../score';
import { isMirroredAbout, setsAbout, symmetricSets } from '../symmetric-sets';
import { type Assignment, type Layout, needOf } from './layout';
import { movedWay } from './moved-way';
import type { Choice } from './select';
import { WEIGHTS } from './weights';

type BridgeSet = readonly ScoredCandidate[];

export interface Wish {
  /** Any of these would do. */
  readonly sets: readonly BridgeSet[];
  /** Whether a set is as good as these to the eye. */
  isMet(set: BridgeSet): boolean;
  /** What it may cost, in times of the usual cost. */
  readonly worth: number;
  /** Whether one line is enough to hold it, however wide it is. */
  readonly asLetter?: boolean;
}

/** How far the edge at one end may run along a letter's bridge, in widths, and how far a strip reaches beyond its end for sure. */
const STEEPEST = 8;
const REACHED = 0.8;
/** What a letter's bridge with a slanted end costs, in times of one with square ends. */
const SLANTED = 1.5;
/** Counters that need no more bridges than this are held well by one line. */
const LINE_HOLDS = 2;

/** What counts most comes first: the line of a letter, the bridges of a mirrored or equal island, an axis of its own. */
export function* wishesFor(
  state: Assignment,
  layout: Layout,
  number: number,
  usual: BridgeSet,
  choice: Choice,
): Iterable<Wish> {
  yield* ofLetter(state, number, choice);
  yield* ofImages(state, layout, number);
  yield* ofLikes(state, layout, number);
  yield* onAxes(state, number, usual, choice);
}

function* ofLetter(state: Assignment, number: number, { need }: Choice): Iterable<Wish> {
  const { design, options, around } = state;
  const row = options.align === undefined ? design?.rows.find(({ counters }) => has(counters, number)) : undefined;
  const counter = row?.counters.find(({ piece }) => piece === number);
  if (!row || !counter) return;
  const ways = counter.places.flatMap((place) => {
    const way = { ...place, length: distance(place.from, place.to) };
    const scored = scoreCandidate(way, number, options.width, around, STEEPEST);
    return scored ? rootedInPoint(scored, options.width, around) : [];
  });
  const free = ways.filter(({ from, width }) => need.given.every((given) => distance(given.from, from) > width));
  const wanted = wantedIn(state, row) - need.given.length;
  if (free.length < wanted) return;
  const sets = wanted > 1 ? [free] : free.map((way) => [way]);
  yield { sets, isMet: () => false, worth: WEIGHTS.lettering.value, asLetter: need.wanted <= LINE_HOLDS };
}

/** The point of A's counter goes into the bridge, so that this is rooted where the counter is as wide as it. */
function rootedInPoint(way: ScoredCandidate, least: number, { pieces }: Surroundings): ScoredCandidate {
  // Where a letter leaves no better place, a slanted end is no fault.
  const costAt = (length: number) => (SLANTED * length * way.width) / least;
  const middle = laneAt(way, 0, way.island, pieces);
  const sides = [-0.5, 0.5].map((lane) => laneAt(way, lane * way.width, way.island, pieces));
  const deepest = Math.max(...sides.map((side) => (side && middle ? side.back - middle.back : 0)));
  if (deepest <= REACHED * way.width) return { ...way, cost: Math.min(way.cost, costAt(way.length)) };
  const by = (deepest - REACHED * way.width) / way.length;
  const from = interpolate(way.from, way.to, -by);
  const length = distance(from, way.to);
  return { ...way, from, length, cost: costAt(length) };
}

function has(members: readonly { readonly piece: number }[], number: number): boolean {
  return members.some(({ piece }) => piece === number);
}

/** All counters of a word have as many bridges as its largest needs, above and below. */
function wantedIn(state: Assignment, { counters }: LetterRow): number {
  return Math.min(2, Math.max(...counters.map(({ piece }) => needOf(state, piece, []).wanted)));
}

function* ofImages(state: Assignment, layout: Layout, number: number): Iterable<Wish> {
  for (const mirror of state.design?.mirrors ?? []) {
    const image = mirror.images.get(number);
    if (image === undefined || image === number) continue;
    yield* moved(state, layout, image, number, (place) => mirrorAbout(mirror, place), WEIGHTS.symmetric.value);
  }
}

function* ofLikes(state: Assignment, layout: Layout, number: number): Iterable<Wish> {
  for (const { members } of state.design?.alike ?? []) {
    const own = members.find(({ piece }) => piece === number);
    const first = own && members.find(({ piece }) => (layout.get(piece)?.length ?? 0) > 0);
    const back = first && invert(first.motion);
    if (!back) continue;
    const motion = multiply(own.motion, back);
    yield* moved(state, layout, first.piece, number, (place) => apply(motion, place), WEIGHTS.alike.value);
  }
}

/** The bridges that another island has, where that one has any, moved to this one. */
function* moved(
  state: Assignment,
  layout: Layout,
  from: number,
  to: number,
  move: (place: Point) => Point,
  worth: number,
): Iterable<Wish> {
  const before = layout.get(from) ?? [];
  if (before.length === 0) return;
  const set = before.flatMap((way) => movedWay(state, way, to, move) ?? []);
  if (set.length === before.length) yield { sets: [set], isMet: () => false, worth };
}

/** Mirrored about an axis that the island lies on: as many as its size asks for, as are usual, and one more. */
function* onAxes(state: Assignment, number: number, usual: BridgeSet, choice: Choice): Iterable<Wish> {
  const { design, pieces, around, options } = state;
  const { body, wanted, given } = choice.need;
  if (given.length > 0) return;
  const { outer } = defined(pieces[number]).polygon;
  const island = { number, outer, middle: body.middle, ways: defined(state.ways[number]) };
  const axes = (design?.mirrors ?? [])
    .filter(({ images }) => images.get(number) === number)
    .map(({ point, along }) => ({ middle: point, along }));
  const [first] = axes;
  const fits = (set: BridgeSet) => first === undefined || isMirroredAbout(set, first);
  const worth = WEIGHTS.symmetric.value;
  for (const size of new Set([wanted, Math.max(wanted, usual.length), ...(wanted > 1 ? [usual.length + 1] : [])])) {
    const own = symmetricSets(island, size, options.width, around);
    if (own) yield { sets: own.sets.filter(fits), isMet: (set) => own.isMirrored(set) && fits(set), worth };
    for (const axis of axes) {
      const sets = setsAbout({ island, width: options.width, around }, axis, size);
      yield { sets, isMet: (set) => isMirroredAbout(set, axis), worth };
    }
  }
}

/** Sets of bridges that the design of the layer asks for round one island. Sheet mm. */
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { apply, invert, multiply } from '../../../geometry/base/matrix';
import { distance } from '../../../geometry/base/vector';
import { mirrorAbout } from '../design/axis';
import type { Counter, CounterPlace, LetterRow } from '../design/index';
import { type ScoredCandidate, scoreCandidate } from '../score';
import { isMirroredAbout, setsAbout, symmetricSets } from '../symmetry/sets';
import { rootedInPoints, STEEPEST } from '../ways/rooted';
import { type Assignment, type Layout, needOf } from './layout';
import { MOVED, movedWay } from './moved-way';
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

/** mm: a bridge this far off its place beside an axis is not seen to be. */
const UNSEEN = 0.25;

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
  yield* ofNest(state, layout, number, usual, choice);
  yield* onAxes(state, number, usual, choice);
}

function* ofLetter(state: Assignment, number: number, { need }: Choice): Iterable<Wish> {
  const { design, options } = state;
  const row = options.align === undefined ? design?.rows.find(({ counters }) => has(counters, number)) : undefined;
  const counter = row?.counters.find(({ piece }) => piece === number);
  if (!row || !counter) return;
  const isFree = ({ from, width }: ScoredCandidate) => need.given.every((given) => distance(given.from, from) > width);
  const wanted = wantedIn(state, row) - need.given.length;
  const lines = [counter.places, ...placesOfLikes(state, row, number)];
  const free = lines
    .map((places) => places.flatMap((place) => waysAt(place, number, state)).filter(isFree))
    .find((ways) => ways.length >= wanted);
  if (!free) return;
  const sets = wanted > 1 ? [free] : free.map((way) => [way]);
  yield { sets, isMet: () => false, worth: WEIGHTS.lettering.value, asLetter: need.wanted <= LINE_HOLDS };
}

function waysAt(
  { from, to, target }: CounterPlace,
  number: number,
  { around, options }: Assignment,
): ScoredCandidate[] {
  const way = { from, to, target, length: distance(from, to) };
  const scored = scoreCandidate(way, number, options.width, around, STEEPEST);
  return scored ? [rootedInPoints(scored, options.width, around)] : [];
}

/** Where the same letters of a word are bridged, as seen from this one: a joint may hide a place beside one of them. */
function placesOfLikes({ design }: Assignment, { counters }: LetterRow, number: number): CounterPlace[][] {
  const members = design?.alike.find((likeness) => has(likeness.members, number))?.members ?? [];
  const own = members.find(({ piece }) => piece === number);
  return members.flatMap(({ piece, motion }) => {
    const places = counters.find((counter) => counter.piece === piece)?.places;
    const back = invert(motion);
    if (!own || piece === number || !places || !back) return [];
    const move = multiply(own.motion, back);
    return [places.map((place) => ({ ...place, from: apply(move, place.from), to: apply(move, place.to) }))];
  });
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

/** In one straight line through all that lie in each other, or in two: on the line that the others are bridged on. */
function* ofNest(
  state: Assignment,
  layout: Layout,
  number: number,
  usual: BridgeSet,
  { need }: Choice,
): Iterable<Wish> {
  // One island by itself is bridged where it is best held: there is no line through all yet.
  if (need.given.length > 0 || state.options.align !== undefined || state.options.alone) return;
  for (const { lines } of state.design?.nests ?? []) {
    if (!lines.some((line) => has(line, number))) continue;
    const begun = lines.filter((line) => line.some((counter) => isBridgedOn(counter, layout)));
    const sets = (begun.length > 0 ? begun : lines)
      .flatMap((line) => line.filter(({ piece }) => piece === number))
      .map(({ places }) => places.flatMap((place) => waysAt(place, number, state)))
      .filter((set) => set.length > 1);
    // What one bridge holds gets one, on the line.
    const ones = need.wanted === 1 ? sets.flat().map((way) => [way]) : [];
    const enough = ones.length > 0 ? ones : sets.filter((set) => set.length >= need.wanted);
    const few = (enough.length > 0 ? enough : [sets.flat()]).filter((set) => isWorthALine(set, usual));
    if (few.length > 0) yield { sets: few, isMet: () => false, worth: HOLD * WEIGHTS.nested.value };
  }
}

/** So much dearer again may bridges on a line be by what they lack in hold. */
const HOLD = 1.5;

function isWorthALine(set: BridgeSet, usual: BridgeSet): boolean {
  const costOf = (ways: BridgeSet): number => ways.reduce((sum, { cost }) => sum + cost, 0);
  return set.length > 0 && costOf(set) <= WEIGHTS.nested.value * costOf(usual);
}

function isBridgedOn({ piece, places }: Counter, layout: Layout): boolean {
  const own = layout.get(piece) ?? [];
  return places.every((place) => own.some((way) => distance(way.from, place.from) < MOVED));
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
  const fits = (set: BridgeSet) => first === undefined || isMirroredAbout(set, first, MOVED);
  const worth = WEIGHTS.symmetric.value;
  for (const size of new Set([wanted, Math.max(wanted, usual.length), ...(wanted > 1 ? [usual.length + 1] : [])])) {
    const own = symmetricSets(island, size, options.width, around);
    if (own) yield { sets: own.sets.filter(fits), isMet: (set) => own.isMirrored(set) && fits(set), worth };
    for (const axis of axes) {
      const sets = setsAbout({ island, width: options.width, around, within: MOVED }, axis, size);
      yield { sets, isMet: (set) => isMirroredAbout(set, axis, UNSEEN), worth };
    }
  }
}

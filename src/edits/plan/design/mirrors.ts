/** Mirror axes of a layer and of parts of it. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import { cross, distance, interpolate, subtract } from '../../../geometry/base/vector';
import type { SegmentIndex } from '../../../geometry/spatial/segment-index';
import { type Axis, axesThrough, axisBetween, mirrorAbout } from './axis';
import { comesToLieOn, type IslandGap, lieOn, mayBeEqual } from './island-gap';
import type { LayerWires } from './layer-wires';
import type { Mirror } from './types';

/** An axis that may be one, and the part of the layer that it may be one of. */
interface Guess {
  readonly axis: Axis;
  readonly whole: boolean;
  /** The islands that it may mirror. */
  readonly among: readonly IslandGap[];
}

/** Each island is paired with so many others that are alike, the nearest ones. */
const PARTNERS = 3;
/** An axis of an island is one of its neighbours within so many of its radii too. */
const REACH = 8;
/** So much of all outlines must have an image where the whole layer is mirrored. */
const WHOLE_SHARE = 0.97;
/** Sine, and tolerances: what is mirrored about an axis is so about others that are this near to it as well. */
const SAME_DIRECTION = 0.06;
const SAME_LINE = 3;
/** So many axes are followed: a pattern of a thousand dots has more than anyone sees. */
const MAX_GUESSES = 400;

interface Picture {
  readonly wires: LayerWires;
  /** Islands of words: letters beside each other are not meant to be mirrored, though b and d are. */
  readonly inWords: ReadonlySet<number>;
  /** mm: how far an outline and its mirror image may lie apart. */
  readonly tolerance: number;
}

export function mirrorsOf(edges: SegmentIndex, islands: readonly IslandGap[], picture: Picture): Mirror[] {
  const found: Mirror[] = [];
  for (const guess of guessesFrom(islands, picture)) {
    if (found.some((mirror) => isSameAxis(mirror, guess.axis, picture.tolerance))) continue;
    const mirror = verified(edges, guess, picture);
    if (mirror) found.push(mirror);
  }
  return found.sort((a, b) => Number(b.whole) - Number(a.whole) || b.images.size - a.images.size);
}

function guessesFrom(islands: readonly IslandGap[], { wires, inWords, tolerance }: Picture): Guess[] {
  const whole = axesThrough(wires.shape).map((axis): Guess => ({ axis, whole: true, among: islands }));
  const free = islands.filter(({ piece }) => !inWords.has(piece));
  const pairs = pairsOf(free, tolerance).flatMap(([a, b]): Guess[] => {
    const axis = axisBetween(a.shape.middle, b.shape.middle);
    const middle = interpolate(a.shape.middle, b.shape.middle, 0.5);
    const reach = REACH * distance(a.shape.middle, b.shape.middle);
    return axis ? [{ axis, whole: false, among: within(free, middle, reach) }] : [];
  });
  const own = free.flatMap(({ shape }) => {
    const among = within(free, shape.middle, REACH * shape.radius);
    return axesThrough(shape).map((axis): Guess => ({ axis, whole: false, among }));
  });
  return [...whole, ...[...pairs, ...own].slice(0, MAX_GUESSES)];
}

function within(islands: readonly IslandGap[], middle: Point, reach: number): IslandGap[] {
  checkpoint(islands.length / 8);
  return islands.filter(({ shape }) => distance(shape.middle, middle) <= reach);
}

/** Each island with the nearest few of those that are alike. */
function pairsOf(islands: readonly IslandGap[], tolerance: number): [IslandGap, IslandGap][] {
  return islands.flatMap((island) => {
    checkpoint(islands.length / 8);
    return islands
      .filter((other) => other.piece > island.piece && mayBeEqual(island, other, tolerance))
      .sort((a, b) => distance(a.shape.middle, island.shape.middle) - distance(b.shape.middle, island.shape.middle))
      .slice(0, PARTNERS)
      .map((other): [IslandGap, IslandGap] => [island, other]);
  });
}

function isSameAxis(a: Axis, b: Axis, tolerance: number): boolean {
  const off = Math.abs(cross(subtract(b.point, a.point), a.along));
  return Math.abs(cross(a.along, b.along)) < SAME_DIRECTION && off < SAME_LINE * tolerance;
}

/** Of words only what mirrors the whole layer counts. */
function verified(edges: SegmentIndex, guess: Guess, { wires, inWords, tolerance }: Picture): Mirror | undefined {
  const { axis, whole, among } = guess;
  const move = (place: Point) => mirrorAbout(axis, place);
  const isWhole = whole && lieOn(edges, wires.samples.map(move), tolerance, WHOLE_SHARE);
  const counted = isWhole ? among : among.filter(({ piece }) => !inWords.has(piece));
  const images = imagesUnder(edges, axis, counted, tolerance);
  return images.size > 0 ? { ...axis, whole: isWhole, images } : undefined;
}

/** The islands that an axis maps onto an island, with the gaps about them. */
function imagesUnder(
  edges: SegmentIndex,
  axis: Axis,
  among: readonly IslandGap[],
  tolerance: number,
): Map<number, number> {
  const images = new Map<number, number>();
  const move = (place: Point) => mirrorAbout(axis, place);
  for (const island of among) {
    checkpoint(among.length / 8);
    if (images.has(island.piece)) continue;
    const middle = move(island.shape.middle);
    const image = among.find(
      (other) =>
        distance(other.shape.middle, middle) <= tolerance &&
        mayBeEqual(island, other, tolerance) &&
        comesToLieOn(edges, island, other, move, tolerance),
    );
    if (image) images.set(island.piece, image.piece).set(image.piece, island.piece);
  }
  return images;
}

/** Sets of bridges that are their own mirror image. */
import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { forEachEdge } from '../../../geometry/base/ring';
import { add, cross, distance, dot, interpolate, normalise, scale, subtract } from '../../../geometry/base/vector';
import { firstHit, firstHits } from '../../../geometry/spatial/raycast';
import type { BridgeCandidate } from '../candidates';
import { type ScoredCandidate, type Surroundings, scoreCandidate } from '../score';
import { rootedInPoints, STEEPEST, scoreImage } from '../ways/rooted';
import { type Axis, mirror, symmetryOf } from './island-axes';

/** An island with its ways across. */
export interface IslandWays {
  readonly number: number;
  readonly outer: Ring;
  readonly middle: Point;
  readonly ways: readonly ScoredCandidate[];
}

/** What there is to choose from where an island and its gap are mirrored. */
export interface SymmetricChoice {
  readonly sets: readonly (readonly ScoredCandidate[])[];
  /** Whether a set is as symmetric as these. */
  isMirrored(set: readonly ScoredCandidate[]): boolean;
}

/** mm: bridges nearer than this are the same one; the mirror image of one comes out within it. */
const SAME_BRIDGE = 0.1;

/** Of the ways across, so many of the cheapest are mirrored, and the cheapest of each of so many directions. */
const [MAX_PAIRS, DIRECTIONS] = [16, 16];

/** Cosine: axes that are as good as square to each other. */
const SQUARE = 0.01;

/**
 * Sets of about `count` bridges, each mirrored about an axis of the island and its gap: pairs, or on the axis. Where there
 * are two axes square to each other, all are mirrored about both, and four take the place of three.
 * @param width mm as drawn
 */
export function symmetricSets(
  island: IslandWays,
  count: number,
  width: number,
  around: Surroundings,
): SymmetricChoice | undefined {
  const { number, outer, middle, ways } = island;
  const { axes, threefold } = symmetryOf(around.pieces, number, outer, middle, ways);
  const [first] = axes;
  if (!first) return undefined;
  const second =
    count === 3 && threefold ? undefined : axes.find(({ along }) => Math.abs(dot(along, first.along)) < SQUARE);
  const make = { island, width, around };
  const both = second ? setsAboutBoth(make, first, second, count) : [];
  if (second && both.length > 0) {
    const isMirrored = (set: readonly ScoredCandidate[]) =>
      isMirroredAbout(set, first) && (count === 1 || isMirroredAbout(set, second));
    return { sets: both, isMirrored };
  }
  const isMirrored = (set: readonly ScoredCandidate[]) => axes.some((axis) => isMirroredAbout(set, axis));
  return { sets: axes.flatMap((axis) => setsAbout(make, axis, count)), isMirrored };
}

/** @param within mm: how far a bridge may lie from the image of another */
export function isMirroredAbout(set: readonly ScoredCandidate[], axis: Axis, within = SAME_BRIDGE): boolean {
  return set.every((way) => {
    const [from, to] = [mirror(way.from, axis), mirror(way.to, axis)];
    return set.some((other) => distance(other.from, from) < within && distance(other.to, to) < within);
  });
}

export interface Making {
  readonly island: IslandWays;
  readonly width: number;
  readonly around: Surroundings;
  /** mm: how far the image of a bridge may lie from the edges there; by default as good as nothing. */
  readonly within?: number;
}

function setsAboutBoth(make: Making, first: Axis, second: Axis, count: number): ScoredCandidate[][] {
  const [a, b] = [onAxis(make, first), onAxis(make, second)];
  if (count === 1) return [...a, ...b].map((way) => [way]);
  const opposite = [a, b].filter((pair) => pair.length === 2);
  if (count === 2) return opposite;
  const cross = opposite.length === 2 ? [[...a, ...b]] : [];
  const quads = pairsAbout(make, first).flatMap((pair) => {
    const images = pair.map((way) => mirrored(make, way, second));
    const all = [...pair, ...images.filter((way) => way !== undefined)];
    return all.length === 4 && areDistinct(all) ? [all] : [];
  });
  return [...cross, ...quads];
}

export function setsAbout(make: Making, axis: Axis, count: number): ScoredCandidate[][] {
  const on = onAxis(make, axis);
  const pairs = pairsAbout(make, axis);
  const both = on.length === 2 ? [on] : [];
  if (count === 1) return on.map((way) => [way]);
  if (count === 2) return [...both, ...pairs];
  const three = on.flatMap((way) => pairs.map((pair) => [way, ...pair]));
  if (count === 3 && three.length > 0) return three;
  const four = pairs.flatMap((pair, i) => pairs.slice(i + 1).map((other) => [...pair, ...other]));
  return [...both.flatMap((way) => pairs.map((pair) => [...way, ...pair])), ...four].filter(areDistinct);
}

/** Where the axis leaves the island at its ends, straight on. */
function onAxis({ island, width, around }: Making, { middle, along }: Axis): ScoredCandidate[] {
  const places: number[] = [];
  forEachEdge(island.outer, (ax, ay, bx, by) => {
    const [a, b] = [subtract({ x: ax, y: ay }, middle), subtract({ x: bx, y: by }, middle)];
    const [from, to] = [cross(along, a), cross(along, b)];
    if (from > 0 === to > 0) return;
    places.push(dot(interpolate(a, b, from / (from - to)), along));
  });
  if (places.length < 2) return [];
  const reach = 2 * Math.max(...island.ways.map(({ length }) => length)) + 1;
  const ends = [Math.max(...places), Math.min(...places)];
  return ends.flatMap((place, i) => {
    const outward = scale(along, i === 0 ? 1 : -1);
    const from = add(middle, scale(along, place));
    const hit = firstHit(around.pieces, from, outward, reach);
    if (!hit || hit.polygon === island.number) return [];
    const way = { from, to: hit.point, length: hit.distance, target: hit.polygon };
    const square = scoreCandidate(way, island.number, width, around);
    const pointed = outOfPoint(way, island.number, width, around);
    // By its point an island may be held by a wider one.
    return (square && square.width >= (pointed?.width ?? 0) ? square : pointed) ?? [];
  });
}

/** Where the axis leaves the island by a point, as that of a heart. */
function outOfPoint(
  way: BridgeCandidate,
  island: number,
  width: number,
  around: Surroundings,
): ScoredCandidate | undefined {
  const scored = scoreCandidate(way, island, width, around, STEEPEST);
  const rooted = scored && rootedInPoints(scored, width, around);
  return rooted && rooted.length <= around.longest ? rooted : undefined;
}

function pairsAbout(make: Making, axis: Axis): ScoredCandidate[][] {
  return cheapAllRound(make.island).flatMap((way) => {
    const image = mirrored(make, way, axis);
    return image && areDistinct([way, image]) ? [[way, image]] : [];
  });
}

/** What is cheapest lies side by side where the gap is narrow; a set has to reach all round. */
function cheapAllRound({ ways, middle }: IslandWays): ScoredCandidate[] {
  const directions = new Set<number>();
  return ways.filter(({ from }, i) => {
    const turn = Math.atan2(from.y - middle.y, from.x - middle.x) / (2 * Math.PI);
    const direction = Math.floor((turn + 1) * DIRECTIONS) % DIRECTIONS;
    const isFirst = !directions.has(direction);
    directions.add(direction);
    return isFirst || i < MAX_PAIRS;
  });
}

/** The mirror image of a way across, from edge to edge as they are. */
function mirrored(
  { island, width, around, within = SAME_BRIDGE }: Making,
  way: ScoredCandidate,
  axis: Axis,
): ScoredCandidate | undefined {
  checkpoint(10);
  const [from, to] = [mirror(way.from, axis), mirror(way.to, axis)];
  const direction = normalise(subtract(to, from));
  if (!direction) return undefined;
  const { back, ahead } = firstHits(around.pieces, interpolate(from, to, 0.5), direction, way.length + within);
  if (!back || !ahead || back.polygon !== island.number) return undefined;
  const off = way.rooted ? way.length : within;
  if (distance(back.point, from) > off || distance(ahead.point, to) > off) return undefined;
  const length = back.distance + ahead.distance;
  const image = { from: back.point, to: ahead.point, length, target: ahead.polygon };
  return scoreImage(image, way, island.number, width, around);
}

function areDistinct(set: readonly ScoredCandidate[]): boolean {
  return set.every((way, i) => set.slice(i + 1).every((other) => distance(way.from, other.from) > SAME_BRIDGE));
}

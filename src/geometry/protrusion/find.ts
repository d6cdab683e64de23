/**
 * Lobes: parts of a region that hang on one short chord, as a peninsula on its isthmus. Both ends of such a chord lie
 * on one ring, or else the part would be held on two sides. Other rings may lie in its way: then several necks, side by
 * side, hold the lobe.
 *
 * The chords compared run from each reflex vertex (inner angle above 180°) to the nearest places of edges of its own
 * ring near by: a shortest chord between two parts of a boundary has a reflex vertex at one end. Of all chords that cut
 * off the same lobe the one with the greatest reach less its own length is the root: moving the root further back than
 * that widens it by more than it lengthens the lobe. Reaches are straight distances, so a lobe that curls is longer
 * than its reach. Of lobes within lobes only the outermost is given.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import { derivedFacts } from '../base/derived-facts';
import type { Region, Ring } from '../base/polygon-types';
import { perimeter, ringsOf } from '../base/ring';
import { SAME_POINT } from '../base/tolerances';
import { crossFrom, distance, interpolate } from '../base/vector';
import { simplifyRing } from '../polygon/simplify';
import { forEachSegmentInBox, type PlaceOnSegment, placeOnSegment, type SegmentIndex } from '../spatial/segment-index';
import { NearestChords } from './nearest-chords';
import { type ArcLengthRing, arcLengthRing, type RingInterval } from './ring-arclength';
import { settleRoot } from './settle-root';

export interface Protrusion {
  /** The chord that the lobe hangs on; the lobe is what the boundary goes round from `from` to `to`. */
  readonly from: Point;
  readonly to: Point;
  /** mm: the chord's length. */
  readonly root: number;
  /** mm from the chord's middle to the farthest point of the lobe. */
  readonly reach: number;
  /** The farthest point. */
  readonly tip: Point;
  /** Which polygon of the region it belongs to. */
  readonly polygon: number;
  /** Round the lobe from `from` to `to`, its chord left open; turning so that its area is positive. Holes are not told. */
  readonly outline: Ring;
  /** The ring of the region that it is a part of. */
  readonly ring: Ring;
}

/** A lobe reaches at least so many times the length of its root. */
const MIN_SLENDERNESS = 4;

/** A root is at most so long, in least reaches: it is looked for on edges that come so near to a vertex. */
const MAX_ROOT = 1;

/** The search lets lobes in that miss a bound by so much: where their roots settle is what counts. */
const MARGIN = 1.04;

/** From each vertex so many of the nearest chords that could cut off a lobe are tried. */
const MAX_CHORDS_TRIED = 6;

/** Boundaries are simplified to within this part of the least reach first; so far a chord may be off at first. */
const COARSENESS = 1 / 1000;

/** Of vertices nearer to each other than this part of the least reach, and not sharp, one stands for all. */
const SPACING = 1 / 64;

/** Sine of the turn from which a vertex is sharp: about 9°. */
const SHARP = 0.15;

/** At so many points of a lobe's boundary the reach is looked at while chords are compared. */
const SAMPLES = 128;

/** mm: what lies nearer to a chord's end than this is taken as its end. */
const AT_END = SAME_POINT;

interface Candidate extends Pick<Protrusion, 'from' | 'to' | 'root' | 'reach' | 'tip'> {
  /** Places along the ring, in mm from its start; `end` is less than `start` where the lobe goes over it. */
  readonly start: number;
  readonly end: number;
}

/** A ring, simplified, as it is searched. */
interface Search {
  readonly index: SegmentIndex;
  readonly ring: ArcLengthRing;
  readonly leastReach: number;
}

/** Lobes that reach `leastReach` mm or farther, the farthest-reaching first. None for a reach that is not positive. */
export function findProtrusions(region: Region, leastReach: number): Protrusion[] {
  if (!(leastReach > 0) || !Number.isFinite(leastReach)) return [];
  return region
    .flatMap((polygon, number) =>
      ringsOf(polygon).flatMap((ring) => lobesOfRing(ring, leastReach).map((lobe) => ({ ...lobe, polygon: number }))),
    )
    .sort((a, b) => b.reach - b.root - (a.reach - a.root));
}

type RingLobe = Omit<Protrusion, 'polygon'>;

const known = derivedFacts.table<Ring, { readonly leastReach: number; readonly lobes: readonly RingLobe[] }>(
  'lobes of a ring',
);

/** Nothing but the ring decides, so that after an edit only those are searched that it changed. */
function lobesOfRing(ring: Ring, leastReach: number): readonly RingLobe[] {
  const before = known.find(ring)?.value;
  if (before?.leastReach === leastReach) return before.lobes;
  const lobes = mayHoldProtrusion(ring, leastReach) ? searchRing(ring, leastReach) : [];
  known.set(ring, { leastReach, lobes });
  return lobes;
}

function searchRing(ring: Ring, leastReach: number): RingLobe[] {
  const simple = arcLengthRing(simplifyRing(ring, COARSENESS * leastReach));
  if (!simple || simple.ring.length < 2 * leastReach) return [];
  const kept = outermostProtrusions(simple.ring, candidatesOf({ ...simple, leastReach }));
  const exact = kept.length > 0 ? arcLengthRing(ring) : undefined;
  if (!exact) return [];
  return kept
    .map((lobe) => ({ ...settleRoot(exact, lobe, SPACING * leastReach), ring }))
    .filter(({ reach, root }) => reach >= reachFor(root, leastReach) && root <= MAX_ROOT * leastReach);
}

/** mm: a lobe on a root of that length reaches as far at least. */
function reachFor(root: number, leastReach: number): number {
  return Math.max(leastReach, MIN_SLENDERNESS * root);
}

/** A ring that goes round a lobe goes there and back, and so does not keep turning one way, as a frame does. */
function mayHoldProtrusion(ring: Ring, leastReach: number): boolean {
  return perimeter(ring) >= 2 * leastReach && !turnsOneWay(ring);
}

function turnsOneWay(ring: Ring): boolean {
  const at = (i: number): Point => ({
    x: defined(ring[(2 * i) % ring.length]),
    y: defined(ring[(2 * i + 1) % ring.length]),
  });
  checkpoint(ring.length);
  let way = 0;
  for (let i = 0; i < ring.length / 2; i += 1) {
    const turn = Math.sign(crossFrom(at(i), at(i + 1), at(i + 2)));
    if (turn * way < 0) return false;
    if (turn !== 0) way = turn;
  }
  return true;
}

function candidatesOf(search: Search): Candidate[] {
  const { index, ring, leastReach } = search;
  const chords = new NearestChords(index, ring);
  const found: Candidate[] = [];
  let last = -Infinity;
  for (let edge = ring.first; edge < ring.first + ring.size; edge += 1) {
    checkpoint(2);
    const turn = turnBefore(index, edge);
    const place = ring.placeOf(edge, 0);
    if (turn >= 0 || (turn > -SHARP && place - last < SPACING * leastReach)) continue;
    last = place;
    found.push(...candidatesFrom(search, chords, edge));
  }
  return found;
}

/** Sine of the turn at the edge's first vertex: negative where it is reflex. The region lies to the positive side. */
function turnBefore(index: SegmentIndex, edge: number): number {
  const before = defined(index.previous[edge]);
  const [a, b, c] = [startOf(index, before), startOf(index, edge), endOf(index, edge)];
  const sizes = distance(a, b) * distance(b, c);
  return sizes > 0 ? crossFrom(a, b, c) / sizes : 0;
}

function candidatesFrom({ index, ring, leastReach }: Search, chords: NearestChords, edge: number): Candidate[] {
  const vertex = startOf(index, edge);
  const { x, y } = vertex;
  const { x0, y0, x1, y1 } = index;
  const near = chords.search({
    edge,
    minGap: leastReach,
    maxDistance: MARGIN * MAX_ROOT * leastReach,
    maxCount: MAX_CHORDS_TRIED,
    mayEnd: (other, t, distance) => {
      const dx = defined(x1[other]) - defined(x0[other]);
      const dy = defined(y1[other]) - defined(y0[other]);
      if (dx * (y - defined(y0[other])) - dy * (x - defined(x0[other])) < 0) return false;
      return ring.mayCutOff(edge, other, t, leastRound(distance, leastReach));
    },
  });
  return near.flatMap((other) => {
    const place = placeOnSegment(index, other, vertex);
    if (place.distance <= AT_END || !isClear(index, edge, place)) return [];
    return ringIntervals(ring, edge, place, leastReach)
      .map(({ start, end }) => protrusionBetween(ring, start, end, SAMPLES))
      .filter(({ reach, root }) => MARGIN * reach >= reachFor(root, leastReach));
  });
}

/** mm: a lobe on a chord of the length is gone round by so much of the ring at least. */
function leastRound(chord: number, leastReach: number): number {
  return (2 * reachFor(chord, leastReach)) / MARGIN - chord;
}

/** The stretches of the ring that could go round a lobe which hangs on the chord from a vertex to a place. */
function ringIntervals(ring: ArcLengthRing, edge: number, place: PlaceOnSegment, leastReach: number): RingInterval[] {
  const [here, there] = [ring.placeOf(edge, 0), ring.placeOf(place.edge, place.t)];
  const least = leastRound(place.distance, leastReach);
  return [
    { start: here, end: there },
    { start: there, end: here },
  ].filter(({ start, end }) => ring.lengthBetween(start, end) >= least && ring.cutsOff(start, end));
}

function protrusionBetween(ring: ArcLengthRing, start: number, end: number, samples: number): Candidate {
  const [from, to] = [ring.pointAt(start), ring.pointAt(end)];
  const middle = interpolate(from, to, 0.5);
  let tip = middle;
  let reach = 0;
  for (const point of ring.pointsBetween(start, end, samples)) {
    checkpoint(2);
    const far = distance(point, middle);
    if (far > reach) [tip, reach] = [point, far];
  }
  return { start, end, from, to, root: distance(from, to), reach, tip };
}

/** Whether a chord from the vertex at which `edge` begins stays inside the ring up to its other end. */
function isClear(index: SegmentIndex, edge: number, { edge: other, point }: PlaceOnSegment): boolean {
  const vertex = startOf(index, edge);
  const slack = AT_END * distance(vertex, point);
  if (crossFrom(startOf(index, other), endOf(index, other), vertex) < -slack) return false;
  const sides = [defined(index.previous[edge]), edge].map((side) =>
    crossFrom(startOf(index, side), endOf(index, side), point),
  );
  if (sides.every((side) => side < -slack)) return false;
  const box = {
    minX: Math.min(vertex.x, point.x),
    minY: Math.min(vertex.y, point.y),
    maxX: Math.max(vertex.x, point.x),
    maxY: Math.max(vertex.y, point.y),
  };
  let clear = true;
  forEachSegmentInBox(index, box, (each) => {
    if (clear && crosses(vertex, point, startOf(index, each), endOf(index, each))) clear = false;
  });
  return clear;
}

/** Whether two segments cross within both, more than `AT_END` from the first one's line on either side. */
function crosses(a: Point, b: Point, c: Point, d: Point): boolean {
  const slack = AT_END * distance(a, b);
  const [ofC, ofD] = [crossFrom(a, b, c), crossFrom(a, b, d)];
  if (ofC > slack === ofD > slack || ofC < -slack === ofD < -slack) return false;
  const [ofA, ofB] = [crossFrom(c, d, a), crossFrom(c, d, b)];
  const far = AT_END * distance(c, d);
  return (ofA > far && ofB < -far) || (ofA < -far && ofB > far);
}

function outermostProtrusions(ring: ArcLengthRing, candidates: readonly Candidate[]): Candidate[] {
  const sorted = [...candidates].sort((a, b) => b.reach - b.root - (a.reach - a.root));
  const kept: Candidate[] = [];
  for (const candidate of sorted) {
    checkpoint(kept.length + 1);
    if (kept.every((other) => ring.areApart(candidate, other))) kept.push(candidate);
  }
  return kept;
}

function startOf({ x0, y0 }: SegmentIndex, edge: number): Point {
  return { x: defined(x0[edge]), y: defined(y0[edge]) };
}

function endOf({ x1, y1 }: SegmentIndex, edge: number): Point {
  return { x: defined(x1[edge]), y: defined(y1[edge]) };
}

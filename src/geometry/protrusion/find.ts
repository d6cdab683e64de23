/**
 * Lobes: parts of a region that hang on one short chord, as a peninsula on its isthmus. Both ends of such a chord lie
 * on one ring, or else the part would be held on two sides.
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
import type { Region, Ring } from '../base/polygon-types';
import { perimeter } from '../base/ring';
import { SAME_POINT } from '../base/tolerances';
import { crossFrom, distance, interpolate } from '../base/vector';
import { simplifyRing } from '../polygon/simplify';
import {
  buildSegmentIndex,
  forEachSegmentInBox,
  type PlaceOnSegment,
  placeOnSegment,
  type SegmentIndex,
} from '../spatial/segment-index';
import { NearestChords } from './nearest-chords';
import { type ArcLengthRing, arcLengthRingsOf, type RingInterval } from './ring-arclength';

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
}

/** A lobe reaches at least so many times the length of its root. */
const MIN_SLENDERNESS = 4;

/** Roots are looked for on edges that come so near to a vertex, in least reaches. */
const MAX_ROOT = 0.5;

/** From each vertex so many of the nearest chords that could cut off a lobe are tried. */
const MAX_CHORDS_TRIED = 6;

/** Boundaries are simplified to within this part of the least reach first; so far a chord or a reach may be off. */
const COARSENESS = 1 / 4000;

/** Of vertices nearer to each other than this part of the least reach, and not sharp, one stands for all. */
const SPACING = 1 / 256;

/** Sine of the turn from which a vertex is sharp: about 9°. */
const SHARP = 0.15;

/** At so many points of a lobe's boundary the reach is looked at while chords are compared. */
const SAMPLES = 128;

/** mm: what lies nearer to a chord's end than this is taken as its end. */
const AT_END = SAME_POINT;

interface Candidate extends Protrusion {
  readonly ring: ArcLengthRing;
  /** Places along the ring, in mm from its start; `end` is less than `start` where the lobe goes over it. */
  readonly start: number;
  readonly end: number;
}

/** Lobes that reach `leastReach` mm or farther, the farthest-reaching first. None for a reach that is not positive. */
export function findProtrusions(region: Region, leastReach: number): Protrusion[] {
  if (!(leastReach > 0) || !Number.isFinite(leastReach)) return [];
  if (!region.some(({ outer, holes }) => [outer, ...holes].some((ring) => mayHoldProtrusion(ring, leastReach))))
    return [];
  const search = new Search(region, leastReach);
  const candidates = arcLengthRingsOf(search.index)
    .filter(({ length }) => length >= 2 * leastReach)
    .flatMap((ring) => candidatesOf(search, ring));
  return outermostProtrusions(candidates).map(({ from, to, root, reach, tip, polygon }) => ({
    from,
    to,
    root,
    reach,
    tip,
    polygon,
  }));
}

class Search {
  /** Of the outer rings, and of the holes that may hold a lobe. */
  readonly index: SegmentIndex;
  private everything: SegmentIndex | undefined;

  private readonly region: Region;
  readonly leastReach: number;

  constructor(region: Region, leastReach: number) {
    this.region = region;
    this.leastReach = leastReach;

    const long = region.map(({ outer, holes }) => ({
      outer,
      holes: holes.filter((hole) => mayHoldProtrusion(hole, leastReach)),
    }));
    this.index = buildSegmentIndex(simplifyRegion(long, COARSENESS * leastReach));
  }

  /** Of all rings; rarely wanted. */
  get all(): SegmentIndex {
    return (this.everything ??= buildSegmentIndex(simplifyRegion(this.region, COARSENESS * this.leastReach)));
  }
}

/** The same polygons with fewer points; holes too small to keep any are left out. */
function simplifyRegion(region: Region, tolerance: number): Region {
  return region.map(({ outer, holes }) => ({
    outer: simplifyRing(outer, tolerance),
    holes: holes.map((hole) => simplifyRing(hole, tolerance)).filter((hole) => hole.length > 0),
  }));
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

function candidatesOf(search: Search, ring: ArcLengthRing): Candidate[] {
  const { index, leastReach } = search;
  const chords = new NearestChords(index, ring);
  const found: Candidate[] = [];
  let last = -Infinity;
  for (let edge = ring.first; edge < ring.first + ring.size; edge += 1) {
    checkpoint(2);
    const turn = turnBefore(index, edge);
    const place = ring.placeOf(edge, 0);
    if (turn >= 0 || (turn > -SHARP && place - last < SPACING * leastReach)) continue;
    last = place;
    found.push(...candidatesFrom(search, ring, chords, edge));
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

function candidatesFrom(search: Search, ring: ArcLengthRing, chords: NearestChords, edge: number): Candidate[] {
  const { index, leastReach } = search;
  const vertex = startOf(index, edge);
  const { x, y } = vertex;
  const { x0, y0, x1, y1 } = index;
  const near = chords.search({
    edge,
    minGap: leastReach,
    maxDistance: MAX_ROOT * leastReach,
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
    if (place.distance <= AT_END || !isClear(search, edge, place)) return [];
    return ringIntervals(ring, edge, place, leastReach)
      .map(({ start, end }) => protrusionBetween(ring, start, end, SAMPLES))
      .filter(({ reach, root }) => reach >= Math.max(leastReach, MIN_SLENDERNESS * root));
  });
}

/** mm: a lobe on a chord of the length is gone round by so much of the ring at least. */
function leastRound(chord: number, leastReach: number): number {
  return 2 * Math.max(leastReach, MIN_SLENDERNESS * chord) - chord;
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
    checkpoint();
    const far = distance(point, middle);
    if (far > reach) [tip, reach] = [point, far];
  }
  return { ring, start, end, from, to, root: distance(from, to), reach, tip, polygon: ring.polygon };
}

/** Whether a chord from the vertex at which `edge` begins stays inside the region up to its other end. */
function isClear(search: Search, edge: number, { edge: other, point }: PlaceOnSegment): boolean {
  const { index } = search;
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
  const { all } = search;
  let clear = true;
  forEachSegmentInBox(all, box, (each) => {
    if (clear && crosses(vertex, point, startOf(all, each), endOf(all, each))) clear = false;
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

function outermostProtrusions(candidates: readonly Candidate[]): Candidate[] {
  const sorted = [...candidates].sort((a, b) => b.reach - b.root - (a.reach - a.root));
  const kept: Candidate[] = [];
  for (const candidate of sorted) {
    const { ring } = candidate;
    checkpoint(kept.length + 1);
    const apart = kept.every((other) => other.ring !== ring || ring.areApart(candidate, other));
    if (apart) kept.push(protrusionBetween(ring, candidate.start, candidate.end, Infinity));
  }
  return kept;
}

function startOf({ x0, y0 }: SegmentIndex, edge: number): Point {
  return { x: defined(x0[edge]), y: defined(y0[edge]) };
}

function endOf({ x1, y1 }: SegmentIndex, edge: number): Point {
  return { x: defined(x1[edge]), y: defined(y1[edge]) };
}

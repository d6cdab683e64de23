/** Places where a bridge could leave an island. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';
import { perimeter } from '../../geometry/base/ring';
import { DRAWN_ALIKE, SAME_POINT, WRITTEN_STEP } from '../../geometry/base/tolerances';
import { add, distance, dot, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { firstHit } from '../../geometry/spatial/raycast';
import { nearestSegment, type SegmentIndex } from '../../geometry/spatial/segment-index';
import { calmLength, nearlyAlong, nearlyUpright, standingLength } from './calm';
import type { PlanOptions } from './types';

export interface CandidateOptions extends Pick<PlanOptions, 'thorough'> {
  /** The direction that bridges of the island are to stand in, of length 1. */
  readonly stand?: Point | undefined;
}

/** A straight way across the opening, between pieces as cut. */
export interface BridgeCandidate {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
  /** The piece that it leads to. */
  readonly target: number;
}

/** mm */
const MIN_SAMPLE_SPACING = 0.3;
/** Corners that reach equally far, and how far apart they are at least, in mm. */
const MAX_EXTREMES = 4;
const MIN_EXTREME_SPACING = 0.5;
/** In mm: points this near to the farthest are as far. */
const LEVEL = WRITTEN_STEP;
/** In mm: pieces this near touch in a point. */
const CONTACT = DRAWN_ALIKE;
const MIN_SAMPLES = 24;
const MAX_SAMPLES = 120;
/** Of each of these sectors round the island, the shortest few to each other piece are looked at closely. */
const SECTORS = 20;
const PER_SECTOR = 2;
/** Where the search is to be thorough, round small islands so many samples are looked at, and all of them closely. */
const MIN_THOROUGH = 72;

/**
 * Ways across from points all along the island's outer boundary: square to it, and to the nearest other piece (which is
 * square to that piece's boundary). Kept are the shortest of each direction from the island's middle to each
 * other piece.
 * @param index edges of all pieces, numbered as they are
 * @param limit mm, how far to look
 * @param acrossLines whether openings are lines with a width
 */
export function candidatesOf(
  index: SegmentIndex,
  island: number,
  outer: Ring,
  middle: Point,
  limit: number,
  { thorough = false, stand }: CandidateOptions = {},
  acrossLines = false,
): BridgeCandidate[] {
  const found = samplesOf(outer, thorough ? MIN_THOROUGH : MIN_SAMPLES).flatMap((sample) =>
    candidatesFrom(index, island, sample, limit, acrossLines, stand),
  );
  const length = (way: BridgeCandidate) => (stand ? standingLength(way, stand) : calmLength(way, acrossLines));
  if (thorough) return [...contactsOf(index, island, outer), ...found];
  const sectors = new Map<number, BridgeCandidate[]>();
  for (const crosser of found) {
    // What lies near must not crowd out what holds: an island in a ring has ways to it and to the frame in one direction.
    const sector = sectorOf(crosser.from, middle) + SECTORS * crosser.target;
    sectors.set(sector, [...(sectors.get(sector) ?? []), crosser]);
  }
  const shortest = [...sectors.keys()]
    .sort((a, b) => a - b)
    .flatMap((sector) => (sectors.get(sector) ?? []).sort((a, b) => length(a) - length(b)).slice(0, PER_SECTOR));
  return [...contactsOf(index, island, outer), ...shortest];
}

/** The ways across from the place of the boundary that is nearest to `near`. */
export function candidatesNear(
  index: SegmentIndex,
  island: number,
  near: Point,
  limit: number,
  acrossLines = false,
): BridgeCandidate[] {
  const place = nearestSegment(index, near, Infinity, (edge) => index.polygon[edge] === island);
  if (!place) return [];
  const start = { x: defined(index.x0[place.edge]), y: defined(index.y0[place.edge]) };
  const end = { x: defined(index.x1[place.edge]), y: defined(index.y1[place.edge]) };
  const outward = normalise(scale(perpendicular(subtract(end, start)), -1));
  return outward ? candidatesFrom(index, island, { point: place.point, outward }, limit, acrossLines) : [];
}

/** The nearest other piece is at most as far as the one straight ahead. */
function candidatesFrom(
  index: SegmentIndex,
  island: number,
  sample: Sample,
  limit: number,
  acrossLines: boolean,
  stand?: Point,
): BridgeCandidate[] {
  const ahead = straightCandidates(index, island, sample, limit);
  const nearest = nearestCandidates(index, island, sample.point, ahead[0]?.length ?? limit);
  const calm = [...ahead, ...nearest].flatMap(({ from, to }) => {
    const way = subtract(to, from);
    const outward = stand ? nearlyAlong(way, stand) : nearlyUpright(way, acrossLines);
    return outward ? straightCandidates(index, island, { point: sample.point, outward }, limit) : [];
  });
  return [...ahead, ...nearest, ...calm];
}

function sectorOf(point: Point, middle: Point): number {
  const turn = Math.atan2(point.y - middle.y, point.x - middle.x) / (2 * Math.PI) + 0.5;
  return Math.floor(turn * SECTORS) % SECTORS;
}

export interface Sample {
  readonly point: Point;
  readonly outward: Point;
}

/** Evenly spread by length along the ring, half a step from its start; the middles of its long edges; its extremes. */
export function samplesOf(ring: Ring, least: number): Sample[] {
  const around = perimeter(ring);
  const count = Math.min(MAX_SAMPLES, Math.max(least, Math.ceil(around / MIN_SAMPLE_SPACING)));
  const step = around / count;
  const samples: Sample[] = [];
  let [passed, next] = [0, step / 2];
  for (let i = 0; i < ring.length; i += 2) {
    checkpoint(2);
    const start = { x: defined(ring[i]), y: defined(ring[i + 1]) };
    const end = { x: defined(ring[(i + 2) % ring.length]), y: defined(ring[(i + 3) % ring.length]) };
    const size = distance(start, end);
    const outward = normalise(scale(perpendicular(subtract(end, start)), -1));
    if (outward && size > step) samples.push({ point: interpolate(start, end, 0.5), outward });
    for (; outward && next < passed + size; next += step) {
      samples.push({ point: add(start, scale(subtract(end, start), (next - passed) / size)), outward });
    }
    passed += size;
  }
  return [...samples, ...extremesOf(ring)];
}

/** The topmost, bottommost, leftmost and rightmost places: on the axes of shapes that are alike on both sides. */
function extremesOf(ring: Ring): Sample[] {
  const directions: Point[] = [
    { x: 0, y: -1 },
    { x: 0, y: 1 },
    { x: -1, y: 0 },
    { x: 1, y: 0 },
  ];
  return directions.flatMap((outward) => {
    const reaching = vertices(ring).map((point) => ({ point, reach: dot(point, outward) }));
    const far = reaching.reduce((most, { reach }) => Math.max(most, reach), -Infinity);
    const places: Point[] = [];
    for (const { point } of reaching.filter(({ reach }) => reach > far - LEVEL).sort((a, b) => b.reach - a.reach)) {
      checkpoint(places.length + 1);
      if (places.every((other) => distance(other, point) > MIN_EXTREME_SPACING)) places.push(point);
    }
    return places.slice(0, MAX_EXTREMES).map((point) => ({ point, outward }));
  });
}

/** Corners that touch another piece in a point: a bridge there leads through both corners. */
function contactsOf(index: SegmentIndex, island: number, ring: Ring): BridgeCandidate[] {
  const points = vertices(ring);
  return points.flatMap((point, at) => {
    const place = nearestSegment(index, point, CONTACT, (edge) => index.polygon[edge] !== island);
    if (!place) return [];
    const before = normalise(subtract(defined(points.at(at - 1)), point));
    const after = normalise(subtract(defined(points[(at + 1) % points.length]), point));
    const inward = before && after && normalise(add(before, after));
    if (!inward) return [];
    const half = scale(inward, CONTACT);
    const middle = interpolate(point, place.point, 0.5);
    const target = defined(index.polygon[place.edge]);
    return [{ from: add(middle, half), to: subtract(middle, half), length: 2 * CONTACT, target }];
  });
}

function vertices(ring: Ring): Point[] {
  const points: Point[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2) points.push({ x: defined(ring[i]), y: defined(ring[i + 1]) });
  return points;
}

export function straightCandidates(
  index: SegmentIndex,
  island: number,
  { point, outward }: Sample,
  limit: number,
): BridgeCandidate[] {
  const hit = firstHit(index, point, outward, limit);
  if (!hit || hit.polygon === island) return [];
  return [{ from: point, to: hit.point, length: hit.distance, target: hit.polygon }];
}

function nearestCandidates(index: SegmentIndex, island: number, point: Point, limit: number): BridgeCandidate[] {
  const place = nearestSegment(index, point, limit, (edge) => index.polygon[edge] !== island);
  const direction = place && normalise(subtract(place.point, point));
  if (!direction) return [];
  const hit = firstHit(index, point, direction, place.distance + SAME_POINT);
  if (!hit || hit.polygon === island || dot(subtract(hit.point, point), direction) <= 0) return [];
  return [{ from: point, to: hit.point, length: hit.distance, target: hit.polygon }];
}

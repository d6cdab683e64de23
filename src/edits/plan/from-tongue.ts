/** Where a bridge could hold the end of a loose tongue: across the nearest opening to firm sheet. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';
import { perimeter, pointsOf } from '../../geometry/base/ring';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { add, distance, dot, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { firstHits } from '../../geometry/spatial/raycast';
import { buildSegmentIndex, nearestSegment, type SegmentIndex } from '../../geometry/spatial/segment-index';
import type { Tongue } from '../../sheet/tongues';
import type { Sheet } from '../../sheet/types';
import { bridgeFrom, surroundingsOf } from './index';
import { type ScoredCandidate, type Surroundings, scoreCandidate } from './score';
import type { Bridge, PlanOptions } from './types';

/** Places along a tongue's outline that are looked at. */
const SAMPLES = 96;
/** Of the reach: nearer to the root a bridge holds little. */
const LEAST_FAR = 0.4;
/** Of the reach: so long may a bridge be. */
const LONGEST = 2;
/** Of the reach: so far apart are places of which more than one is worth trying. */
const APART = 0.15;
const MAX_BRIDGES = 5;
const LEVEL_AND_UPRIGHT: readonly Point[] = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: 1 },
  { x: 0, y: -1 },
];
/** Cosine of the angle between a bridge and what is square to the outline: about 37°. */
const LEAST_SQUARE = 0.8;

/** Bridges that leave the tongue far from its root, the best first; each would hold it by itself. */
export function bridgesFromTongue(sheet: Sheet, tongue: Tongue, options: PlanOptions): Bridge[] {
  const around = surroundingsOf(sheet, options);
  const own = buildSegmentIndex([{ outer: tongue.outline, holes: [] }]);
  const search = { sheet, tongue, own, around, options };
  const ways = samplesOf(tongue.outline).flatMap((sample) => waysFrom(search, sample));
  const kept: Way[] = [];
  for (const way of ways.sort((a, b) => a.worth - b.worth)) {
    const isApart = kept.every(({ bridge }) => distance(bridge.from, way.bridge.from) > APART * tongue.reach);
    if (kept.length < MAX_BRIDGES && isApart) kept.push(way);
  }
  return kept.map(({ bridge }) => bridgeFrom(bridge, defined(sheet.pieces[bridge.island]), sheet, options));
}

interface Search {
  readonly sheet: Sheet;
  readonly tongue: Tongue;
  /** The tongue's own outline. */
  readonly own: SegmentIndex;
  readonly around: Surroundings;
  readonly options: PlanOptions;
}

interface Way {
  readonly bridge: ScoredCandidate;
  /** mm: its cost, made greater by how near it is to the root. The less the better. */
  readonly worth: number;
}

interface Sample {
  readonly place: Point;
  readonly outward: Point;
}

/** Evenly along the outline, and the middles of its long edges; the root itself is left out. */
function samplesOf(outline: Ring): Sample[] {
  const step = perimeter(outline) / SAMPLES;
  const samples: Sample[] = [];
  const points = pointsOf(outline);
  let next = step / 2;
  for (const [i, from] of points.slice(0, -1).entries()) {
    checkpoint();
    const to = defined(points[i + 1]);
    const size = distance(from, to);
    const outward = normalise(scale(perpendicular(subtract(to, from)), -1));
    if (outward && size > step) samples.push({ place: interpolate(from, to, 0.5), outward });
    for (; outward && next < size; next += step) samples.push({ place: interpolate(from, to, next / size), outward });
    next -= size;
  }
  return samples;
}

/** Square to the outline, level or upright, and to the nearest bank. */
function waysFrom(search: Search, { place, outward }: Sample): Way[] {
  const { sheet, tongue, own, around } = search;
  const far = distance(place, interpolate(tongue.from, tongue.to, 0.5)) / tongue.reach;
  if (far < LEAST_FAR) return [];
  const limit = LONGEST * tongue.reach;
  const beside = PLAINLY_BESIDE + sheet.kerf;
  const bank = nearestSegment(around.pieces, place, limit, (edge) => {
    const { x0, y0, x1, y1 } = around.pieces;
    const middle = {
      x: (defined(x0[edge]) + defined(x1[edge])) / 2,
      y: (defined(y0[edge]) + defined(y1[edge])) / 2,
    };
    return nearestSegment(own, middle, beside) === undefined;
  });
  const nearest = bank && normalise(subtract(bank.point, place));
  const level = LEVEL_AND_UPRIGHT.filter((direction) => dot(direction, outward) > LEAST_SQUARE);
  return [outward, ...level, ...(nearest ? [nearest] : [])].flatMap((direction) => {
    const origin = add(place, scale(direction, PLAINLY_BESIDE + sheet.kerf / 2));
    const { back, ahead } = firstHits(around.pieces, origin, direction, limit);
    if (!back || !ahead || nearestSegment(own, ahead.point, beside)) return [];
    if ([back, ahead].some(({ polygon }) => defined(sheet.pieces[polygon]).island)) return [];
    const length = back.distance + ahead.distance;
    const crossing = { from: back.point, to: ahead.point, length, target: ahead.polygon };
    const bridge = scoreCandidate(crossing, back.polygon, search.options.width, around);
    return bridge ? [{ bridge, worth: bridge.cost / far ** 2 }] : [];
  });
}

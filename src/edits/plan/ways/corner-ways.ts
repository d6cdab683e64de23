/** Ways across from the corners that a large island reaches out with: a hand holds a point at its tip. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { add, cross, distance, dot, normalise, scale, subtract } from '../../../geometry/base/vector';
import { nearestSegment } from '../../../geometry/spatial/segment-index';
import { calmLength } from '../calm';
import { type Sample, straightCandidates } from '../candidates';
import { hangsByTip } from '../on-tip';
import { type ScoredCandidate, type Surroundings, scoreCandidate, tooLong } from '../score';
import type { Body } from '../search/body';
import { type Corner, cornersOf } from './corners';
import { rootedInPoints, STEEPEST } from './rooted';

/** mm: corners this near to the island's convex hull reach out. */
const AT_HULL = 0.5;
/** So many of the sharpest are looked at. */
const MOST = 16;
/** Cosine: the outline turns by 60° or more. */
const SHARP = 0.5;
/** Cosine of how far a way may lean from straight out of the corner. */
const LEANING = Math.cos((62 * Math.PI) / 180);
/** What such a bridge costs, in times of one with square ends. */
const DEARER = { calm: 1.5, oblique: 2 };

/** Sines: a bridge does not leave a side that it runs along; where a side is square to it corners are no better than others. */
const SIDES = { along: 0.2, square: 0.95 };
/** How far beside the corner the axis of a bridge is, in least widths: half of its own, and a little. */
const ASIDE = [0.55, 1.05, 2.05];

const AXES: readonly Point[] = [
  { x: 0, y: -1 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
  { x: 1, y: 0 },
];

/**
 * Straight out of each corner, level, upright, and to what is nearest.
 * @param limit mm: no way is longer
 * @param least mm as drawn: the least width
 */
export function cornerWaysFrom(
  outer: Ring,
  body: Body,
  island: number,
  limit: number,
  least: number,
  around: Surroundings,
): ScoredCandidate[] {
  const corners = cornersOf(outer)
    .filter(({ convex, turn, point }) => convex && turn <= SHARP && isAtHull(body, point))
    .sort((a, b) => a.turn - b.turn)
    .slice(0, MOST);
  return corners.flatMap((corner) => waysOutOf(corner, island, limit, least, around));
}

function isAtHull({ hull }: Body, point: Point): boolean {
  return hull.some((place) => distance(place, point) < AT_HULL);
}

function waysOutOf(
  corner: Corner,
  island: number,
  limit: number,
  least: number,
  around: Surroundings,
): ScoredCandidate[] {
  const { pieces, lines } = around;
  checkpoint(300);
  return placesOf(corner, island, limit, least, around).flatMap((sample) =>
    straightCandidates(pieces, island, sample, limit).flatMap((way) => {
      const scored = scoreCandidate(way, island, least, around, STEEPEST);
      const rooted = scored && rootedInPoints(scored, least, around);
      if (!rooted || rooted.length > around.longest || hangsByTip(rooted, rooted.width, around.thin)) return [];
      const dearer = AXES.includes(sample.outward) ? DEARER.calm : DEARER.oblique;
      const factor = (dearer * tooLong(rooted.length) * rooted.width) / least;
      return [{ ...rooted, cost: factor * calmLength(rooted, lines) }];
    }),
  );
}

/** From the point itself, and level and upright so far along its sides that a bridge ends at it with one of its own. */
function placesOf(
  { point, outward, sides }: Corner,
  island: number,
  limit: number,
  least: number,
  { pieces }: Surroundings,
): Sample[] {
  const isOut = (way: Point): boolean => dot(way, outward) > LEANING;
  const place = nearestSegment(pieces, point, limit, (edge) => pieces.polygon[edge] !== island);
  const nearest = place && normalise(subtract(place.point, point));
  const directions = [outward, ...(nearest && isOut(nearest) ? [nearest] : [])];
  const beside = AXES.filter(isOut).flatMap((axis) =>
    sides.flatMap((side) => {
      const apart = Math.abs(cross(side, axis));
      if (apart < SIDES.along || apart > SIDES.square) return [];
      return ASIDE.map((share) => ({ point: add(point, scale(side, (share * least) / apart)), outward: axis }));
    }),
  );
  return [...directions.map((way) => ({ point, outward: way })), ...beside];
}

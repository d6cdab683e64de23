/** The largest disc that fits into a polygon. */
import polylabel from 'polylabel';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import { pointInside } from '../base/point-inside';
import type { Polygon, Ring } from '../base/polygon-types';
import { boxOfRing, edgesIn, nearestOnEdge, perimeter, ringContains, ringsOf } from '../base/ring';
import { buildSegmentIndex, nearestSegment } from '../spatial/segment-index';

export interface Disc {
  readonly centre: Point;
  /** mm */
  readonly radius: number;
}

/**
 * Along a polygon's middle line the search (Agafonkin's polylabel) takes as many cells as the line is longer than the
 * precision; a coarser search, sharpened afterwards, keeps that number within bounds.
 */
const MAX_CELLS_ALONG = 2000;

/**
 * The largest inscribed disc. Its radius is never above the true one, and below it by no more than `precision` mm or a
 * 4000th of the polygon's perimeter, whichever is larger; where the best place is not rivalled by another that close
 * to it, by no more than about `precision`. A polygon without inside gives a disc of radius 0 at the middle of its box.
 */
export function inscribedDisc(polygon: Polygon, precision: number): Disc {
  const box = boxOfRing(polygon.outer);
  const size = Math.min(box.maxX - box.minX, box.maxY - box.minY);
  if (!(size > 0) || !Number.isFinite(size)) return { centre: middleOf(polygon.outer), radius: 0 };
  const rings = ringsOf(polygon);
  const around = rings.reduce((sum, ring) => sum + perimeter(ring), 0);
  if (around > 2 * MAX_CELLS_ALONG * size) return discInSliver(polygon);
  const coarse = Math.min(Math.max(precision, around / 2 / MAX_CELLS_ALONG), size / 8);
  const found = polylabel(rings.map(pairs), coarse);
  const disc = { centre: { x: found[0], y: found[1] }, radius: Math.max(0, found.distance) };
  return disc.radius > 0 ? refineDisc(distanceTo(polygon), disc, coarse, Math.min(precision, coarse)) : disc;
}

/**
 * So slender that the search would take a cell for each width of it: no disc within exceeds an 8000th of the perimeter.
 */
function discInSliver(polygon: Polygon): Disc {
  const centre = pointInside(polygon.outer);
  const radius = polygon.holes.some((hole) => ringContains(hole, centre))
    ? 0
    : (nearestSegment(buildSegmentIndex([polygon]), centre)?.distance ?? 0);
  return { centre, radius };
}

/** Up to so many edges it is quicker to look at all of them than to search an index. */
const MAX_UNINDEXED_EDGES = 500;

/** mm from a place to the polygon's boundary. */
function distanceTo(polygon: Polygon): (x: number, y: number) => number {
  const rings = ringsOf(polygon);
  if (edgesIn(rings) <= MAX_UNINDEXED_EDGES) return (x, y) => distanceToRings(rings, x, y);
  const index = buildSegmentIndex([polygon]);
  return (x, y) => nearestSegment(index, { x, y })?.distance ?? 0;
}

function distanceToRings(rings: readonly Ring[], x: number, y: number): number {
  let least = Infinity;
  for (const ring of rings) least = Math.min(least, squareToRing(ring, x, y));
  return Number.isFinite(least) ? Math.sqrt(least) : 0;
}

/** mm², to the nearest edge: asked for so often that edges are not called back. */
function squareToRing(ring: Ring, x: number, y: number): number {
  checkpoint(ring.length / 4);
  let least = Infinity;
  let x0 = ring[ring.length - 2] ?? 0;
  let y0 = ring[ring.length - 1] ?? 0;
  for (let index = 0; index + 1 < ring.length; index += 2) {
    const x1 = defined(ring[index]);
    const y1 = defined(ring[index + 1]);
    const t = nearestOnEdge(x, y, x0, y0, x1, y1);
    const dx = x0 + t * (x1 - x0) - x;
    const dy = y0 + t * (y1 - y0) - y;
    least = Math.min(least, dx * dx + dy * dy);
    x0 = x1;
    y0 = y1;
  }
  return least;
}

const DIRECTIONS = 12;

/**
 * Climbs to the nearby best place: tries steps all round, each time from turned directions, and halves them when none
 * gains. Steps are shorter than the radius, so the centre never leaves the polygon.
 */
function refineDisc(
  distanceFrom: (x: number, y: number) => number,
  start: Disc,
  reach: number,
  precision: number,
): Disc {
  let best = start;
  let turn = 0;
  for (let step = Math.min(reach, start.radius / 2), tries = 0; step > precision / 16 && tries < 400; tries += 1) {
    const before = best;
    turn += 0.7;
    for (let direction = 0; direction < DIRECTIONS; direction += 1) {
      const angle = turn + (direction * 2 * Math.PI) / DIRECTIONS;
      const centre = { x: before.centre.x + step * Math.cos(angle), y: before.centre.y + step * Math.sin(angle) };
      const radius = distanceFrom(centre.x, centre.y);
      if (radius > best.radius) best = { centre, radius };
    }
    if (best === before) step /= 2;
  }
  return best;
}

function middleOf(ring: Ring): Point {
  const { minX, minY, maxX, maxY } = boxOfRing(ring);
  return minX <= maxX ? { x: (minX + maxX) / 2, y: (minY + maxY) / 2 } : { x: 0, y: 0 };
}

function pairs(ring: Ring): [number, number][] {
  const points: [number, number][] = [];
  for (let index = 0; index + 1 < ring.length; index += 2)
    points.push([defined(ring[index]), defined(ring[index + 1])]);
  return points;
}

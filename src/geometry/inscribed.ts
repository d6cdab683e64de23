/** The largest disc that fits into a polygon. */
import polylabel from 'polylabel';
import type { Point } from './curve';
import type { Polygon, Ring } from './region';
import { boxOfRing, ringsOf } from './rings';

export interface Disc {
  readonly centre: Point;
  /** mm */
  readonly radius: number;
}

/**
 * The largest inscribed disc, its radius within `precision` mm of the true one and never above it. A polygon without
 * inside gives a disc of radius 0 at the middle of its box.
 */
export function inscribedDisc(polygon: Polygon, precision: number): Disc {
  const box = boxOfRing(polygon.outer);
  const size = Math.min(box.maxX - box.minX, box.maxY - box.minY);
  if (!(size > 0) || !Number.isFinite(size)) return { centre: middleOf(polygon.outer), radius: 0 };
  const found = polylabel(ringsOf(polygon).map(pairs), Math.min(precision, size / 8));
  return { centre: { x: found[0], y: found[1] }, radius: Math.max(0, found.distance) };
}

function middleOf(ring: Ring): Point {
  const { minX, minY, maxX, maxY } = boxOfRing(ring);
  return minX <= maxX ? { x: (minX + maxX) / 2, y: (minY + maxY) / 2 } : { x: 0, y: 0 };
}

function pairs(ring: Ring): [number, number][] {
  const points: [number, number][] = [];
  for (let index = 0; index + 1 < ring.length; index += 2) points.push([ring[index] ?? 0, ring[index + 1] ?? 0]);
  return points;
}

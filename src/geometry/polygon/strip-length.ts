/** How long a polygon is that is taken for a strip. */
import type { Polygon } from '../base/polygon-types';
import { areaOf, perimeterOf } from '../boolean/index';

/**
 * The longer side of the rectangle of the same area and perimeter. Of a bent strip it is the length along its course, of a
 * slender triangle its height; the area divided by it is the strip's mean width. What is rounder than a square counts as
 * long as a quarter of its perimeter.
 */
export function stripLength(polygon: Polygon): number {
  const half = perimeterOf(polygon) / 2;
  return (half + Math.sqrt(Math.max(0, half * half - 4 * areaOf(polygon)))) / 2;
}

/** How far a bridge's strip must go beyond its ends, so that it crosses the whole opening over its whole width. */
import type { Point } from '../geometry/curve';
import { boxOfPolygon, intersection } from '../geometry/polygons';
import { distance, dot, scale, subtract } from '../geometry/point';
import type { Box, Polygon, Region } from '../geometry/region';
import { boxesTouch, ringsOf } from '../geometry/rings';
import { stripAlong, type Strip } from './strip';

/** The least, in mm, that a strip reaches into the material: well above the flattening of curves. */
const LEAST_REACH = 0.02;

/**
 * The strip from→to in sheet mm, `width` wide, long enough at both ends for slanted and curved edges of the opening,
 * and no longer: at most `width` beyond either end.
 */
export function reachingStrip(openings: Region, from: Point, to: Point, width: number): Strip {
  const gap = distance(from, to);
  const longest = stripAlong(from, to, width, width);
  const box = boxOfCorners(longest.corners);
  const near = openings.filter((polygon) => boxesTouch(boxOfPolygon(polygon), box));
  const covered = intersection(near, [polygonOf(longest)]);
  const along = scale(subtract(to, from), 1 / gap);
  let [low, high] = [0, gap];
  for (const polygon of covered) {
    const [first, last] = extentAlong(polygon, from, along);
    if (first < gap / 2 && last > gap / 2) [low, high] = [Math.min(low, first), Math.max(high, last)];
  }
  const spare = Math.min(width / 4, Math.max(LEAST_REACH, width / 20));
  const before = Math.min(width, spare - low);
  const after = Math.min(width, high - gap + spare);
  return stripAlong(from, to, width, before, after);
}

export function polygonOf({ corners }: Strip): Polygon {
  return { outer: Float64Array.from(corners.flatMap(({ x, y }) => [x, y])), holes: [] };
}

export function boxOfCorners(corners: readonly Point[]): Box {
  const [x, y] = [corners.map((corner) => corner.x), corners.map((corner) => corner.y)];
  return { minX: Math.min(...x), minY: Math.min(...y), maxX: Math.max(...x), maxY: Math.max(...y) };
}

function extentAlong(polygon: Polygon, origin: Point, along: Point): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const ring of ringsOf(polygon)) {
    for (let i = 0; i < ring.length; i += 2) {
      const place = dot(subtract({ x: ring[i] ?? 0, y: ring[i + 1] ?? 0 }, origin), along);
      low = Math.min(low, place);
      high = Math.max(high, place);
    }
  }
  return [low, high];
}

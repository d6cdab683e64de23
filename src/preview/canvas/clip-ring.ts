/** A ring cut off at a box: I. E. Sutherland and G. W. Hodgman, "Reentrant polygon clipping", 1974. */
import type { Box, Ring } from '../../geometry/base/polygon-types';

/**
 * The ring's part in the box. Where the ring leaves the box and comes back, lines along the box's edges join the parts;
 * filled inside the box, it is the same as before by either fill rule.
 */
export function clipRingToBox(ring: Ring, { minX, minY, maxX, maxY }: Box): Ring {
  let points: readonly number[] = Array.from(ring);
  points = clipped(points, 0, minX, 1);
  points = clipped(points, 0, maxX, -1);
  points = clipped(points, 1, minY, 1);
  return Float64Array.from(clipped(points, 1, maxY, -1));
}

/**
 * @param axis 0 for x, 1 for y
 * @param sign 1 where what is beyond `limit` stays, -1 where what is before it does
 */
function clipped(points: readonly number[], axis: 0 | 1, limit: number, sign: 1 | -1): number[] {
  const kept: number[] = [];
  let [x, y] = [points.at(-2) ?? 0, points.at(-1) ?? 0];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [nextX, nextY] = [points[i] ?? 0, points[i + 1] ?? 0];
    const before = ((axis === 0 ? x : y) - limit) * sign;
    const after = ((axis === 0 ? nextX : nextY) - limit) * sign;
    if (before < 0 !== after < 0) {
      const t = before / (before - after);
      kept.push(axis === 0 ? limit : x + (nextX - x) * t, axis === 1 ? limit : y + (nextY - y) * t);
    }
    if (after >= 0) kept.push(nextX, nextY);
    [x, y] = [nextX, nextY];
  }
  return kept;
}

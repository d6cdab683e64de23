/** Corners of an outline that point outwards. Sheet mm. */
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { pointsOf } from '../../../geometry/base/ring';
import { cross, dot, normalise, perpendicular, scale, subtract } from '../../../geometry/base/vector';
import type { Sample } from '../candidates';

/** Cosine of the angle by which an outline turns at what is a corner. */
const CORNER = Math.cos((20 * Math.PI) / 180);

export interface Corner extends Sample {
  /** Cosine of the angle by which the outline turns there. */
  readonly turn: number;
  readonly convex: boolean;
  /** Along its two sides, away from it, of length 1. */
  readonly sides: readonly [Point, Point];
}

/** Straight out of each corner, halfway between its sides. */
export function cornersOf(ring: Ring): Corner[] {
  const points = pointsOf(ring);
  return points.flatMap((point, i) => {
    const before = normalise(subtract(point, defined(points.at(i - 1))));
    const after = normalise(subtract(defined(points[(i + 1) % points.length]), point));
    if (!before || !after || dot(before, after) > CORNER) return [];
    const outward = normalise(scale(perpendicular({ x: before.x + after.x, y: before.y + after.y }), -1));
    const sides = [scale(before, -1), after] as const;
    return outward ? [{ point, outward, turn: dot(before, after), convex: cross(before, after) > 0, sides }] : [];
  });
}

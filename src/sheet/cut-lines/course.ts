/** The way that two lines have in common, as segments. Sheet mm. */
import type { Point } from '../../geometry/base/curve-types';
import { pointAt } from '../../geometry/curve/index';
import type { Segment } from '../../geometry/spatial/segment-distance';
import type { DoubledLine } from './index';

/** In each stretch of a curve, so many steps. */
const STEPS = 8;

/** Along the first of the two. */
export function courseOf({ first: { curves }, stretch: { pieces } }: DoubledLine): Segment[] {
  return pieces.flatMap(({ curve, from, to }) => {
    const own = curves[curve];
    if (!own) return [];
    const points = Array.from({ length: STEPS + 1 }, (_, i) => pointAt(own, from + (i / STEPS) * (to - from)));
    return points.slice(1).map(({ x, y }, i) => {
      const before = points[i] as Point;
      return { ax: before.x, ay: before.y, bx: x, by: y };
    });
  });
}

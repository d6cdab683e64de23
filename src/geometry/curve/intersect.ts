/** Where a curve meets a straight line. */

import type { Arc, Curve, Point } from '../base/curve-types';
import { cross, distance, hypotenuse, subtract } from '../base/vector';
import { controlPoints, parametersOfAngle } from './measure';
import { rootsInUnitInterval } from './polynomial';

/**
 * The t in [0, 1], ascending, at which the curve meets the endless line through a and b; touching places once.
 * None when a and b are one point, or when the curve runs along the line.
 */
export function intersectWithLine(curve: Curve, a: Point, b: Point): number[] {
  const along = subtract(b, a);
  const size = hypotenuse(along.x, along.y);
  if (!(size > 0)) return [];
  const unit = { x: along.x / size, y: along.y / size };
  const side = (point: Point): number => cross(unit, subtract(point, a));
  if (curve.kind !== 'arc') {
    const controls = controlPoints(curve);
    const farthest = Math.max(...controls.map((point) => distance(point, a)));
    return rootsInUnitInterval(controls.map(side), ROUNDING * farthest);
  }
  return intersectArcWithLine(curve, side(curve.centre), cross(unit, curve.axisU), cross(unit, curve.axisV));
}

/** Relative error of a point's distance from the line, as computed in doubles. */
const ROUNDING = 4e-16;

/** Roots of offset + alongU·cos θ + alongV·sin θ. */
function intersectArcWithLine(arc: Arc, offset: number, alongU: number, alongV: number): number[] {
  const reach = Math.hypot(alongU, alongV);
  if (!(reach > 0)) return [];
  const ratio = -offset / reach;
  if (Math.abs(ratio) > 1 + 1e-13) return [];
  const middle = Math.atan2(alongV, alongU);
  const spread = Math.acos(Math.max(-1, Math.min(1, ratio)));
  const angles = spread === 0 || spread === Math.PI ? [middle + spread] : [middle - spread, middle + spread];
  return angles.flatMap((angle) => parametersOfAngle(arc, angle)).sort((first, second) => first - second);
}

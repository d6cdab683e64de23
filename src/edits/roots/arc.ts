/** The arc of a fillet as a curve. */
import type { Arc, Curve, Point } from '../../geometry/base/curve-types';
import { add, cross, dot, perpendicular, scale, subtract } from '../../geometry/base/vector';

/**
 * From one place of a circle to another, the shorter way.
 * @param start on the circle but for rounding, as is `end`
 * @param asCubic as the cubic with the same ends and tangents, its handles 4/3·tan(θ/4) radii long for a turn of θ (common
 * formula, from memory): within 0.03 % of the radius for a quarter
 */
export function arcAbout(centre: Point, radius: number, start: Point, end: Point, asCubic: boolean): Curve {
  const [from, to] = [subtract(start, centre), subtract(end, centre)];
  const sweep = Math.atan2(cross(from, to), dot(from, to));
  if (asCubic) {
    const handle = (4 / 3) * Math.tan(sweep / 4);
    const [control1, control2] = [
      add(start, scale(perpendicular(from), handle)),
      subtract(end, scale(perpendicular(to), handle)),
    ];
    return { kind: 'cubic', start, control1, control2, end };
  }
  const round = { centre, axisU: { x: radius, y: 0 }, axisV: { x: 0, y: radius } };
  return { kind: 'arc', start, end, ...round, from: Math.atan2(from.y, from.x), sweep } satisfies Arc;
}

/** Which points a curve certainly passes by: told from its control points, where the nearest place takes far longer. */

import type { Arc, Curve, Point } from '../base/curve-types';
import { distance, hypotenuse } from '../base/vector';
import { lengthLimitOf } from './measure';

/** Relative error of a point's distance from a line, as computed in doubles. */
const ROUNDING = 4e-16;

/**
 * Whether the curve certainly passes the point by more than `reach` mm: beside or beyond the box along its chord that
 * holds its control points; of an arc, inside or outside the whole ellipse.
 */
export function isPlainlyOff(curve: Curve, point: Point, reach: number): boolean {
  if (curve.kind === 'arc') return isOffEllipse(curve, point, reach);
  const { start, end } = curve;
  const [x, y] = [end.x - start.x, end.y - start.y];
  const size = hypotenuse(x, y);
  if (!(size > 0)) return false;
  const slack = (reach + ROUNDING * (size + distance(start, point))) * size;
  return isBeyond(curve, point, -y, x, slack) || isBeyond(curve, point, x, y, slack);
}

/**
 * The ellipse is the image M of the unit circle; M w is as far from it as w from the circle, times the least stretch of M or
 * more, which is |det M| over its greatest, and that is at most √(U² + V²). All times |det M|, so that it may be 0.
 */
function isOffEllipse({ centre, axisU, axisV }: Arc, { x, y }: Point, reach: number): boolean {
  const [dx, dy] = [x - centre.x, y - centre.y];
  const inside = Math.abs(axisU.x * axisV.y - axisU.y * axisV.x);
  const own = hypotenuse(dx * axisV.y - dy * axisV.x, axisU.x * dy - axisU.y * dx);
  const size = hypotenuse(hypotenuse(axisU.x, axisU.y), hypotenuse(axisV.x, axisV.y));
  const rounding = 4 * ROUNDING * (size + hypotenuse(dx, dy) + Math.abs(x) + Math.abs(y));
  return Math.abs(own - inside) > (reach + rounding) * size;
}

/** Whether the point lies beyond all control points by more than `slack`, in one direction or its opposite. */
function isBeyond(curve: Exclude<Curve, Arc>, point: Point, x: number, y: number, slack: number): boolean {
  const { start } = curve;
  const placeOf = (each: Point): number => x * (each.x - start.x) + y * (each.y - start.y);
  const end = placeOf(curve.end);
  let [low, high] = [Math.min(0, end), Math.max(0, end)];
  const include = (place: number): void => {
    low = Math.min(low, place);
    high = Math.max(high, place);
  };
  if (curve.kind === 'quadratic') include(placeOf(curve.control));
  if (curve.kind === 'cubic') {
    include(placeOf(curve.control1));
    include(placeOf(curve.control2));
  }
  const at = placeOf(point);
  return at > high + slack || at < low - slack;
}

/** So often a cubic is halved to see that it passes a point by. */
const HALVINGS = 4;

/** The same of a cubic that bends: what is plainly off both of its halves, or of the halves of these. */
export function isOff(curve: Curve, point: Point, reach: number): boolean {
  if (curve.kind !== 'cubic') return isPlainlyOff(curve, point, reach);
  const { start, control1, control2, end } = curve;
  const { x, y } = point;
  const slack = reach + ROUNDING * (lengthLimitOf(curve) + distance(start, point));
  const [ax, bx, cx, dx] = [start.x - x, control1.x - x, control2.x - x, end.x - x];
  return isCubicOff(ax, start.y - y, bx, control1.y - y, cx, control2.y - y, dx, end.y - y, slack, HALVINGS);
}

/** Of the cubic with the given control points, whether it passes the origin by: these alone, as it is asked very often. */
function isCubicOff(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
  reach: number,
  halvings: number,
): boolean {
  const [x, y] = [dx - ax, dy - ay];
  const slack = reach * Math.sqrt(x * x + y * y);
  if (slack > 0) {
    const [a, b, c] = [x * ay - y * ax, x * by - y * bx, x * cy - y * cx];
    if (Math.min(a, b, c) > slack || Math.max(a, b, c) < -slack) return true;
    const [from, one, other, to] = [x * ax + y * ay, x * bx + y * by, x * cx + y * cy, x * dx + y * dy];
    if (Math.min(from, one, other) > slack || Math.max(to, one, other) < -slack) return true;
  }
  if (halvings === 0) return false;
  const [abx, aby, bcx, bcy] = [(ax + bx) / 2, (ay + by) / 2, (bx + cx) / 2, (by + cy) / 2];
  const [cdx, cdy] = [(cx + dx) / 2, (cy + dy) / 2];
  const [abcx, abcy, bcdx, bcdy] = [(abx + bcx) / 2, (aby + bcy) / 2, (bcx + cdx) / 2, (bcy + cdy) / 2];
  const [mx, my] = [(abcx + bcdx) / 2, (abcy + bcdy) / 2];
  return (
    isCubicOff(ax, ay, abx, aby, abcx, abcy, mx, my, reach, halvings - 1) &&
    isCubicOff(mx, my, bcdx, bcdy, cdx, cdy, dx, dy, reach, halvings - 1)
  );
}

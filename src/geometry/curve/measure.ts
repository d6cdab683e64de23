/** Extent, length and area of curves. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve, Point } from '../base/curve-types';
import { singularValues } from '../base/matrix';
import type { Box } from '../base/polygon-types';
import { cross, distance, subtract, vectorLength } from '../base/vector';
import { derivativeAt, pointAt } from './evaluate';
import { rootsInUnitInterval } from './polynomial';

/** The least upright box round the curve, in mm; exact up to rounding. */
export function boundsOf(curve: Curve): Box {
  return boxOfPoints([curve.start, curve.end, ...extremes(curve).map((t) => pointAt(curve, t))]);
}

/** A box round the curve, in mm, and little work: that of its control points; for arcs the least one. */
export function roughBoundsOf(curve: Curve): Box {
  return curve.kind === 'arc' ? boundsOf(curve) : boxOfPoints(controlPoints(curve));
}

function boxOfPoints(points: readonly Point[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/** Where the derivative of x or of y vanishes. */
function extremes(curve: Curve): number[] {
  switch (curve.kind) {
    case 'line':
      return [];
    case 'quadratic':
    case 'cubic': {
      const controls = controlPoints(curve);
      const steps = controls.slice(1).map((point, index) => subtract(point, defined(controls[index])));
      const inX = rootsInUnitInterval(steps.map((step) => step.x));
      return inX.concat(rootsInUnitInterval(steps.map((step) => step.y)));
    }
    case 'arc': {
      const inX = Math.atan2(curve.axisV.x, curve.axisU.x);
      const inY = Math.atan2(curve.axisV.y, curve.axisU.y);
      return [inX, inX + Math.PI, inY, inY + Math.PI].flatMap((angle) => parametersOfAngle(curve, angle));
    }
  }
}

/** The t in [0, 1] at which an arc passes the given angle (radians, taken modulo 2π). */
export function parametersOfAngle(arc: { readonly from: number; readonly sweep: number }, angle: number): number[] {
  if (arc.sweep === 0) return [];
  const turn = 2 * Math.PI;
  const direction = Math.sign(arc.sweep);
  const extent = Math.abs(arc.sweep);
  const slack = 1e-12 * Math.max(1, extent);
  let ahead = (((direction * (angle - arc.from)) % turn) + turn) % turn;
  if (ahead > turn - slack) ahead -= turn;
  const parameters: number[] = [];
  for (; ahead <= extent + slack && parameters.length < 64; ahead += turn) {
    parameters.push(Math.min(1, Math.max(0, ahead / extent)));
  }
  return parameters;
}

/** The Bézier control points of a line, quadratic or cubic. */
export function controlPoints(curve: Exclude<Curve, { kind: 'arc' }>): Point[] {
  switch (curve.kind) {
    case 'line':
      return [curve.start, curve.end];
    case 'quadratic':
      return [curve.start, curve.control, curve.end];
    case 'cubic':
      return [curve.start, curve.control1, curve.control2, curve.end];
  }
}

/** In mm, to 1e-9 of itself. Lines and circular arcs in closed form, others by adaptive Gauss–Legendre quadrature. */
export function lengthOf(curve: Curve): number {
  if (curve.kind === 'line') return distance(curve.start, curve.end);
  if (curve.kind === 'arc' && isCircular(curve.axisU, curve.axisV)) {
    return vectorLength(curve.axisU) * Math.abs(curve.sweep);
  }
  const speed = (t: number): number => vectorLength(derivativeAt(curve, t));
  const panels = curve.kind === 'arc' ? Math.max(1, Math.min(64, Math.ceil(Math.abs(curve.sweep)))) : 1;
  const parts = Array.from({ length: panels }, (_, panel) => {
    const [from, to] = [panel / panels, (panel + 1) / panels];
    return { from, to, whole: gauss(speed, from, to) };
  });
  const tolerance = 1e-11 * parts.reduce((sum, part) => sum + part.whole, 0);
  return parts.reduce((sum, { from, to, whole }) => sum + integrate(speed, from, to, whole, tolerance, 48), 0);
}

/** In mm, a length that no part of the curve exceeds, at little cost: that of its control polygon. */
export function lengthLimitOf(curve: Curve): number {
  switch (curve.kind) {
    case 'line':
      return distance(curve.start, curve.end);
    case 'quadratic':
      return distance(curve.start, curve.control) + distance(curve.control, curve.end);
    case 'cubic': {
      const { start, control1, control2, end } = curve;
      return distance(start, control1) + distance(control1, control2) + distance(control2, end);
    }
    case 'arc':
      return Math.abs(curve.sweep) * (vectorLength(curve.axisU) + vectorLength(curve.axisV));
  }
}

/** Equal semi-axes up to rounding. */
function isCircular(u: Point, v: Point): boolean {
  const { larger, smaller } = singularValues(u, v);
  return larger - smaller <= 1e-12 * larger;
}

/** Halves the interval until whole and halves agree to `tolerance` (absolute), `depth` times at most. */
function integrate(
  f: (t: number) => number,
  from: number,
  to: number,
  whole: number,
  tolerance: number,
  depth: number,
): number {
  const middle = (from + to) / 2;
  const left = gauss(f, from, middle);
  const right = gauss(f, middle, to);
  if (depth === 0 || !(Math.abs(left + right - whole) > tolerance)) return left + right;
  const before = integrate(f, from, middle, left, tolerance, depth - 1);
  return before + integrate(f, middle, to, right, tolerance, depth - 1);
}

/** Positive nodes and weights of the 16-point Gauss–Legendre rule (Abramowitz and Stegun, table 25.4). */
const GAUSS_16: readonly (readonly [number, number])[] = [
  [0.095012509837637, 0.189450610455069],
  [0.281603550779259, 0.182603415044924],
  [0.458016777657227, 0.169156519395003],
  [0.617876244402644, 0.149595988816577],
  [0.755404408355003, 0.124628971255534],
  [0.865631202387832, 0.095158511682493],
  [0.944575023073233, 0.062253523938648],
  [0.98940093499165, 0.027152459411754],
];

function gauss(f: (t: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  let sum = 0;
  checkpoint(48);
  for (const [node, weight] of GAUSS_16) sum += weight * (f(middle - half * node) + f(middle + half * node));
  return sum * half;
}

/**
 * The curve's part of Green's integral ½ ∮ x·dy − y·dx, in mm²: summed over a closed chain it is the signed area,
 * positive for chains that turn clockwise on the screen (y down). Exact closed forms for all kinds.
 */
export function signedAreaOf(curve: Curve): number {
  switch (curve.kind) {
    case 'line':
      return cross(curve.start, curve.end) / 2;
    case 'quadratic': {
      const { start, control, end } = curve;
      return (2 * cross(start, control) + 2 * cross(control, end) + cross(start, end)) / 6;
    }
    case 'cubic': {
      const { start, control1, control2, end } = curve;
      const outer = 6 * cross(start, control1) + 3 * cross(start, control2) + cross(start, end);
      return (outer + 3 * cross(control1, control2) + 3 * cross(control1, end) + 6 * cross(control2, end)) / 20;
    }
    case 'arc': {
      const chord = subtract(curve.end, curve.start);
      return (cross(curve.centre, chord) + cross(curve.axisU, curve.axisV) * curve.sweep) / 2;
    }
  }
}

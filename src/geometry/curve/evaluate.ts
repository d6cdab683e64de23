/** Places, directions and bends along a curve, for t from 0 (start) to 1 (end). */
import type { Arc, Curve, Point } from '../base/curve-types';
import { add, cross, dot, interpolate, normalise, scale, subtract, vectorLength } from '../base/vector';

/** The ends are given exactly. */
export function pointAt(curve: Curve, t: number): Point {
  if (t === 0) return curve.start;
  if (t === 1) return curve.end;
  const s = 1 - t;
  switch (curve.kind) {
    case 'line':
      return interpolate(curve.start, curve.end, t);
    case 'quadratic':
      return weighted(curve.start, curve.control, curve.end, s * s, 2 * s * t, t * t);
    case 'cubic': {
      const { x, y } = weighted(curve.start, curve.control1, curve.control2, s * s * s, 3 * s * s * t, 3 * s * t * t);
      return { x: x + t * t * t * curve.end.x, y: y + t * t * t * curve.end.y };
    }
    case 'arc':
      return pointAtAngle(curve, curve.from + t * curve.sweep);
  }
}

/** θ in radians, in the arc's own parameter. */
export function pointAtAngle(arc: Arc, angle: number): Point {
  return add(arc.centre, turned(arc, angle));
}

/** axisU·cos θ + axisV·sin θ */
function turned(arc: Arc, angle: number): Point {
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return {
    x: arc.axisU.x * cosine + arc.axisV.x * sine,
    y: arc.axisU.y * cosine + arc.axisV.y * sine,
  };
}

function weighted(a: Point, b: Point, c: Point, ofA: number, ofB: number, ofC: number): Point {
  return { x: ofA * a.x + ofB * b.x + ofC * c.x, y: ofA * a.y + ofB * b.y + ofC * c.y };
}

/** d/dt, in mm per unit of t. */
export function derivativeAt(curve: Curve, t: number): Point {
  const s = 1 - t;
  switch (curve.kind) {
    case 'line':
      return subtract(curve.end, curve.start);
    case 'quadratic': {
      const [first, second] = [subtract(curve.control, curve.start), subtract(curve.end, curve.control)];
      return { x: 2 * s * first.x + 2 * t * second.x, y: 2 * s * first.y + 2 * t * second.y };
    }
    case 'cubic': {
      const first = subtract(curve.control1, curve.start);
      const second = subtract(curve.control2, curve.control1);
      const third = subtract(curve.end, curve.control2);
      return weighted(first, second, third, 3 * s * s, 6 * s * t, 3 * t * t);
    }
    case 'arc':
      return scale(turned(curve, curve.from + t * curve.sweep + Math.PI / 2), curve.sweep);
  }
}

/** d²/dt², in mm per squared unit of t. */
export function secondDerivativeAt(curve: Curve, t: number): Point {
  switch (curve.kind) {
    case 'line':
      return { x: 0, y: 0 };
    case 'quadratic':
      return scale(secondDifference(curve.start, curve.control, curve.end), 2);
    case 'cubic': {
      const first = secondDifference(curve.start, curve.control1, curve.control2);
      const second = secondDifference(curve.control1, curve.control2, curve.end);
      return scale(interpolate(first, second, t), 6);
    }
    case 'arc':
      return scale(turned(curve, curve.from + t * curve.sweep), -curve.sweep * curve.sweep);
  }
}

export function secondDifference(a: Point, b: Point, c: Point): Point {
  return { x: a.x - 2 * b.x + c.x, y: a.y - 2 * b.y + c.y };
}

/** The largest extent of the curve's control polygon (or of the arc's axes) about its start, in mm. */
export function controlSize(curve: Curve): number {
  const reach = (point: Point): number => vectorLength(subtract(point, curve.start));
  switch (curve.kind) {
    case 'line':
      return reach(curve.end);
    case 'quadratic':
      return Math.max(reach(curve.control), reach(curve.end));
    case 'cubic':
      return Math.max(reach(curve.control1), reach(curve.control2), reach(curve.end));
    case 'arc':
      return vectorLength(curve.axisU) + vectorLength(curve.axisV);
  }
}

/**
 * The unit vector of travel. Where the derivative vanishes (a control point on an end, a cusp) it is the limit from
 * within the curve: at t < 1 the direction in which the curve goes on, at t = 1 the one in which it arrives.
 * A curve that is a single point has the direction +x, as SVG gives zero-length subpaths.
 */
export function tangentAt(curve: Curve, t: number): Point {
  const tiny = 1e-12 * controlSize(curve);
  const first = derivativeAt(curve, t);
  if (vectorLength(first) > tiny) return normalise(first) ?? { x: 1, y: 0 };
  const second = secondDerivativeAt(curve, t);
  if (vectorLength(second) > tiny) return normalise(scale(second, t < 1 ? 1 : -1)) ?? { x: 1, y: 0 };
  return normalise(subtract(curve.end, curve.start)) ?? { x: 1, y: 0 };
}

/**
 * Signed curvature in 1/mm, positive where the curve bends clockwise on the screen (y down). 0 on lines and on curves
 * that are points; ±Infinity where a bend stops and turns (a cusp).
 */
export function curvatureAt(curve: Curve, t: number): number {
  const first = derivativeAt(curve, t);
  const second = secondDerivativeAt(curve, t);
  const bend = cross(first, second);
  const speed = Math.sqrt(dot(first, first));
  if (bend === 0) return 0;
  return bend / (speed * speed * speed);
}

/** Exact pieces of curves: de Casteljau's subdivision, for arcs the angle. */
import type { Cubic, Curve, Quadratic } from '../base/curve-types';
import { interpolate } from '../base/vector';
import { pointAt } from './evaluate';
import { reverseCurve } from './transform';

/** The pieces before and after t in [0, 1]; they meet in one point, equal in both to the last bit. */
export function splitCurve(curve: Curve, t: number): [Curve, Curve] {
  switch (curve.kind) {
    case 'line': {
      const middle = pointAt(curve, t);
      return [
        { kind: 'line', start: curve.start, end: middle },
        { kind: 'line', start: middle, end: curve.end },
      ];
    }
    case 'quadratic':
      return splitQuadratic(curve, t);
    case 'cubic':
      return splitCubic(curve, t);
    case 'arc': {
      const middle = pointAt(curve, t);
      const sweep = curve.sweep * t;
      return [
        { ...curve, end: middle, sweep },
        { ...curve, start: middle, from: curve.from + sweep, sweep: curve.sweep - sweep },
      ];
    }
  }
}

function splitQuadratic(curve: Quadratic, t: number): [Curve, Curve] {
  const before = interpolate(curve.start, curve.control, t);
  const after = interpolate(curve.control, curve.end, t);
  const middle = interpolate(before, after, t);
  return [
    { kind: 'quadratic', start: curve.start, control: before, end: middle },
    { kind: 'quadratic', start: middle, control: after, end: curve.end },
  ];
}

function splitCubic(curve: Cubic, t: number): [Curve, Curve] {
  const first = interpolate(curve.start, curve.control1, t);
  const second = interpolate(curve.control1, curve.control2, t);
  const third = interpolate(curve.control2, curve.end, t);
  const before = interpolate(first, second, t);
  const after = interpolate(second, third, t);
  const middle = interpolate(before, after, t);
  return [
    { kind: 'cubic', start: curve.start, control1: first, control2: before, end: middle },
    { kind: 'cubic', start: middle, control1: after, control2: third, end: curve.end },
  ];
}

/** The piece from t0 to t1, travelled backwards when t1 < t0. Parameters outside [0, 1] are drawn in. */
export function subCurve(curve: Curve, t0: number, t1: number): Curve {
  if (t1 < t0) return reverseCurve(subCurve(curve, t1, t0));
  const head = t1 < 1 ? splitCurve(curve, Math.max(0, t1))[0] : curve;
  if (!(t0 > 0)) return head;
  return splitCurve(head, t1 > 0 ? t0 / Math.min(1, t1) : 1)[1];
}

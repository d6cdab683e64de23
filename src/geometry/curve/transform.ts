/** Curves turned round and carried by affine maps; each kind stays the kind it is. */
import type { Curve, Matrix } from '../base/curve-types';
import { apply, applyToVector } from '../base/matrix';

/** The same points, travelled the other way. */
export function reverseCurve(curve: Curve): Curve {
  const { start, end } = curve;
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', start: end, end: start };
    case 'quadratic':
      return { kind: 'quadratic', start: end, control: curve.control, end: start };
    case 'cubic':
      return { kind: 'cubic', start: end, control1: curve.control2, control2: curve.control1, end: start };
    case 'arc':
      return { ...curve, start: end, end: start, from: curve.from + curve.sweep, sweep: -curve.sweep };
  }
}

export function transformCurve(curve: Curve, matrix: Matrix): Curve {
  const start = apply(matrix, curve.start);
  const end = apply(matrix, curve.end);
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', start, end };
    case 'quadratic':
      return { kind: 'quadratic', start, control: apply(matrix, curve.control), end };
    case 'cubic': {
      const [control1, control2] = [apply(matrix, curve.control1), apply(matrix, curve.control2)];
      return { kind: 'cubic', start, control1, control2, end };
    }
    case 'arc':
      return {
        ...curve,
        start,
        end,
        centre: apply(matrix, curve.centre),
        axisU: applyToVector(matrix, curve.axisU),
        axisV: applyToVector(matrix, curve.axisV),
      };
  }
}

/** Whether two chains of curves are the same. */

import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';

/** To the last digit. */
export function sameCurves(a: readonly Curve[], b: readonly Curve[]): boolean {
  return sameList(a, b, sameCurve);
}

function sameCurve(a: Curve, b: Curve): boolean {
  if (!samePlace(a.start, b.start) || !samePlace(a.end, b.end)) return false;
  switch (a.kind) {
    case 'line':
      return b.kind === 'line';
    case 'quadratic':
      return b.kind === 'quadratic' && samePlace(a.control, b.control);
    case 'cubic':
      return b.kind === 'cubic' && samePlace(a.control1, b.control1) && samePlace(a.control2, b.control2);
    case 'arc':
      return (
        b.kind === 'arc' &&
        a.from === b.from &&
        a.sweep === b.sweep &&
        samePlace(a.centre, b.centre) &&
        samePlace(a.axisU, b.axisU) &&
        samePlace(a.axisV, b.axisV)
      );
  }
}

function samePlace(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

function sameList<T>(a: readonly T[], b: readonly T[], same: (one: T, other: T) => boolean): boolean {
  return a === b || (a.length === b.length && a.every((item, i) => same(item, defined(b[i]))));
}

/** How finely new points are written, and the ends of arcs, because path data says an arc's centre only through them. */

import type { Arc, Curve } from '../../geometry/base/curve-types';
import { singularValues } from '../../geometry/base/matrix';
import { WRITTEN_STEP } from '../../geometry/base/tolerances';
import { splitCurve } from '../../geometry/curve/index';

/** Digits after the point for which one step of a coordinate in user units is at most 1 µm. */
export function decimalsFor(mmPerUnit: number): number {
  return Math.max(0, Math.ceil(-Math.log10(WRITTEN_STEP / mmPerUnit) - 1e-9));
}

/** With more digits than this an arc is better written as two. */
const MAX_EXTRA_DECIMALS = 3;

/**
 * An error δ in the ends of an arc of sweep s moves its centre by up to δ·tan(s/2) across the chord and δ·cot(s/2)
 * along it, times the ratio of the ellipse's axes. So many more digits keep the arc as exact as the points are.
 */
export function extraDecimals(arc: Arc): number {
  return Math.min(MAX_EXTRA_DECIMALS, Math.max(0, Math.ceil(Math.log10(magnification(arc)))));
}

/** The arc itself, or its halves where its ends would say too little about its centre. */
export function wellPosed(arc: Arc): Arc[] {
  if (magnification(arc) <= 10 ** MAX_EXTRA_DECIMALS) return [arc];
  return splitCurve(arc, 0.5) as [Arc, Arc];
}

/** Digits beyond the usual that the point between two curves needs. */
export function arcExtraDecimals(curves: readonly (Curve | undefined)[]): number {
  return Math.max(
    0,
    ...curves.map((curve) => (curve?.kind === 'arc' ? Math.max(...wellPosed(curve).map(extraDecimals)) : 0)),
  );
}

function magnification(arc: Arc): number {
  const half = Math.abs(arc.sweep) / 2;
  const { larger, smaller } = singularValues(arc.axisU, arc.axisV);
  const least = Math.min(Math.abs(Math.sin(half)), Math.abs(Math.cos(half)));
  return larger / smaller / Math.max(least, Number.MIN_VALUE);
}

/** Semi-axes and the turn of the first, in degrees, as an `A` command states them. */
export function radiiOf({ axisU, axisV }: Arc): { x: number; y: number; turn: number } {
  const { larger, smaller } = singularValues(axisU, axisV);
  const [a, b] = [axisU.x ** 2 + axisV.x ** 2 - axisU.y ** 2 - axisV.y ** 2, axisU.x * axisU.y + axisV.x * axisV.y];
  return { x: larger, y: smaller, turn: (Math.atan2(2 * b, a) * 90) / Math.PI };
}

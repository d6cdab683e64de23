/** How finely new points are written, and the ends of arcs, because path data says an arc's centre only through them. */

import type { Arc, Curve } from '../../geometry/base/curve-types';
import { singularValues } from '../../geometry/base/matrix';
import { WRITTEN_STEP } from '../../geometry/base/tolerances';
import { cross } from '../../geometry/base/vector';
import { splitCurve } from '../../geometry/curve/index';

/** Digits after the point for which one step of a coordinate in user units is at most 1 µm. */
export function decimalsFor(mmPerUnit: number): number {
  return Math.max(0, Math.ceil(-Math.log10(WRITTEN_STEP / mmPerUnit) - 1e-9));
}

/** With more digits than this an arc is better written as two. */
const MAX_EXTRA_DECIMALS = 3;

/** Ends are off by half a step in x and in y; so much more than that still keeps an arc within one step of its course. */
const FREE_MAGNIFICATION = Math.SQRT2;
const MIN_SINE = 1e-9;

/**
 * So many more digits in the ends of an arc keep it, all along, within one step of the digits that points have.
 * @param lined whether a line is drawn along it, whose end is square to it: the course counts then, too, which the
 * ends of a short arc say badly, by their distance
 */
export function extraDecimals(arc: Arc, lined = false): number {
  const strays = Math.max(magnification(arc), lined ? 1 / Math.max(Math.sin(Math.abs(arc.sweep) / 2), MIN_SINE) : 0);
  const digits = Math.ceil(Math.log10(strays / FREE_MAGNIFICATION) - 1e-9);
  return Math.min(MAX_EXTRA_DECIMALS, Math.max(0, digits));
}

/** The arc itself, or its halves where its ends would say too little about its centre. */
export function wellPosed(arc: Arc): Arc[] {
  if (magnification(arc) <= 10 ** MAX_EXTRA_DECIMALS) return [arc];
  return splitCurve(arc, 0.5) as [Arc, Arc];
}

/** Digits beyond the usual that the point between two curves needs. */
export function arcExtraDecimals(curves: readonly (Curve | undefined)[], lined = false): number {
  const digits = (curve: Curve | undefined): number =>
    curve?.kind === 'arc' ? Math.max(...wellPosed(curve).map((arc) => extraDecimals(arc, lined))) : 0;
  return Math.max(0, ...curves.map(digits));
}

/**
 * How far an arc of sweep s strays at most when its ends do, as a multiple: its height over the chord changes by
 * tan(s/2) for each unit that the ends come nearer to each other. One of more than half a turn is also swung round by
 * the direction of its chord, of which it reaches out by 1/sin(s/2). Both times the ratio of the ellipse's axes.
 */
function magnification(arc: Arc): number {
  const half = Math.abs(arc.sweep) / 2;
  const { larger, smaller } = singularValues(arc.axisU, arc.axisV);
  const swing = half > Math.PI / 2 ? 1 / Math.max(Math.sin(half), MIN_SINE) : 1;
  return (larger / smaller) * Math.max(Math.abs(Math.tan(half)), swing);
}

/** Semi-axes and the turn of the first, in degrees, as an `A` command states them. */
export function radiiOf({ axisU, axisV }: Arc): { x: number; y: number; turn: number } {
  const { larger, smaller } = singularValues(axisU, axisV);
  const [a, b] = [axisU.x ** 2 + axisV.x ** 2 - axisU.y ** 2 - axisV.y ** 2, axisU.x * axisU.y + axisV.x * axisV.y];
  return { x: larger, y: smaller, turn: (Math.atan2(2 * b, a) * 90) / Math.PI };
}

/** As the flag of an `A` command says it (y down): a mirroring map leaves the sweep as it is and turns the axes over. */
export function turnsClockwise({ axisU, axisV, sweep }: Arc): boolean {
  return sweep > 0 === cross(axisU, axisV) > 0;
}

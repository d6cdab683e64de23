/** Knows the arcs in which the sides of a bridge go over into its banks, in path data. */
import { defined } from '../../base/defined';
import type { Curve, Matrix, Point } from '../../geometry/base/curve-types';
import { cross, distance, dot, subtract } from '../../geometry/base/vector';
import { reverseCurve, tangentAt, transformCurve } from '../../geometry/curve/index';
import type { StepPath } from '../path/path-model';

export interface RoundedRoots {
  readonly toMm: Matrix;
  /** Of the bridge, mm. */
  readonly width: number;
  readonly middle: Point;
}

/** Half a width is the radius of an arc as it is made; so much more may come of rounding. */
const LARGEST = 0.56;
/** Cosine of the angle by which smooth curves turn where they meet, as they are written: see where banks are followed. */
const SMOOTH = Math.cos((16 * Math.PI) / 180);
/** rad */
const TURN = { least: (15 * Math.PI) / 180, most: (165 * Math.PI) / 180 };

/** Steps of a path, one after the other round its end. */
interface Steps {
  readonly first: number;
  readonly count: number;
}

/** The steps that run along a side, with the arcs before and after it that are its rounded roots. */
export function withRoots({ steps }: StepPath, { first, count }: Steps, roots: RoundedRoots): Steps {
  const curveAt = (step: number): Curve =>
    transformCurve(defined(steps[(step + steps.length) % steps.length]).curve, roots.toMm);
  if (steps.length < count + 4) return { first, count };
  const last = first + count - 1;
  const back = (step: number): Curve => reverseCurve(curveAt(step));
  const before = isRoot([back(first), back(first - 1), back(first - 2)], roots) ? 1 : 0;
  const after = isRoot([curveAt(last), curveAt(last + 1), curveAt(last + 2)], roots) ? 1 : 0;
  return { first: (first - before + steps.length) % steps.length, count: count + before + after };
}

/** An arc between a side and a bank, away from the bridge. */
function isRoot([side, arc, bank]: readonly [Curve, Curve, Curve], { width, middle }: RoundedRoots): boolean {
  if (arc.kind !== 'arc' && arc.kind !== 'cubic') return false;
  const lean = [arc.end, middle].map((point) => cross(subtract(side.end, side.start), subtract(point, side.start)));
  if (defined(lean[0]) * defined(lean[1]) >= 0) return false;
  const [into, out] = [tangentAt(arc, 0), tangentAt(arc, 1)];
  if (dot(tangentAt(side, 1), into) < SMOOTH || dot(out, tangentAt(bank, 0)) < SMOOTH) return false;
  const turn = Math.abs(Math.atan2(cross(into, out), dot(into, out)));
  if (turn < TURN.least || turn > TURN.most) return false;
  return distance(arc.start, arc.end) <= 2 * LARGEST * width * Math.sin(turn / 2) && isRound(arc);
}

/** Whether both ends lean to the chord alike. */
function isRound(arc: Curve): boolean {
  const chord: Point = subtract(arc.end, arc.start);
  const lean = (tangent: Point): number => Math.atan2(cross(tangent, chord), dot(tangent, chord));
  return Math.abs(lean(tangentAt(arc, 0)) + lean(tangentAt(arc, 1))) < Math.acos(SMOOTH);
}

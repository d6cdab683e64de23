/**
 * How well bridges hold a body: a small model of statics. The body is a stiff plate under an even load; each bridge is a
 * beam, clamped at its far bank, that bends and twists (Euler–Bernoulli and Saint-Venant, any textbook of strength of
 * materials). What reaches beyond the bridges bends by itself, as a plain strip does. Sheet mm.
 */
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { distance, dot, perpendicular, scale, subtract } from '../../../geometry/base/vector';
import { stripLift } from '../../../sheet/deflection';
import type { Bending } from '../../../sheet/lift/index';
import { type Body, distanceToHull } from './body';

/** A bridge as seen from the body that it holds. */
export interface Support {
  /** On the body. */
  readonly from: Point;
  /** On the far bank. */
  readonly to: Point;
  /** mm as drawn. */
  readonly width: number;
}

export interface Statics {
  readonly bending: Bending;
  /** mm that the cut takes from a bridge's width. */
  readonly kerf: number;
}

/** How much stiffer a flat strip is against twisting than against bending, at Poisson's ratio 0.3: 2 / (1 + ν). */
export const TWIST = 2 / 1.3;
/** Shorter beams than this share of their width are taken to be so long: the plate gives as well. */
const SHORTEST = 0.5;

/**
 * mm: how far the body's rim lifts under the load, where it lifts most.
 * @param reach mm that it reaches beyond its bridges
 */
export function liftOn(body: Body, supports: readonly Support[], reach: number, statics: Statics): number {
  if (supports.length === 0) return Infinity;
  return plateLift(body, supports, statics) + stripLift(reach, statics.bending);
}

/** mm: how far the body reaches beyond the hull of where its bridges meet it. */
export function reachBeyond({ hull }: Body, held: readonly Point[]): number {
  return hull.reduce((most, corner) => Math.max(most, distanceToHull(held, corner)), 0);
}

type Row = [number, number, number];

/** mm: the stiff plate lifts and turns until its bridges carry the load. */
function plateLift({ hull, mass, area }: Body, supports: readonly Support[], { bending, kerf }: Statics): number {
  const stiffness: [Row, Row, Row] = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (const support of supports) addBeam(stiffness, support, mass, bending.stiffness * (support.width - kerf));
  const [lift, turnX, turnY] = solve(stiffness, [bending.load * area, 0, 0]);
  return hull.reduce(
    (most, { x, y }) => Math.max(most, Math.abs(lift + turnX * (x - mass.x) + turnY * (y - mass.y))),
    0,
  );
}

/** The beam's end lifts by w and slopes by θ: U = EI (6 w² / L³ + 6 w θ / L² + 2 θ² / L) + GJ φ² / (2 L). */
function addBeam(sum: [Row, Row, Row], { from, to, width }: Support, mass: Point, bend: number): void {
  const length = distance(from, to);
  if (!(length > 0)) return;
  const long = Math.max(length, SHORTEST * width);
  const along = scale(subtract(to, from), 1 / length);
  const across = perpendicular(along);
  const away = subtract(from, mass);
  const lift: Row = [1, away.x, away.y];
  const slope: Row = [0, along.x, along.y];
  const twist: Row = [0, across.x, across.y];
  for (let i = 0; i < 3; i += 1) {
    for (let j = 0; j < 3; j += 1) {
      const [li, lj, si, sj] = [defined(lift[i]), defined(lift[j]), defined(slope[i]), defined(slope[j])];
      const row = defined(sum[i]);
      row[j] =
        defined(row[j]) +
        bend * ((12 * li * lj) / long ** 3 + (6 * (li * sj + si * lj)) / long ** 2 + (4 * si * sj) / long) +
        (TWIST * bend * defined(twist[i]) * defined(twist[j])) / long;
    }
  }
}

/** Cramer's rule; one bridge alone is stiff enough against all turns, so that there is a solution. */
function solve([a, b, c]: [Row, Row, Row], load: Row): Row {
  const columns = [0, 1, 2].map((k): Row => [defined(a[k]), defined(b[k]), defined(c[k])]) as [Row, Row, Row];
  const whole = determinant(columns[0], columns[1], columns[2]);
  return [
    determinant(load, columns[1], columns[2]) / whole,
    determinant(columns[0], load, columns[2]) / whole,
    determinant(columns[0], columns[1], load) / whole,
  ];
}

function determinant(a: Row, b: Row, c: Row): number {
  return a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
}

/** How far two bridges are from running straight on through the body, 0 to 1. */
export function bentBy(first: Support, second: Support): number {
  const [a, b] = [subtract(first.to, first.from), subtract(second.to, second.from)];
  return (1 + dot(a, b) / (Math.hypot(a.x, a.y) * Math.hypot(b.x, b.y))) / 2;
}

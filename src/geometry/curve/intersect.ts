/** Where a curve meets a straight line, and where it comes nearest to a point. */

import { defined } from '../../base/defined';
import type { Arc, Curve, Point } from '../base/curve-types';
import { cross, distance, dot, hypotenuse, samePoint, subtract } from '../base/vector';
import { derivativeAt, pointAt } from './evaluate';
import { controlPoints, parametersOfAngle } from './measure';
import { bernsteinFromPowers, linearRoot, multiplyBernstein, RELATIVE_ZERO, rootsInUnitInterval } from './polynomial';

/**
 * The t in [0, 1], ascending, at which the curve meets the endless line through a and b; touching places once.
 * None when a and b are one point, or when the curve runs along the line.
 */
export function intersectWithLine(curve: Curve, a: Point, b: Point): number[] {
  const along = subtract(b, a);
  const size = hypotenuse(along.x, along.y);
  if (!(size > 0)) return [];
  const unit = { x: along.x / size, y: along.y / size };
  const side = (point: Point): number => cross(unit, subtract(point, a));
  if (curve.kind !== 'arc') {
    const controls = controlPoints(curve);
    const farthest = Math.max(...controls.map((point) => distance(point, a)));
    return rootsInUnitInterval(controls.map(side), ROUNDING * farthest);
  }
  return intersectArcWithLine(curve, side(curve.centre), cross(unit, curve.axisU), cross(unit, curve.axisV));
}

/** Relative error of a point's distance from the line, as computed in doubles. */
const ROUNDING = 4e-16;

/** Roots of offset + alongU·cos θ + alongV·sin θ. */
function intersectArcWithLine(arc: Arc, offset: number, alongU: number, alongV: number): number[] {
  const reach = Math.hypot(alongU, alongV);
  if (!(reach > 0)) return [];
  const ratio = -offset / reach;
  if (Math.abs(ratio) > 1 + 1e-13) return [];
  const middle = Math.atan2(alongV, alongU);
  const spread = Math.acos(Math.max(-1, Math.min(1, ratio)));
  const angles = spread === 0 || spread === Math.PI ? [middle + spread] : [middle - spread, middle + spread];
  return angles.flatMap((angle) => parametersOfAngle(arc, angle)).sort((first, second) => first - second);
}

export interface NearestOnCurve {
  readonly t: number;
  readonly point: Point;
  /** mm */
  readonly distance: number;
}

/** The place of the curve nearest to the point; of several equally near, the first. */
export function nearestOn(curve: Curve, point: Point): NearestOnCurve {
  let best: NearestOnCurve = { t: 0, point: curve.start, distance: distance(curve.start, point) };
  if (best.distance === 0) return best;
  if (samePoint(curve.end, point)) return { t: 1, point: curve.end, distance: 0 };
  for (const t of [...stationaryParameters(curve, point), 1]) {
    const place = pointAt(curve, t);
    const gap = distance(place, point);
    if (gap < best.distance) best = { t, point: place, distance: gap };
  }
  return best;
}

/** Steps towards the nearest place; most points on a curve's chords are there after two. */
const STEPS = 4;

/**
 * Whether the curve passes within `reach` mm of the point, as far as a few Gauss–Newton steps from the chord tell. True
 * is certain; false only says that it takes `nearestOn` to know.
 */
export function isQuicklyNear(curve: Curve, point: Point, reach: number): boolean {
  const chord = subtract(curve.end, curve.start);
  let t = dot(subtract(point, curve.start), chord) / dot(chord, chord);
  for (let step = 0; step < STEPS && t >= 0 && t <= 1; step += 1) {
    const away = subtract(point, pointAt(curve, t));
    if (dot(away, away) < reach * reach) return true;
    const speed = derivativeAt(curve, t);
    t += dot(away, speed) / dot(speed, speed);
  }
  return false;
}

/**
 * Whether the curve certainly passes the point by more than `reach` mm: beside or beyond the box along its chord that
 * holds its control points.
 */
export function isPlainlyOff(curve: Curve, point: Point, reach: number): boolean {
  const { start, end } = curve;
  const [x, y] = [end.x - start.x, end.y - start.y];
  const size = hypotenuse(x, y);
  if (curve.kind === 'arc' || !(size > 0)) return false;
  const slack = (reach + ROUNDING * (size + distance(start, point))) * size;
  return isBeyond(curve, point, -y, x, slack) || isBeyond(curve, point, x, y, slack);
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

/** Where (curve − point) · curve′ vanishes. */
function stationaryParameters(curve: Curve, point: Point): number[] {
  if (curve.kind === 'arc') return stationaryOnArc(curve, point);
  if (curve.kind === 'line') return footOnLine(curve.start, curve.end, point);
  const offsets = controlPoints(curve).map((control) => subtract(control, point));
  const steps = offsets.slice(1).map((offset, index) => subtract(offset, defined(offsets[index])));
  const inX = multiplyBernstein(
    offsets.map((offset) => offset.x),
    steps.map((step) => step.x),
  );
  const inY = multiplyBernstein(
    offsets.map((offset) => offset.y),
    steps.map((step) => step.y),
  );
  return rootsInUnitInterval(inX.map((value, index) => value + defined(inY[index])));
}

/** The parameter of the perpendicular's foot, where that lies on the line. */
function footOnLine(start: Point, end: Point, point: Point): number[] {
  const along = subtract(end, start);
  const [before, beyond] = [dot(subtract(start, point), along), dot(subtract(end, point), along)];
  const size = Math.max(Math.abs(before), Math.abs(beyond));
  return size > 0 && Number.isFinite(size) ? linearRoot(before / size, beyond / size, RELATIVE_ZERO) : [];
}

/**
 * On pieces of at most a quarter turn, with u = tan(θ/2) about the middle, the condition
 * a·cos θ + b·sin θ + c·cos 2θ + d·sin 2θ = 0 becomes a quartic in u.
 */
function stationaryOnArc(arc: Arc, point: Point): number[] {
  const pieces = Math.max(1, Math.min(64, Math.ceil(Math.abs(arc.sweep) / (Math.PI / 2))));
  const half = arc.sweep / pieces / 2;
  const parameters: number[] = [];
  for (let piece = 0; piece < pieces; piece += 1) {
    const middle = arc.from + (2 * piece + 1) * half;
    for (const offset of stationaryAbout(arc, point, middle, half)) {
      parameters.push((piece + 0.5 + offset / half / 2) / pieces);
    }
  }
  return parameters;
}

function stationaryAbout(arc: Arc, point: Point, middle: number, half: number): number[] {
  const [cosine, sine] = [Math.cos(middle), Math.sin(middle)];
  const u = { x: arc.axisU.x * cosine + arc.axisV.x * sine, y: arc.axisU.y * cosine + arc.axisV.y * sine };
  const v = { x: arc.axisV.x * cosine - arc.axisU.x * sine, y: arc.axisV.y * cosine - arc.axisU.y * sine };
  const away = subtract(arc.centre, point);
  const [a, b, c, d] = [dot(away, v), -dot(away, u), dot(u, v), (dot(v, v) - dot(u, u)) / 2];
  const quartic = [a + c, 2 * b + 4 * d, -6 * c, 2 * b - 4 * d, c - a];
  const reach = Math.tan(half / 2);
  return rootsInUnitInterval(bernsteinFromPowers(shiftCurve(quartic, -reach, 2 * reach))).map(
    (t) => 2 * Math.atan(reach * (2 * t - 1)),
  );
}

/** Coefficients of p(origin + step·t), by repeated synthetic division. */
function shiftCurve(powers: readonly number[], origin: number, step: number): number[] {
  const result = powers.slice();
  for (let first = 0; first < result.length; first += 1) {
    for (let index = result.length - 2; index >= first; index -= 1) {
      result[index] = defined(result[index]) + origin * defined(result[index + 1]);
    }
  }
  return result.map((value, index) => value * step ** index);
}

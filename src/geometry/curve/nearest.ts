/** Where a curve comes nearest to a point. */

import { defined } from '../../base/defined';
import type { Arc, Cubic, Curve, Point, Quadratic } from '../base/curve-types';
import { distance, dot, samePoint, subtract } from '../base/vector';
import { derivativeAt, pointAt } from './evaluate';
import { bernsteinFromPowers, linearRoot, RELATIVE_ZERO, rootsInUnitInterval } from './polynomial';

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

/** Where (curve − point) · curve′ vanishes. */
function stationaryParameters(curve: Curve, point: Point): number[] {
  if (curve.kind === 'arc') return stationaryOnArc(curve, point);
  if (curve.kind === 'line') return footOnLine(curve.start, curve.end, point);
  return rootsInUnitInterval(curve.kind === 'cubic' ? slopeFromCubic(curve, point) : slopeFromQuadratic(curve, point));
}

/** (curve − point) · curve′ / 3 in Bernstein form: the product of Farouki and Rajan 1988, eq. 44, written out. */
function slopeFromCubic({ start, control1, control2, end }: Cubic, { x, y }: Point): number[] {
  const [ax, bx, cx, dx] = [start.x - x, control1.x - x, control2.x - x, end.x - x];
  const [ay, by, cy, dy] = [start.y - y, control1.y - y, control2.y - y, end.y - y];
  const [ux, vx, wx] = [bx - ax, cx - bx, dx - cx];
  const [uy, vy, wy] = [by - ay, cy - by, dy - cy];
  return [
    ax * ux + ay * uy,
    (2 * (ax * vx + ay * vy) + 3 * (bx * ux + by * uy)) / 5,
    (ax * wx + ay * wy + 6 * (bx * vx + by * vy) + 3 * (cx * ux + cy * uy)) / 10,
    (3 * (bx * wx + by * wy) + 6 * (cx * vx + cy * vy) + dx * ux + dy * uy) / 10,
    (3 * (cx * wx + cy * wy) + 2 * (dx * vx + dy * vy)) / 5,
    dx * wx + dy * wy,
  ];
}

/** (curve − point) · curve′ / 2, likewise. */
function slopeFromQuadratic({ start, control, end }: Quadratic, { x, y }: Point): number[] {
  const [ax, bx, cx] = [start.x - x, control.x - x, end.x - x];
  const [ay, by, cy] = [start.y - y, control.y - y, end.y - y];
  const [ux, vx] = [bx - ax, cx - bx];
  const [uy, vy] = [by - ay, cy - by];
  return [
    ax * ux + ay * uy,
    (ax * vx + ay * vy + 2 * (bx * ux + by * uy)) / 3,
    (2 * (bx * vx + by * vy) + cx * ux + cy * uy) / 3,
    cx * vx + cy * vy,
  ];
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

/** Two curves: the pieces of them that lie on each other, however each is written. */
import { defined } from '../../base/defined';
import type { Curve, Point } from '../base/curve-types';
import { SAME_POINT } from '../base/tolerances';
import { cross, distance, samePoint, vectorLength } from '../base/vector';
import { COINCIDENCE_TOLERANCE, type LocatedCurve } from './curve-table';
import { pointAt, tangentAt } from './evaluate';
import { controlPoints, lengthLimitOf, lengthOf } from './measure';
import { nearestOn } from './nearest';
import { isOff, isPlainlyOff } from './off';

/** A stretch of one curve that lies on a stretch of another. */
export interface SharedPiece {
  /** The curve of the first chain, and its parameters; `from` is less than `to`. */
  readonly curve: number;
  readonly from: number;
  readonly to: number;
  /** The curve of the second chain, and the parameters at the same places: descending where it runs the other way. */
  readonly otherCurve: number;
  readonly otherFrom: number;
  readonly otherTo: number;
}

/** A piece, and the chains that it is of. */
export interface LocatedPiece extends SharedPiece {
  readonly first: number;
  readonly second: number;
}

/** By how much of its radius a quarter arc errs that is written as one cubic: 2.73e-4, rounded up. */
const ARC_AS_CUBIC = 2.8e-4;

/** The sine of the angle between two curves that still run along each other in their middle. */
const ALONG = 0.18;

/** mm: what lies on the curve is no farther from it. */
export function reachOf(curve: Curve): number {
  return curve.kind === 'arc' ? Math.max(COINCIDENCE_TOLERANCE, ARC_AS_CUBIC * radiusOf(curve)) : COINCIDENCE_TOLERANCE;
}

function radiusOf({ axisU, axisV }: Extract<Curve, { kind: 'arc' }>): number {
  return Math.max(vectorLength(axisU), vectorLength(axisV));
}

/** mm: how far apart two curves may be that are meant as one. */
function toleranceOf(a: Curve, b: Curve): number {
  if ((a.kind === 'arc') === (b.kind === 'arc')) return COINCIDENCE_TOLERANCE;
  const [arc, other] = a.kind === 'arc' ? [a, b] : [b, a];
  return other.kind === 'line' ? COINCIDENCE_TOLERANCE : reachOf(arc);
}

interface Meeting {
  /** Parameters on both curves of one place. */
  readonly t: number;
  readonly u: number;
}

/** In the course of the first curve. */
export function sharedPieces(a: LocatedCurve, b: LocatedCurve): LocatedPiece[] {
  const tolerance = toleranceOf(a.curve, b.curve);
  // All of its places are one place: nothing lies between two of them.
  if (lengthLimitOf(a.curve) < tolerance) return [];
  if (!mayShare(a, b, tolerance)) return [];
  const located = { first: a.chain, second: b.chain, curve: a.index, otherCurve: b.index };
  const course = commonCourse(a.curve, b.curve);
  if (course) return [{ ...located, from: 0, to: 1, ...course }];
  const meetings = meetingsOf(a, b, tolerance);
  const pieces: LocatedPiece[] = [];
  for (let i = 1; i < meetings.length; i += 1) {
    const [from, to] = [defined(meetings[i - 1]), defined(meetings[i])];
    const piece = compare(a.curve, b.curve, from, to, tolerance);
    if (!piece) continue;
    pieces.push({ ...located, ...piece });
  }
  return pieces;
}

/**
 * Whether two places can be found that both curves pass. Neighbours in a chain have one, the end that they share; that is
 * the common case, and told without looking for the nearest places.
 */
function mayShare(a: LocatedCurve, b: LocatedCurve, tolerance: number): boolean {
  const startOfB = mayLieOn(a, b.curve.start, tolerance);
  const endOfB = mayLieOn(a, b.curve.end, tolerance);
  const startOfA = mayLieOn(b, a.curve.start, tolerance);
  const endOfA = mayLieOn(b, a.curve.end, tolerance);
  if (startOfB && endOfB) return true;
  if (startOfA && endOfA) return true;
  if (!(startOfB || endOfB) || !(startOfA || endOfA)) return false;
  return !samePoint(startOfA ? a.curve.start : a.curve.end, startOfB ? b.curve.start : b.curve.end);
}

/** Where two curves have the same control points, in one order or the other: as borders that two areas share. */
function commonCourse(a: Curve, b: Curve): Pick<SharedPiece, 'otherFrom' | 'otherTo'> | undefined {
  if (a.kind === 'arc' || b.kind === 'arc' || a.kind !== b.kind) return undefined;
  if (distance(a.start, a.end) < 2 * COINCIDENCE_TOLERANCE) return undefined;
  const isSame = (points: readonly Point[]): boolean =>
    controlPoints(a).every((point, i) => distance(point, defined(points[i])) < SAME_POINT);
  if (isSame(controlPoints(b))) return { otherFrom: 0, otherTo: 1 };
  return isSame(controlPoints(b).reverse()) ? { otherFrom: 1, otherTo: 0 } : undefined;
}

/** The ends of either that lie on the other, in the course of the first. */
function meetingsOf(a: LocatedCurve, b: LocatedCurve, tolerance: number): Meeting[] {
  const ends = [
    mayTouch(a, b.curve.start, tolerance),
    mayTouch(a, b.curve.end, tolerance),
    mayTouch(b, a.curve.start, tolerance),
    mayTouch(b, a.curve.end, tolerance),
  ];
  // Between fewer than two places nothing lies: most pairs are told by that.
  if (ends.filter(Boolean).length < 2) return [];
  const meetings: Meeting[] = [];
  ends.forEach((touches, end) => {
    if (!touches) return;
    const own = end % 2;
    const [curve, other] = end < 2 ? [a.curve, b.curve] : [b.curve, a.curve];
    const nearest = nearestOn(curve, own === 0 ? other.start : other.end);
    if (nearest.distance > tolerance) return;
    meetings.push(end < 2 ? { t: nearest.t, u: own } : { t: own, u: nearest.t });
  });
  return meetings.sort((one, other) => one.t - other.t || one.u - other.u);
}

function mayLieOn({ curve, box }: LocatedCurve, point: Point, tolerance: number): boolean {
  const outside = Math.max(box.minX - point.x, point.x - box.maxX, box.minY - point.y, point.y - box.maxY);
  return outside <= tolerance && !isPlainlyOff(curve, point, tolerance);
}

function mayTouch(located: LocatedCurve, point: Point, tolerance: number): boolean {
  return mayLieOn(located, point, tolerance) && !isOff(located.curve, point, tolerance);
}

const SAMPLES = [0.5, 0.25, 0.75, 0.125, 0.875];

function compare(
  a: Curve,
  b: Curve,
  from: Meeting,
  to: Meeting,
  tolerance: number,
): Omit<SharedPiece, 'curve' | 'otherCurve'> | undefined {
  if (from.t === to.t || isOnePlace(a, from.t, to.t, tolerance)) return undefined;
  const straight = a.kind === 'line' && b.kind === 'line';
  for (const share of straight ? SAMPLES.slice(0, 1) : SAMPLES) {
    const t = from.t + (to.t - from.t) * share;
    const nearest = nearestOn(b, pointAt(a, t));
    if (nearest.distance > tolerance) return undefined;
    if (share === 0.5 && Math.abs(cross(tangentAt(a, t), tangentAt(b, nearest.t))) > ALONG) return undefined;
  }
  const middle = nearestOn(b, pointAt(a, (from.t + to.t) / 2)).t;
  // An end that several parameters reach, such as the seam of a full turn, is the one on the middle's own side.
  const [otherFrom, otherTo] = [sideOf(b, from.u, middle, to.u), sideOf(b, to.u, middle, from.u)];
  return otherFrom === otherTo ? undefined : { from: from.t, to: to.t, otherFrom, otherTo };
}

/** Whether a stretch of a curve is too short to lie along anything. */
function isOnePlace(curve: Curve, from: number, to: number, tolerance: number): boolean {
  if (distance(pointAt(curve, from), pointAt(curve, to)) >= tolerance) return false;
  const longest = (2 * tolerance) / (to - from);
  return lengthLimitOf(curve) < longest || (distance(curve.start, curve.end) < longest && lengthOf(curve) < longest);
}

/** On a curve that ends where it starts, the parameter of `u` that lies beyond the middle as seen from `other`. */
function sideOf(curve: Curve, u: number, middle: number, other: number): number {
  const seam = (u === 0 || u === 1) && distance(curve.start, curve.end) < COINCIDENCE_TOLERANCE;
  if (!seam || other === 0 || other === 1) return u;
  return middle > other ? 1 : 0;
}

/** Parameters of the second curve, whichever way it runs. */
export const lowOf = ({ otherFrom, otherTo }: SharedPiece): number => Math.min(otherFrom, otherTo);
export const highOf = ({ otherFrom, otherTo }: SharedPiece): number => Math.max(otherFrom, otherTo);

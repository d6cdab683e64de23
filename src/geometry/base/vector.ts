/** Small vector arithmetic on points; lengths are in the unit of the points, usually mm. */
import type { Point } from './curve-types';
import { RELATIVE_ROUNDING } from './tolerances';

export function add(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}

export function subtract(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

export function scale(a: Point, factor: number): Point {
  return { x: a.x * factor, y: a.y * factor };
}

/** a at t = 0, b at t = 1, both exactly. */
export function interpolate(a: Point, b: Point, t: number): Point {
  const s = 1 - t;
  return { x: s * a.x + t * b.x, y: s * a.y + t * b.y };
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** The z component of a × b: positive when b lies clockwise of a on the screen (y down). */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

/** Twice the signed area of the triangle origin, a, b. */
export function crossFrom(origin: Point, a: Point, b: Point): number {
  return (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x);
}

export function vectorLength(a: Point): number {
  return hypotenuse(a.x, a.y);
}

export function distance(a: Point, b: Point): number {
  return hypotenuse(b.x - a.x, b.y - a.y);
}

/** √(x² + y²), several times faster than `Math.hypot`, which is left to numbers whose squares a double cannot hold. */
export function hypotenuse(x: number, y: number): number {
  const square = x * x + y * y;
  return square > 1e-200 && square < 1e200 ? Math.sqrt(square) : Math.hypot(x, y);
}

/** The unit vector along a; undefined for the zero vector and for non-finite input. */
export function normalise(a: Point): Point | undefined {
  const size = vectorLength(a);
  return size > 0 && Number.isFinite(size) ? { x: a.x / size, y: a.y / size } : undefined;
}

/** Turned by a quarter, clockwise on the screen (y down). */
export function perpendicular(a: Point): Point {
  return { x: -a.y, y: a.x };
}

export function isFinitePoint(a: Point): boolean {
  return Number.isFinite(a.x) && Number.isFinite(a.y);
}

export function samePoint(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

/** The same but for rounding, which grows with the size of the coordinates: a gap this small between points is no line. */
export function isSameButForRounding(a: Point, b: Point): boolean {
  return distance(a, b) <= RELATIVE_ROUNDING * (1 + Math.abs(a.x) + Math.abs(a.y));
}

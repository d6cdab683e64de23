/** Affine maps of the plane, in the form of CSS `matrix(a, b, c, d, e, f)`. */
import type { Matrix, Point } from './curve-types';

export const IDENTITY: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** The map that applies `inner` first and `outer` after it (the product outer · inner). */
export function multiply(outer: Matrix, inner: Matrix): Matrix {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

export function determinant(matrix: Matrix): number {
  return matrix.a * matrix.d - matrix.b * matrix.c;
}

/** Undefined when the map flattens the plane, or is not finite. */
export function invert(matrix: Matrix): Matrix | undefined {
  const { a, b, c, d, e, f } = matrix;
  const area = determinant(matrix);
  const inverse = {
    a: d / area,
    b: -b / area,
    c: -c / area,
    d: a / area,
    e: (c * f - d * e) / area,
    f: (b * e - a * f) / area,
  };
  return Object.values(inverse).every(Number.isFinite) ? inverse : undefined;
}

export function apply(matrix: Matrix, point: Point): Point {
  return {
    x: matrix.a * point.x + matrix.c * point.y + matrix.e,
    y: matrix.b * point.x + matrix.d * point.y + matrix.f,
  };
}

/** The linear part alone: for directions and axes. */
export function applyToVector(matrix: Matrix, vector: Point): Point {
  return { x: matrix.a * vector.x + matrix.c * vector.y, y: matrix.b * vector.x + matrix.d * vector.y };
}

/** The geometric mean of the two stretches: the square root of the factor on areas. */
export function meanScale(matrix: Matrix): number {
  return Math.sqrt(Math.abs(determinant(matrix)));
}

/** The largest factor by which the map stretches any length: the larger singular value. */
export function maxScale(matrix: Matrix): number {
  return singularValues({ x: matrix.a, y: matrix.b }, { x: matrix.c, y: matrix.d }).larger;
}

/** The smallest factor by which the map stretches any length. */
export function minScale(matrix: Matrix): number {
  return singularValues({ x: matrix.a, y: matrix.b }, { x: matrix.c, y: matrix.d }).smaller;
}

/**
 * Singular values of the 2 × 2 matrix with columns u, v: for an ellipse centre + u·cos θ + v·sin θ, its semi-axes.
 * Closed form: Blinn, "Consider the lowly 2 × 2 matrix", IEEE CG&A 16(2), 1996.
 */
export function singularValues(u: Point, v: Point): { readonly larger: number; readonly smaller: number } {
  const sum = Math.hypot(u.x + v.y, u.y - v.x) / 2;
  const difference = Math.hypot(u.x - v.y, u.y + v.x) / 2;
  return { larger: sum + difference, smaller: Math.abs(sum - difference) };
}

export function translation(x: number, y: number): Matrix {
  return { a: 1, b: 0, c: 0, d: 1, e: x, f: y };
}

export function scaling(x: number, y: number = x): Matrix {
  return { a: x, b: 0, c: 0, d: y, e: 0, f: 0 };
}

/** About the origin, by an angle in radians; clockwise on the screen (y down) when positive. */
export function rotation(angle: number): Matrix {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return { a: cosine, b: sine, c: -sine, d: cosine, e: 0, f: 0 };
}

export function isSameMatrix(a: Matrix, b: Matrix): boolean {
  return a === b || (a.a === b.a && a.b === b.b && a.c === b.c && a.d === b.d && a.e === b.e && a.f === b.f);
}

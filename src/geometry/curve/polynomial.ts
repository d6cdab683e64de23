/** Real roots of low-degree polynomials in Bernstein form on [0, 1]. */
import { defined } from '../../base/defined';

/** Values below this fraction of the largest coefficient count as zero. */
export const RELATIVE_ZERO = 1e-13;

/**
 * Roots in [0, 1], ascending, of the polynomial with the given Bernstein coefficients. The roots of the derivative cut
 * the interval into monotone stretches, each holding at most one root, which guarded Newton steps close in on; a
 * touching (even) root is found at the derivative's root. The zero polynomial has none. Values up to `noise`, the
 * rounding in the coefficients, count as zero.
 */
export function rootsInUnitInterval(coefficients: readonly number[], noise = 0): number[] {
  const scale = coefficients.reduce((largest, value) => Math.max(largest, Math.abs(value)), 0);
  if (!(scale > noise) || !Number.isFinite(scale)) return [];
  return bernsteinRoots(
    coefficients.map((value) => value / scale),
    Math.max(RELATIVE_ZERO, noise / scale),
  );
}

function bernsteinRoots(coefficients: readonly number[], zero: number): number[] {
  const degree = coefficients.length - 1;
  if (degree < 1) return [];
  if (coefficients.every((value) => value > zero) || coefficients.every((value) => value < -zero)) return [];
  if (degree === 1) return linearRoot(defined(coefficients[0]), defined(coefficients[1]), zero);
  const slopes = coefficients.slice(1).map((value, index) => degree * (value - defined(coefficients[index])));
  const knots = [...rootsInUnitInterval(slopes, RELATIVE_ZERO), 1];
  return rootsBetween(coefficients, knots, zero);
}

/** Of a polynomial of degree 1, whose coefficients' larger one is ±1. */
export function linearRoot(start: number, end: number, zero: number): number[] {
  if (Math.abs(start) <= zero) return [0];
  if (Math.abs(end) <= zero) return [1];
  return start > 0 === end > 0 ? [] : [start / (start - end)];
}

function rootsBetween(coefficients: readonly number[], knots: readonly number[], zero: number): number[] {
  const roots: number[] = [];
  const push = (t: number): void => {
    const last = roots.at(-1);
    if (last === undefined || t - last > 1e-13) roots.push(t);
  };
  let left = 0;
  let leftValue = defined(coefficients[0]);
  if (Math.abs(leftValue) <= zero) push(0);
  for (const right of knots) {
    const rightValue = evaluateBernstein(coefficients, right);
    const clear = Math.abs(leftValue) > zero && Math.abs(rightValue) > zero;
    if (clear && leftValue > 0 !== rightValue > 0) push(closeIn(coefficients, left, right, rightValue > 0));
    if (Math.abs(rightValue) <= zero) push(right);
    left = right;
    leftValue = rightValue;
  }
  return roots;
}

/** Newton steps kept inside a shrinking bracket, bisection where they leave it (Numerical Recipes, "rtsafe"). */
function closeIn(coefficients: readonly number[], from: number, to: number, rising: boolean): number {
  let [low, high] = [from, to];
  let t = (low + high) / 2;
  const work = coefficients.slice();
  const degree = work.length - 1;
  for (let step = 0; step < 120; step += 1) {
    reduceTo(1, coefficients, t, work);
    const start = defined(work[0]);
    const end = defined(work[1]);
    const value = (1 - t) * start + t * end;
    const slope = degree * (end - start);
    if (value === 0) return t;
    if (value < 0 === rising) low = t;
    else high = t;
    const newton = t - value / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (next === t || next <= low || next >= high) return next;
    if (Math.abs(next - t) < 1e-16) return next;
    t = step % 8 === 7 ? (low + high) / 2 : next;
  }
  return t;
}

/** De Casteljau: stable on [0, 1]. */
export function evaluateBernstein(coefficients: readonly number[], t: number): number {
  const work = coefficients.slice();
  reduceTo(0, coefficients, t, work);
  return defined(work[0]);
}

/** De Casteljau's scheme, until a polynomial of the degree is left, in the same form: written to `work`. */
function reduceTo(degree: number, coefficients: readonly number[], t: number, work: number[]): void {
  for (let index = 0; index < coefficients.length; index += 1) work[index] = defined(coefficients[index]);
  for (let end = coefficients.length - 1; end > degree; end -= 1) {
    for (let index = 0; index < end; index += 1) {
      work[index] = (1 - t) * defined(work[index]) + t * defined(work[index + 1]);
    }
  }
}

/** The product of two polynomials in Bernstein form (Farouki and Rajan 1988, eq. 44). */
export function multiplyBernstein(a: readonly number[], b: readonly number[]): number[] {
  const [m, n] = [a.length - 1, b.length - 1];
  const product = new Array<number>(m + n + 1).fill(0);
  a.forEach((left, i) => {
    b.forEach((right, j) => {
      const weight = (binomial(m, i) * binomial(n, j)) / binomial(m + n, i + j);
      product[i + j] = defined(product[i + j]) + weight * left * right;
    });
  });
  return product;
}

/** Bernstein coefficients on [0, 1] of c0 + c1·t + c2·t² + … */
export function bernsteinFromPowers(powers: readonly number[]): number[] {
  const degree = powers.length - 1;
  return powers.map((_, j) => {
    let sum = 0;
    for (let i = 0; i <= j; i += 1) sum += (binomial(j, i) / binomial(degree, i)) * defined(powers[i]);
    return sum;
  });
}

function binomial(n: number, k: number): number {
  let result = 1;
  for (let index = 1; index <= k; index += 1) result = (result * (n - k + index)) / index;
  return result;
}

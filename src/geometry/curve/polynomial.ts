/** Real roots of low-degree polynomials in Bernstein form on [0, 1]. */
import { defined } from '../../base/defined';

/** Values below this fraction of the largest coefficient count as zero. */
export const RELATIVE_ZERO = 1e-13;

/**
 * Roots in [0, 1], ascending, of the polynomial with the given Bernstein coefficients. The signs of these tell where
 * there is none, or one; else the roots of the derivative cut the interval into monotone stretches, each holding at most
 * one. Guarded Newton steps close in on it; a touching (even) root is found at the derivative's root. The zero polynomial
 * has none. Values up to `noise`, the rounding in the coefficients, count as zero.
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
  const [first, last] = [defined(coefficients[0]), defined(coefficients[degree])];
  if (degree === 1) return linearRoot(first, last, zero);
  const changes = signChanges(coefficients, zero);
  if (changes === 0) return [];
  if (changes === 1) return [closeIn(coefficients, 0, 1, first, last)];
  const slopes = coefficients.slice(1).map((value, index) => degree * (value - defined(coefficients[index])));
  const knots = [...rootsInUnitInterval(slopes, RELATIVE_ZERO), 1];
  return rootsBetween(coefficients, knots, zero);
}

/**
 * How often the coefficients change their sign; there are no more roots than that, and as many but for an even number
 * (Descartes' rule, which holds for the Bernstein form on its interval). Undefined where one of them counts as zero.
 */
function signChanges(coefficients: readonly number[], zero: number): number | undefined {
  let changes = 0;
  let before = defined(coefficients[0]);
  for (const value of coefficients) {
    if (Math.abs(value) <= zero) return undefined;
    if (value > 0 !== before > 0) changes += 1;
    before = value;
  }
  return changes;
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
    if (clear && leftValue > 0 !== rightValue > 0) push(closeIn(coefficients, left, right, leftValue, rightValue));
    if (Math.abs(rightValue) <= zero) push(right);
    left = right;
    leftValue = rightValue;
  }
  return roots;
}

/**
 * Newton steps kept inside a shrinking bracket, bisection where they leave it (Numerical Recipes, "rtsafe"), from where
 * the chord has its root.
 */
function closeIn(
  coefficients: readonly number[],
  from: number,
  to: number,
  fromValue: number,
  toValue: number,
): number {
  const rising = toValue > 0;
  let [low, high] = [from, to];
  let t = from + ((to - from) * fromValue) / (fromValue - toValue);
  if (!(t > low && t < high)) t = (low + high) / 2;
  const values = withBinomials(coefficients);
  const degree = coefficients.length - 1;
  const slopes = withBinomials(coefficients.slice(1).map((value, i) => degree * (value - defined(coefficients[i]))));
  for (let step = 0; step < 120; step += 1) {
    const value = sumOf(values, t);
    if (value === 0) return t;
    if (value < 0 === rising) low = t;
    else high = t;
    const newton = t - (Math.max(t, 1 - t) * value) / sumOf(slopes, t);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (next === t || next <= low || next >= high) return next;
    if (Math.abs(next - t) < 1e-16) return next;
    t = step % 8 === 7 ? (low + high) / 2 : next;
  }
  return t;
}

/** Each Bernstein coefficient times its binomial. */
function withBinomials(coefficients: readonly number[]): number[] {
  const degree = coefficients.length - 1;
  let binomial = 1;
  return coefficients.map((value, i) => {
    const product = binomial * value;
    binomial = (binomial * (degree - i)) / (i + 1);
    return product;
  });
}

/**
 * The polynomial's value at t over the degree's power of the larger of t and 1 − t, by Horner's scheme in their ratio,
 * which is as stable as de Casteljau's (Volk and Schumaker 1986) and takes as many steps as there are coefficients.
 */
function sumOf(products: readonly number[], t: number): number {
  const last = products.length - 1;
  let sum = 0;
  if (t <= 0.5) {
    const ratio = t / (1 - t);
    for (let i = last; i >= 0; i -= 1) sum = sum * ratio + defined(products[i]);
  } else {
    const ratio = (1 - t) / t;
    for (let i = 0; i <= last; i += 1) sum = sum * ratio + defined(products[i]);
  }
  return sum;
}

/** De Casteljau: stable on [0, 1]. */
export function evaluateBernstein(coefficients: readonly number[], t: number): number {
  const work = coefficients.slice();
  for (let end = work.length - 1; end > 0; end -= 1) {
    for (let i = 0; i < end; i += 1) work[i] = (1 - t) * defined(work[i]) + t * defined(work[i + 1]);
  }
  return defined(work[0]);
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

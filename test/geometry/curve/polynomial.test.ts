import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bernsteinFromPowers,
  evaluateBernstein,
  multiplyBernstein,
  rootsInUnitInterval,
} from '../../../src/geometry/curve/polynomial';

/** Bernstein form of the product of (t − root). */
function withRoots(roots: readonly number[]): number[] {
  return roots.reduce((product, root) => multiplyBernstein(product, [-root, 1 - root]), [1]);
}

describe('rootsInUnitInterval', () => {
  it('finds well-separated roots of degrees up to 5', () => {
    const roots = fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(roots, fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (steps, factor) => {
        const wanted = steps.map((step) => step / 40).sort((a, b) => a - b);
        const found = rootsInUnitInterval(withRoots(wanted).map((value) => value * factor));
        expect(found.length).toBe(wanted.length);
        found.forEach((root, index) => expect(root).toBeCloseTo(wanted[index] ?? Number.NaN, 8));
      }),
    );
  });

  it('finds touching roots once', () => {
    const found = rootsInUnitInterval(withRoots([0.3, 0.3]));
    expect(found.length).toBe(1);
    expect(found[0]).toBeCloseTo(0.3, 7);
    expect(rootsInUnitInterval(withRoots([0.25, 0.75, 0.75])).length).toBe(2);
  });

  it('counts roots at the ends', () => {
    expect(rootsInUnitInterval([0, 1, 1])).toEqual([0]);
    expect(rootsInUnitInterval([1, 1, 0])).toEqual([1]);
    expect(rootsInUnitInterval([-2, 2])).toEqual([0.5]);
  });

  it('has none for constants, zero and what is not finite', () => {
    expect(rootsInUnitInterval([0, 0, 0])).toEqual([]);
    expect(rootsInUnitInterval([3, 3, 3])).toEqual([]);
    expect(rootsInUnitInterval([Number.NaN, 1])).toEqual([]);
    expect(rootsInUnitInterval([1e-9, -1e-9], 1e-8)).toEqual([]);
  });

  it('finds every change of sign that sampling sees, and only zeros', () => {
    const coefficients = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(coefficients, (values) => {
        const scale = Math.max(...values.map(Math.abs));
        fc.pre(scale > 1e-3);
        const roots = rootsInUnitInterval(values);
        for (const root of roots) expect(Math.abs(evaluateBernstein(values, root))).toBeLessThan(1e-12 * scale);
        for (let step = 0; step < 200; step += 1) {
          const [left, right] = [step / 200, (step + 1) / 200];
          if (evaluateBernstein(values, left) * evaluateBernstein(values, right) >= 0) continue;
          expect(roots.some((root) => root >= left - 1e-9 && root <= right + 1e-9)).toBe(true);
        }
      }),
    );
  });
});

describe('bernsteinFromPowers', () => {
  it('has the values of the power form', () => {
    const powers = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(powers, fc.double({ min: 0, max: 1, noNaN: true }), (values, t) => {
        const wanted = values.reduce((sum, value, index) => sum + value * t ** index, 0);
        expect(evaluateBernstein(bernsteinFromPowers(values), t)).toBeCloseTo(wanted, 10);
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apply,
  determinant,
  IDENTITY,
  invert,
  maxScale,
  meanScale,
  minScale,
  multiply,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/base/matrix';
import { distance } from '../../../src/geometry/base/vector';
import { affine, point, similarity } from '../arbitraries';

describe('multiply', () => {
  it('applies the inner map first', () => {
    fc.assert(
      fc.property(affine, affine, point, (outer, inner, place) => {
        const once = apply(multiply(outer, inner), place);
        expect(distance(once, apply(outer, apply(inner, place)))).toBeLessThan(1e-9);
      }),
    );
  });

  // CSS Transforms Level 1, section on transform lists: the printed example, numbers computed from its definition.
  it('gives the matrix of translate(-10, -20) scale(2) rotate(45) translate(5, 10)', () => {
    const steps = [translation(-10, -20), scaling(2), rotation(Math.PI / 4), translation(5, 10)];
    const total = steps.reduce(multiply, IDENTITY);
    expect(total.a).toBeCloseTo(1.4142136, 7);
    expect(total.b).toBeCloseTo(1.4142136, 7);
    expect(total.c).toBeCloseTo(-1.4142136, 7);
    expect(total.d).toBeCloseTo(1.4142136, 7);
    expect(total.e).toBeCloseTo(-17.0710678, 7);
    expect(total.f).toBeCloseTo(1.2132034, 7);
  });
});

describe('invert', () => {
  it('undoes the map', () => {
    fc.assert(
      fc.property(affine, point, (matrix, place) => {
        fc.pre(Math.abs(determinant(matrix)) > 1e-3);
        const inverse = invert(matrix);
        expect(inverse && distance(apply(inverse, apply(matrix, place)), place)).toBeLessThan(1e-7);
      }),
    );
  });

  it('refuses maps that flatten the plane', () => {
    expect(invert(scaling(0, 2))).toBeUndefined();
    expect(invert({ ...IDENTITY, a: Number.NaN })).toBeUndefined();
    expect(invert({ ...IDENTITY, e: Infinity })).toBeUndefined();
  });
});

describe('scales', () => {
  it('agree for even scales', () => {
    fc.assert(
      fc.property(similarity, ({ matrix, factor }) => {
        for (const scale of [meanScale(matrix), maxScale(matrix), minScale(matrix)])
          expect(scale).toBeCloseTo(factor, 9);
      }),
    );
  });

  it('are the extremes of the stretch over all directions', () => {
    fc.assert(
      fc.property(affine, (matrix) => {
        const linear = { ...matrix, e: 0, f: 0 };
        const stretches = Array.from({ length: 720 }, (_, step) => {
          const angle = (step * Math.PI) / 720;
          const { x, y } = apply(linear, { x: Math.cos(angle), y: Math.sin(angle) });
          return Math.hypot(x, y);
        });
        const [largest, smallest] = [Math.max(...stretches), Math.min(...stretches)];
        expect(maxScale(matrix)).toBeGreaterThan(largest - 1e-9);
        expect(maxScale(matrix) - largest).toBeLessThan(1e-4);
        expect(minScale(matrix)).toBeLessThan(smallest + 1e-9);
        expect(smallest - minScale(matrix)).toBeLessThan(0.02);
      }),
    );
  });
});

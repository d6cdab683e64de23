import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply, determinant } from '../../../src/geometry/base/matrix';
import { distance } from '../../../src/geometry/base/vector';
import { pointAt } from '../../../src/geometry/curve/evaluate';
import { signedAreaOf } from '../../../src/geometry/curve/measure';
import { reverseCurve, transformCurve } from '../../../src/geometry/curve/transform';
import { affine, curve, parameter } from '../arbitraries';

describe('reverseCurve', () => {
  it('has the same points the other way round, and the opposite area', () => {
    fc.assert(
      fc.property(curve, parameter, (shape, t) => {
        const back = reverseCurve(shape);
        expect(distance(pointAt(back, t), pointAt(shape, 1 - t))).toBeLessThan(1e-9);
        expect(signedAreaOf(back)).toBeCloseTo(-signedAreaOf(shape), 6);
        expect(back.start).toEqual(shape.end);
      }),
    );
  });
});

describe('transformCurve', () => {
  it('carries every point, arcs staying arcs', () => {
    fc.assert(
      fc.property(curve, affine, parameter, (shape, matrix, t) => {
        const image = transformCurve(shape, matrix);
        expect(image.kind).toBe(shape.kind);
        expect(distance(pointAt(image, t), apply(matrix, pointAt(shape, t)))).toBeLessThan(1e-9);
      }),
    );
  });

  it('multiplies the area of a closed chain by the determinant', () => {
    fc.assert(
      fc.property(curve, affine, (shape, matrix) => {
        const chord = { kind: 'line' as const, start: shape.end, end: shape.start };
        const before = signedAreaOf(shape) + signedAreaOf(chord);
        const after = signedAreaOf(transformCurve(shape, matrix)) + signedAreaOf(transformCurve(chord, matrix));
        expect(Math.abs(after - determinant(matrix) * before)).toBeLessThan(1e-5);
      }),
    );
  });
});

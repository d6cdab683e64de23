import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, scale } from '../../../src/geometry/base/vector';
import { controlSize, derivativeAt, pointAt } from '../../../src/geometry/curve/evaluate';
import { signedAreaOf } from '../../../src/geometry/curve/measure';
import { splitCurve, subCurve } from '../../../src/geometry/curve/subdivide';
import { curve, parameter } from '../arbitraries';

/** Of the curve's own size and of how far it lies from the origin. */
const RELATIVE = 1e-9;

describe('splitCurve', () => {
  it('keeps kind, ends and every point', () => {
    fc.assert(
      fc.property(curve, parameter, parameter, (shape, t, u) => {
        const [head, tail] = splitCurve(shape, t);
        expect([head.kind, tail.kind]).toEqual([shape.kind, shape.kind]);
        expect(head.start).toEqual(shape.start);
        expect(tail.end).toEqual(shape.end);
        expect(head.end).toEqual(tail.start);
        const slack = RELATIVE * (300 + controlSize(shape));
        expect(distance(pointAt(head, u), pointAt(shape, t * u))).toBeLessThan(slack);
        expect(distance(pointAt(tail, u), pointAt(shape, t + (1 - t) * u))).toBeLessThan(slack);
      }),
    );
  });

  it('keeps directions and speeds', () => {
    fc.assert(
      fc.property(curve, parameter, parameter, (shape, t, u) => {
        const [head, tail] = splitCurve(shape, t);
        const slack = RELATIVE * (1 + controlSize(shape)) * 10;
        const before = scale(derivativeAt(shape, t * u), t);
        const after = scale(derivativeAt(shape, t + (1 - t) * u), 1 - t);
        expect(distance(derivativeAt(head, u), before)).toBeLessThan(slack);
        expect(distance(derivativeAt(tail, u), after)).toBeLessThan(slack);
      }),
    );
  });

  it('keeps the area', () => {
    fc.assert(
      fc.property(curve, parameter, (shape, t) => {
        const [head, tail] = splitCurve(shape, t);
        const slack = RELATIVE * (300 + controlSize(shape)) ** 2;
        expect(Math.abs(signedAreaOf(head) + signedAreaOf(tail) - signedAreaOf(shape))).toBeLessThan(slack);
      }),
    );
  });
});

describe('subCurve', () => {
  it('runs from one place to the other, backwards too', () => {
    fc.assert(
      fc.property(curve, parameter, parameter, parameter, (shape, t0, t1, u) => {
        const piece = subCurve(shape, t0, t1);
        const slack = RELATIVE * (300 + controlSize(shape));
        expect(distance(pointAt(piece, u), pointAt(shape, t0 + (t1 - t0) * u))).toBeLessThan(slack);
        expect(piece.kind).toBe(shape.kind);
      }),
    );
  });

  it('is the curve itself from 0 to 1', () => {
    fc.assert(
      fc.property(curve, (shape) => {
        expect(subCurve(shape, 0, 1)).toEqual(shape);
        expect(subCurve(shape, -1, 2)).toEqual(shape);
      }),
    );
  });
});

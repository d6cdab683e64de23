import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ArcLength } from '../../../src/drawing/stroke/arc-length';
import type { Curve } from '../../../src/geometry/base/curve-types';
import { lengthOf, subCurve } from '../../../src/geometry/curve/index';

const number = fc.integer({ min: -1000, max: 1000 }).map((value) => value / 10);
const point = fc.record({ x: number, y: number });
const cubic = fc.record({
  kind: fc.constant('cubic' as const),
  start: point,
  control1: point,
  control2: point,
  end: point,
});
const quadratic = fc.record({ kind: fc.constant('quadratic' as const), start: point, control: point, end: point });
const line = fc.record({ kind: fc.constant('line' as const), start: point, end: point });
const ellipse = fc
  .tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 50 }), fc.integer({ min: -6, max: 6 }))
  .map(
    ([width, height, sweep]): Curve => ({
      kind: 'arc',
      start: { x: width, y: 0 },
      end: { x: width * Math.cos(sweep), y: height * Math.sin(sweep) },
      centre: { x: 0, y: 0 },
      axisU: { x: width, y: 0 },
      axisV: { x: 0, y: height },
      from: 0,
      sweep,
    }),
  );

const TOLERANCE = 2.5e-4;

describe('lengths along a curve', () => {
  it("the whole is the curve's length", () => {
    fc.assert(
      fc.property(fc.oneof(cubic, quadratic, line, ellipse), (curve) => {
        expect(Math.abs(new ArcLength(curve, TOLERANCE).length - lengthOf(curve))).toBeLessThan(1e-6);
      }),
      { numRuns: 200 },
    );
  });

  it('the way from the start to the parameter of a length is that long', () => {
    fc.assert(
      fc.property(fc.oneof(cubic, quadratic, line, ellipse), fc.integer({ min: 1, max: 99 }), (curve, percent) => {
        const measure = new ArcLength(curve, TOLERANCE);
        const wanted = (measure.length * percent) / 100;
        const reached = lengthOf(subCurve(curve, 0, measure.parameterAt(wanted)));
        expect(Math.abs(reached - wanted)).toBeLessThan(1.5 * TOLERANCE);
      }),
      { numRuns: 400 },
    );
  });

  it('a cusp is passed', () => {
    const cusp: Curve = {
      kind: 'cubic',
      start: { x: 0, y: 0 },
      control1: { x: 10, y: 10 },
      control2: { x: 0, y: 10 },
      end: { x: 10, y: 0 },
    };
    const measure = new ArcLength(cusp, TOLERANCE);
    // Hardly any length lies about the cusp, so that the parameter there is known less well than the place.
    expect(measure.parameterAt(measure.length / 2)).toBeCloseTo(0.5, 3);
    expect(measure.parameterAt(-1)).toBe(0);
    expect(measure.parameterAt(measure.length + 1)).toBe(1);
  });

  it('a curve that is one point has no length', () => {
    const at = { x: 3, y: 4 };
    expect(new ArcLength({ kind: 'cubic', start: at, control1: at, control2: at, end: at }, TOLERANCE).length).toBe(0);
  });
});

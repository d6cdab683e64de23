import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cubic } from '../../../src/geometry/base/curve-types';
import { add, distance, scale, vectorLength } from '../../../src/geometry/base/vector';
import {
  controlSize,
  curvatureAt,
  derivativeAt,
  pointAt,
  secondDerivativeAt,
  tangentAt,
} from '../../../src/geometry/curve/evaluate';
import { arcFrom, curve, parameter } from '../arbitraries';

describe('pointAt', () => {
  it('gives the ends exactly', () => {
    fc.assert(
      fc.property(curve, (shape) => {
        expect(pointAt(shape, 0)).toEqual(shape.start);
        expect(pointAt(shape, 1)).toEqual(shape.end);
      }),
    );
  });

  it('follows known curves', () => {
    const bend: Cubic = {
      kind: 'cubic',
      start: { x: 0, y: 0 },
      control1: { x: 0, y: 8 },
      control2: { x: 8, y: 8 },
      end: { x: 8, y: 0 },
    };
    expect(pointAt(bend, 0.5)).toEqual({ x: 4, y: 6 });
    const quarter = arcFrom({ x: 1, y: 2 }, { x: 10, y: 0 }, { x: 0, y: 5 }, 0, Math.PI / 2);
    const middle = pointAt(quarter, 0.5);
    expect(middle.x).toBeCloseTo(1 + 10 * Math.SQRT1_2, 12);
    expect(middle.y).toBeCloseTo(2 + 5 * Math.SQRT1_2, 12);
  });
});

describe('derivatives', () => {
  it('agree with difference quotients', () => {
    fc.assert(
      fc.property(curve, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (shape, t) => {
        const step = 1e-4;
        const size = 1 + controlSize(shape);
        const [before, after] = [pointAt(shape, t - step), pointAt(shape, t + step)];
        const quotient = scale(add(after, scale(before, -1)), 1 / (2 * step));
        expect(distance(quotient, derivativeAt(shape, t))).toBeLessThan(1e-4 * size);
        const [slower, faster] = [derivativeAt(shape, t - step), derivativeAt(shape, t + step)];
        const bend = scale(add(faster, scale(slower, -1)), 1 / (2 * step));
        expect(distance(bend, secondDerivativeAt(shape, t))).toBeLessThan(1e-3 * size);
      }),
    );
  });
});

describe('tangentAt', () => {
  it('is a unit vector for any curve at any place', () => {
    fc.assert(
      fc.property(curve, parameter, (shape, t) => {
        expect(vectorLength(tangentAt(shape, t))).toBeCloseTo(1, 12);
      }),
    );
  });

  it('looks past control points that lie on an end', () => {
    const start = { x: 0, y: 0 };
    const end = { x: 10, y: 10 };
    const lateStart: Cubic = { kind: 'cubic', start, control1: start, control2: { x: 10, y: 0 }, end };
    expect(tangentAt(lateStart, 0)).toEqual({ x: 1, y: 0 });
    const earlyEnd: Cubic = { kind: 'cubic', start, control1: { x: 10, y: 0 }, control2: end, end };
    expect(distance(tangentAt(earlyEnd, 1), { x: 0, y: 1 })).toBe(0);
    const straight: Cubic = { kind: 'cubic', start, control1: start, control2: start, end: { x: 0, y: 3 } };
    expect(tangentAt(straight, 0)).toEqual({ x: 0, y: 1 });
    const late: Cubic = { ...straight, control1: straight.end, control2: straight.end };
    expect(distance(tangentAt(late, 1), { x: 0, y: 1 })).toBe(0);
  });

  it('has a direction where a curve is a point', () => {
    const place = { x: 3, y: 4 };
    expect(tangentAt({ kind: 'line', start: place, end: place }, 0.5)).toEqual({ x: 1, y: 0 });
  });

  it('turns at a cusp', () => {
    const cusp: Cubic = {
      kind: 'cubic',
      start: { x: 0, y: 0 },
      control1: { x: 10, y: 10 },
      control2: { x: 0, y: 10 },
      end: { x: 10, y: 0 },
    };
    expect(vectorLength(derivativeAt(cusp, 0.5))).toBeCloseTo(0, 12);
    expect(tangentAt(cusp, 0.5).y).toBeCloseTo(-1, 9);
  });
});

describe('curvatureAt', () => {
  it('is one over the radius on circles, signed by the turn', () => {
    const clockwise = arcFrom({ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 0, y: 4 }, 0.3, 2);
    expect(curvatureAt(clockwise, 0.7)).toBeCloseTo(0.25, 12);
    expect(curvatureAt({ ...clockwise, sweep: -2 }, 0.7)).toBeCloseTo(-0.25, 12);
  });

  // ab/(a² sin² + b² cos²)^1.5: see facts on medial axes; here at the ends of the long and the short axis.
  it('is a/b² and b/a² at the vertices of an ellipse', () => {
    const ellipse = arcFrom({ x: 5, y: 5 }, { x: 250, y: 0 }, { x: 0, y: 100 }, 0, Math.PI / 2);
    expect(curvatureAt(ellipse, 0)).toBeCloseTo(250 / 100 ** 2, 12);
    expect(curvatureAt(ellipse, 1)).toBeCloseTo(100 / 250 ** 2, 12);
  });

  it('is 0 on lines and never NaN', () => {
    fc.assert(
      fc.property(curve, parameter, (shape, t) => {
        const bend = curvatureAt(shape, t);
        expect(bend).not.toBeNaN();
        if (shape.kind === 'line') expect(bend).toBe(0);
      }),
    );
  });
});

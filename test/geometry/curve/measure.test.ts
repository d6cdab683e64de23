import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Curve } from '../../../src/geometry/base/curve-types';
import { cross, distance } from '../../../src/geometry/base/vector';
import { controlSize, pointAt } from '../../../src/geometry/curve/evaluate';
import {
  boundsOf,
  lengthLimitOf,
  lengthOf,
  parametersOfAngle,
  roughBoundsOf,
  signedAreaOf,
} from '../../../src/geometry/curve/measure';
import { splitCurve } from '../../../src/geometry/curve/subdivide';
import { transformCurve } from '../../../src/geometry/curve/transform';
import { arcFrom, curve, parameter, similarity } from '../arbitraries';

function samples(shape: Curve, count: number): { x: number; y: number }[] {
  return Array.from({ length: count + 1 }, (_, index) => pointAt(shape, index / count));
}

describe('boundsOf', () => {
  it('holds every point and is touched on all sides', () => {
    fc.assert(
      fc.property(curve, (shape) => {
        const box = boundsOf(shape);
        const points = samples(shape, 600);
        const slack = 1e-9 * (300 + controlSize(shape));
        const [xs, ys] = [points.map((place) => place.x), points.map((place) => place.y)];
        expect(Math.min(...xs)).toBeGreaterThan(box.minX - slack);
        expect(Math.max(...xs)).toBeLessThan(box.maxX + slack);
        expect(Math.min(...ys)).toBeGreaterThan(box.minY - slack);
        expect(Math.max(...ys)).toBeLessThan(box.maxY + slack);
        const step = 1e-4 * (1 + controlSize(shape));
        expect(Math.min(...xs) - box.minX).toBeLessThan(step);
        expect(box.maxX - Math.max(...xs)).toBeLessThan(step);
        expect(Math.min(...ys) - box.minY).toBeLessThan(step);
        expect(box.maxY - Math.max(...ys)).toBeLessThan(step);
      }),
    );
  });

  it('is exact for a turned ellipse', () => {
    const whole = arcFrom({ x: 1, y: 2 }, { x: 3, y: 4 }, { x: -8, y: 6 }, 1, 2 * Math.PI);
    const box = boundsOf(whole);
    expect(box.maxX - box.minX).toBeCloseTo(2 * Math.hypot(3, 8), 12);
    expect(box.maxY - box.minY).toBeCloseTo(2 * Math.hypot(4, 6), 12);
  });
});

describe('roughBoundsOf', () => {
  it('holds the least box', () => {
    fc.assert(
      fc.property(curve, (shape) => {
        const [rough, least] = [roughBoundsOf(shape), boundsOf(shape)];
        const slack = 1e-9 * (300 + controlSize(shape));
        expect(rough.minX).toBeLessThanOrEqual(least.minX + slack);
        expect(rough.minY).toBeLessThanOrEqual(least.minY + slack);
        expect(rough.maxX).toBeGreaterThanOrEqual(least.maxX - slack);
        expect(rough.maxY).toBeGreaterThanOrEqual(least.maxY - slack);
      }),
    );
  });
});

describe('lengthLimitOf', () => {
  it('is exceeded by no curve', () => {
    fc.assert(
      fc.property(curve, (shape) => {
        expect(lengthLimitOf(shape)).toBeGreaterThan((1 - 1e-9) * lengthOf(shape) - 1e-9);
      }),
      { numRuns: 400 },
    );
  });
});

describe('lengthOf', () => {
  it('is the sum over the pieces', () => {
    fc.assert(
      fc.property(curve, parameter, (shape, t) => {
        const whole = lengthOf(shape);
        const [head, tail] = splitCurve(shape, t);
        expect(Math.abs(lengthOf(head) + lengthOf(tail) - whole)).toBeLessThan(1e-9 * (whole + 1e-3));
      }),
    );
  });

  it('is approached by inscribed chains, which are never longer', () => {
    fc.assert(
      fc.property(curve, (shape) => {
        const points = samples(shape, 2000);
        const chain = points.slice(1).reduce((sum, place, index) => sum + distance(points[index] ?? place, place), 0);
        const whole = lengthOf(shape);
        expect(chain).toBeLessThan(whole * (1 + 1e-9) + 1e-9);
        expect(whole - chain).toBeLessThan(2e-3 * (1e-3 + controlSize(shape)));
      }),
    );
  });

  it('scales with the plane', () => {
    fc.assert(
      fc.property(curve, similarity, (shape, { matrix, factor }) => {
        const before = lengthOf(shape) * factor;
        expect(Math.abs(lengthOf(transformCurve(shape, matrix)) - before)).toBeLessThan(1e-8 * (before + 1e-3));
      }),
    );
  });

  it('counts both ways of a curve that doubles back', () => {
    const start = { x: 0, y: 0 };
    const shape: Curve = { kind: 'quadratic', start, control: { x: 10, y: 0 }, end: start };
    expect(lengthOf(shape)).toBeCloseTo(10, 8);
  });

  it('is 0 for a point', () => {
    const place = { x: 2, y: 3 };
    expect(lengthOf({ kind: 'cubic', start: place, control1: place, control2: place, end: place })).toBe(0);
  });
});

describe('signedAreaOf', () => {
  it('is the limit of the shoelace sum', () => {
    fc.assert(
      fc.property(curve, (shape) => {
        const points = samples(shape, 4000);
        const shoelace = points
          .slice(1)
          .reduce((sum, place, index) => sum + cross(points[index] ?? place, place) / 2, 0);
        const size = 1 + controlSize(shape);
        expect(Math.abs(signedAreaOf(shape) - shoelace)).toBeLessThan(1e-5 * size * size);
      }),
    );
  });

  it('is positive for a full turn clockwise on the screen', () => {
    expect(signedAreaOf(arcFrom({ x: 7, y: -3 }, { x: 5, y: 0 }, { x: 0, y: 2 }, 0, 2 * Math.PI))).toBeCloseTo(
      10 * Math.PI,
      10,
    );
  });
});

describe('parametersOfAngle', () => {
  it('finds the ends of a full turn and each passage', () => {
    expect(parametersOfAngle({ from: 0, sweep: 2 * Math.PI }, 0)).toEqual([0, 1]);
    expect(parametersOfAngle({ from: 0, sweep: -Math.PI }, Math.PI / 2 + 2 * Math.PI)).toEqual([]);
    expect(parametersOfAngle({ from: 0, sweep: -Math.PI }, -Math.PI / 2)[0]).toBeCloseTo(0.5, 12);
    expect(parametersOfAngle({ from: 1, sweep: 0 }, 1)).toEqual([]);
  });
});

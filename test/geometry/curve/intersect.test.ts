import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossFrom, distance } from '../../../src/geometry/base/vector';
import { controlSize, pointAt } from '../../../src/geometry/curve/evaluate';
import { intersectWithLine } from '../../../src/geometry/curve/intersect';
import { arcFrom, curve, parameter, point } from '../arbitraries';

const SAMPLES = 400;

describe('intersectWithLine', () => {
  it('gives places on the line, ascending', () => {
    fc.assert(
      fc.property(curve, point, point, (shape, a, b) => {
        fc.pre(distance(a, b) > 1e-3);
        const found = intersectWithLine(shape, a, b);
        expect(found).toEqual(found.slice().sort((first, second) => first - second));
        for (const t of found) {
          expect(t).toBeGreaterThanOrEqual(0);
          expect(t).toBeLessThanOrEqual(1);
          const off = Math.abs(crossFrom(a, b, pointAt(shape, t))) / distance(a, b);
          expect(off).toBeLessThan(1e-9 * (300 + controlSize(shape)));
        }
      }),
      { numRuns: 400 },
    );
  });

  it('misses no change of side', () => {
    fc.assert(
      fc.property(curve, point, point, (shape, a, b) => {
        const span = distance(a, b);
        fc.pre(span > 1e-3);
        const found = intersectWithLine(shape, a, b);
        const sides = Array.from(
          { length: SAMPLES + 1 },
          (_, step) => crossFrom(a, b, pointAt(shape, step / SAMPLES)) / span,
        );
        for (let step = 0; step < SAMPLES; step += 1) {
          const [before, after] = [sides[step] ?? 0, sides[step + 1] ?? 0];
          if (Math.min(Math.abs(before), Math.abs(after)) < 1e-9 || before > 0 === after > 0) continue;
          expect(found.some((t) => t > step / SAMPLES - 1e-9 && t < (step + 1) / SAMPLES + 1e-9)).toBe(true);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('finds a line through a point of the curve', () => {
    fc.assert(
      fc.property(curve, parameter, point, (shape, t, away) => {
        const place = pointAt(shape, t);
        fc.pre(distance(place, away) > 1 && controlSize(shape) > 1);
        const found = intersectWithLine(shape, place, away);
        const offs = [0, 0.2, 0.5, 0.8, 1].map((u) => Math.abs(crossFrom(place, away, pointAt(shape, u))));
        if (Math.max(...offs) < 1e-6 * distance(place, away)) return;
        const nearest = Math.min(...found.map((u) => distance(pointAt(shape, u), place)));
        expect(nearest).toBeLessThan(1e-4);
      }),
      { numRuns: 400 },
    );
  });

  it('gives touching places once, the ends, and none for no line or no crossing', () => {
    const circle = arcFrom({ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 0, y: 5 }, -1, 2);
    expect(intersectWithLine(circle, { x: 5, y: -9 }, { x: 5, y: 9 })[0]).toBeCloseTo(0.5, 6);
    expect(intersectWithLine(circle, { x: 5, y: -9 }, { x: 5, y: 9 }).length).toBe(1);
    expect(intersectWithLine(circle, { x: 6, y: -9 }, { x: 6, y: 9 })).toEqual([]);
    expect(intersectWithLine(circle, { x: 1, y: 1 }, { x: 1, y: 1 })).toEqual([]);
    const edge = { kind: 'line' as const, start: { x: 0, y: 0 }, end: { x: 4, y: 0 } };
    expect(intersectWithLine(edge, { x: 0, y: -1 }, { x: 0, y: 1 })).toEqual([0]);
    expect(intersectWithLine(edge, { x: 1, y: 0 }, { x: 2, y: 0 })).toEqual([]);
  });
});

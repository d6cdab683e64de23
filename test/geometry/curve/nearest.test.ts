import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../../src/geometry/base/vector';
import { controlSize, pointAt } from '../../../src/geometry/curve/evaluate';
import { isQuicklyNear, nearestOn } from '../../../src/geometry/curve/nearest';
import { arcFrom, curve, parameter, point } from '../arbitraries';

const SAMPLES = 400;

describe('nearestOn', () => {
  it('is on the curve, and no sample is nearer', () => {
    fc.assert(
      fc.property(curve, point, (shape, place) => {
        const found = nearestOn(shape, place);
        const slack = 1e-9 * (300 + controlSize(shape));
        expect(distance(pointAt(shape, found.t), found.point)).toBeLessThan(slack);
        expect(found.distance).toBeCloseTo(distance(found.point, place), 9);
        for (let step = 0; step <= SAMPLES; step += 1) {
          expect(found.distance).toBeLessThan(distance(pointAt(shape, step / SAMPLES), place) + slack);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('finds a point of the curve again', () => {
    fc.assert(
      fc.property(curve, parameter, (shape, t) => {
        expect(nearestOn(shape, pointAt(shape, t)).distance).toBeLessThan(1e-5);
      }),
      { numRuns: 400 },
    );
  });

  it('answers for a circle about its own centre and for points', () => {
    const circle = arcFrom({ x: 2, y: 2 }, { x: 5, y: 0 }, { x: 0, y: 5 }, 0, 6);
    expect(nearestOn(circle, { x: 2, y: 2 }).distance).toBeCloseTo(5, 12);
    const place = { x: 1, y: 1 };
    expect(nearestOn({ kind: 'quadratic', start: place, control: place, end: place }, { x: 4, y: 5 }).distance).toBe(5);
  });
});

describe('isQuicklyNear', () => {
  it('is never true of a point that is farther off', () => {
    const reach = fc.double({ min: 1e-3, max: 100, noNaN: true });
    fc.assert(
      fc.property(curve, point, reach, (shape, place, limit) => {
        if (isQuicklyNear(shape, place, limit)) expect(nearestOn(shape, place).distance).toBeLessThan(limit + 1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  it('knows the middles of the chords that stand for a curve', () => {
    const bow = {
      kind: 'cubic' as const,
      start: { x: 0, y: 0 },
      control1: { x: 1, y: 1 },
      control2: { x: 2, y: 1 },
      end: { x: 3, y: 0 },
    };
    for (let step = 0; step < 40; step += 1) {
      const [a, b] = [pointAt(bow, step / 40), pointAt(bow, (step + 1) / 40)];
      expect(isQuicklyNear(bow, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, 0.0015)).toBe(true);
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cubic } from '../../../src/geometry/base/curve-types';
import { pointAt } from '../../../src/geometry/curve/evaluate';
import { nearestOn } from '../../../src/geometry/curve/nearest';
import { isOff, isPlainlyOff } from '../../../src/geometry/curve/off';
import { curve, parameter, point } from '../arbitraries';

const reach = fc.double({ min: 1e-3, max: 100, noNaN: true });

const bow: Cubic = {
  kind: 'cubic',
  start: { x: 0, y: 0 },
  control1: { x: 0, y: 4 },
  control2: { x: 4, y: 4 },
  end: { x: 4, y: 0 },
};

describe('isOff', () => {
  it('is never said of a point within reach, and of all that are plainly off', () => {
    fc.assert(
      fc.property(curve, point, reach, (shape, place, limit) => {
        const isSeen = isOff(shape, place, limit);
        if (isSeen) expect(nearestOn(shape, place).distance).toBeGreaterThan(limit - 1e-9);
        if (isPlainlyOff(shape, place, limit)) expect(isSeen).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it('is never said of a point of the curve', () => {
    fc.assert(
      fc.property(curve, parameter, (shape, t) => {
        expect(isOff(shape, pointAt(shape, t), 1e-6)).toBe(false);
      }),
      { numRuns: 1000 },
    );
  });

  it('is seen of points in a bow and beneath its crown', () => {
    for (const y of [0.5, 1.5, 2.5, 2.9, 3.1, 3.9]) {
      expect(isOff(bow, { x: 2, y }, 0.05)).toBe(true);
      expect(isPlainlyOff(bow, { x: 2, y }, 0.05)).toBe(false);
    }
    expect(isOff(bow, { x: 2, y: 3.04 }, 0.05)).toBe(false);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Arc, Cubic, Point } from '../../../src/geometry/base/curve-types';
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

/** The first quarter of an ellipse. */
const curveOf = (centre: Point, axisU: Point, axisV: Point): Arc => ({
  kind: 'arc',
  start: { x: centre.x + axisU.x, y: centre.y + axisU.y },
  end: { x: centre.x + axisV.x, y: centre.y + axisV.y },
  centre,
  axisU,
  axisV,
  from: 0,
  sweep: Math.PI / 2,
});

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

describe('isPlainlyOff', () => {
  const arc = curveOf({ x: 5, y: 5 }, { x: 3, y: 0 }, { x: 0, y: 3 });

  it('is said of points within a circle and round it', () => {
    expect(isPlainlyOff(arc, { x: 5, y: 5 }, 1)).toBe(true);
    expect(isPlainlyOff(arc, { x: 12, y: 5 }, 1)).toBe(true);
    expect(isPlainlyOff(arc, { x: 8.005, y: 5 }, 0.01)).toBe(false);
    // The rest of the ellipse counts: whether the arc goes on there is not asked.
    expect(isPlainlyOff(arc, { x: 2, y: 5 }, 0.01)).toBe(false);
  });

  it('is said of points beside an ellipse that is flat', () => {
    const flat = curveOf({ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 0, y: 0 });
    expect(isPlainlyOff(flat, { x: 0, y: 1 }, 0.5)).toBe(true);
    expect(isPlainlyOff(flat, { x: 1, y: 0 }, 0.5)).toBe(false);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ringContains, signedArea } from '../../../src/geometry/base/ring';
import { clipRingToBox } from '../../../src/preview/canvas/clip-ring';

const box = { minX: -3, minY: -2, maxX: 4, maxY: 5 };
const coordinates = fc.integer({ min: -100, max: 100 }).map((value) => value / 10 + 0.01);
const rings = fc
  .array(fc.tuple(coordinates, coordinates), { minLength: 3, maxLength: 40 })
  .map((points) => Float64Array.from(points.flat()));
const inside = fc.record({
  x: fc.integer({ min: -299, max: 399 }).map((value) => value / 100),
  y: fc.integer({ min: -199, max: 499 }).map((value) => value / 100),
});

describe('a ring cut off at a box', () => {
  it('fills the same inside the box, however it crosses itself', () => {
    fc.assert(
      fc.property(rings, inside, (ring, point) => {
        expect(ringContains(clipRingToBox(ring, box), point)).toBe(ringContains(ring, point));
      }),
      { numRuns: 2000 },
    );
  });

  it('stays within the box', () => {
    fc.assert(
      fc.property(rings, (ring) => {
        const points = Array.from(clipRingToBox(ring, box));
        expect(
          points.every((value, i) =>
            i % 2 === 0
              ? value >= box.minX - 1e-9 && value <= box.maxX + 1e-9
              : value >= box.minY - 1e-9 && value <= box.maxY + 1e-9,
          ),
        ).toBe(true);
      }),
    );
  });

  it('keeps its turn and loses the area outside: a square half in, half out', () => {
    const square = Float64Array.of(-1, 3, 1, 3, 1, 7, -1, 7);
    expect(signedArea(clipRingToBox(square, box))).toBeCloseTo(4);
    expect(clipRingToBox(Float64Array.of(10, 10, 12, 10, 12, 12), box)).toHaveLength(0);
  });
});

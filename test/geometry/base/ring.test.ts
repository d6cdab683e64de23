import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../../src/geometry/base/matrix';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import {
  boxesTouch,
  boxOfRing,
  centroidOfRing,
  growBox,
  joinBoxes,
  perimeter,
  reverseRing,
  ringContains,
  ringOfBox,
  signedArea,
} from '../../../src/geometry/base/ring';
import { looseRing, similarity } from '../arbitraries';

const triangle: Ring = Float64Array.of(0, 0, 4, 0, 0, 3);

function mapRing(ring: Ring, map: (x: number, y: number) => { x: number; y: number }): Ring {
  const image = new Float64Array(ring.length);
  for (let index = 0; index < ring.length; index += 2) {
    const place = map(ring[index] ?? 0, ring[index + 1] ?? 0);
    image[index] = place.x;
    image[index + 1] = place.y;
  }
  return image;
}

describe('measures of a ring', () => {
  it('are known for the 3-4-5 triangle', () => {
    expect(signedArea(triangle)).toBe(6);
    expect(perimeter(triangle)).toBe(12);
    expect(centroidOfRing(triangle)).toEqual({ x: 4 / 3, y: 1 });
    expect(boxOfRing(triangle)).toEqual({ minX: 0, minY: 0, maxX: 4, maxY: 3 });
  });

  it('are those of nothing for nothing', () => {
    const empty = new Float64Array(0);
    expect(signedArea(empty)).toBe(0);
    expect(perimeter(empty)).toBe(0);
    expect(centroidOfRing(empty)).toBeUndefined();
    expect(boxOfRing(empty).minX).toBeGreaterThan(boxOfRing(empty).maxX);
  });

  it('follow turns, mirrors, scales and shifts', () => {
    fc.assert(
      fc.property(looseRing, similarity, (ring, { matrix, factor, mirrored }) => {
        const image = mapRing(ring, (x, y) => apply(matrix, { x, y }));
        const area = signedArea(ring) * factor * factor * (mirrored ? -1 : 1);
        expect(Math.abs(signedArea(image) - area)).toBeLessThan(1e-7 * factor * factor);
        expect(Math.abs(perimeter(image) - perimeter(ring) * factor)).toBeLessThan(1e-7 * factor);
      }),
    );
  });

  it('keep their accuracy far from the origin', () => {
    const far = mapRing(triangle, (x, y) => ({ x: x + 1e7, y: y - 1e7 }));
    expect(signedArea(far)).toBe(6);
    expect(centroidOfRing(far)?.x).toBeCloseTo(1e7 + 4 / 3, 6);
  });

  it('change sign with the course', () => {
    fc.assert(
      fc.property(looseRing, (ring) => {
        expect(signedArea(reverseRing(ring))).toBeCloseTo(-signedArea(ring), 8);
        expect(reverseRing(reverseRing(ring))).toEqual(ring);
      }),
    );
  });
});

describe('ringContains', () => {
  it('tells inside from outside', () => {
    expect(ringContains(triangle, { x: 1, y: 1 })).toBe(true);
    expect(ringContains(triangle, { x: 3, y: 2 })).toBe(false);
    expect(ringContains(triangle, { x: -1, y: 1 })).toBe(false);
    expect(ringContains(reverseRing(triangle), { x: 1, y: 1 })).toBe(true);
  });

  it('is not misled by vertices at the height of the point', () => {
    const diamond = Float64Array.of(0, -5, 5, 0, 0, 5, -5, 0);
    expect(ringContains(diamond, { x: 1, y: 0 })).toBe(true);
    expect(ringContains(diamond, { x: -7, y: 0 })).toBe(false);
    expect(ringContains(diamond, { x: -7, y: 5 })).toBe(false);
  });
});

describe('boxes', () => {
  it('touch, grow and join', () => {
    const box = { minX: 0, minY: 0, maxX: 2, maxY: 1 };
    expect(signedArea(ringOfBox(box))).toBe(2);
    expect(boxesTouch(box, { minX: 2, minY: 1, maxX: 3, maxY: 3 })).toBe(true);
    expect(boxesTouch(box, { minX: 2.1, minY: 0, maxX: 3, maxY: 3 })).toBe(false);
    expect(growBox(box, 1)).toEqual({ minX: -1, minY: -1, maxX: 3, maxY: 2 });
    expect(joinBoxes([box, { minX: -4, minY: 0.5, maxX: -3, maxY: 9 }])).toEqual({
      minX: -4,
      minY: 0,
      maxX: 2,
      maxY: 9,
    });
  });
});

import { describe, expect, it } from 'vitest';
import { pointInside } from '../../../src/geometry/base/point-inside';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import { reverseRing, ringContains, ringOfBox } from '../../../src/geometry/base/ring';
import { nestRings } from '../../../src/geometry/boolean/nest';

function square(centre: number, half: number): Ring {
  return ringOfBox({ minX: centre - half, minY: -half, maxX: centre + half, maxY: half });
}

describe('nestRings', () => {
  it('gives each hole to the smallest outer ring round it, at any depth and in any order', () => {
    const rings = [9, 8, 7, 6, 5, 4].map((half, level) =>
      level % 2 === 0 ? square(0, half) : reverseRing(square(0, half)),
    );
    for (const order of [rings, rings.slice().reverse(), [3, 0, 5, 1, 4, 2].map((index) => rings[index]!)]) {
      const region = nestRings(order);
      const sizes = region.map((polygon) => [polygon.outer[2], polygon.holes.map((hole) => Math.abs(hole[0] ?? 0))]);
      expect(sizes.sort()).toEqual([
        [5, [4]],
        [7, [6]],
        [9, [8]],
      ]);
    }
  });

  it('does not take an island for the holder of its own hole', () => {
    const region = nestRings([square(0, 10), reverseRing(square(0, 8)), square(0, 7.9)]);
    expect(region.map((polygon) => polygon.holes.length)).toEqual([1, 0]);
  });

  it('keeps neighbours apart', () => {
    const region = nestRings([square(0, 4), square(10, 4), reverseRing(square(10, 2)), reverseRing(square(0, 1))]);
    expect(region.map((polygon) => polygon.holes[0]?.[0])).toEqual([-1, 8]);
  });

  it('looks at shapes, not at boxes alone', () => {
    const bracket = Float64Array.of(-10, -10, 10, -10, 10, -9, -9, -9, -9, 9, 10, 9, 10, 10, -10, 10);
    const region = nestRings([bracket, square(0, 5), reverseRing(square(0, 4))]);
    expect(region.map((polygon) => polygon.holes.length)).toEqual([0, 1]);
  });

  it('drops rings without area and holes without holder', () => {
    expect(nestRings([Float64Array.of(0, 0, 5, 5, 9, 9)])).toEqual([]);
    expect(nestRings([reverseRing(square(0, 3))])).toEqual([]);
    expect(nestRings([])).toEqual([]);
  });
});

describe('pointInside', () => {
  it('is inside, also of bent rings', () => {
    const bracket = Float64Array.of(0, 0, 10, 0, 10, 1, 1, 1, 1, 9, 10, 9, 10, 10, 0, 10);
    expect(ringContains(bracket, pointInside(bracket))).toBe(true);
    expect(pointInside(square(3, 1))).toEqual({ x: 3, y: 0 });
  });
});

import { describe, expect, it } from 'vitest';
import type { Polygon } from '../../../src/geometry/base/polygon-types';
import { areaOf } from '../../../src/geometry/boolean/index';
import { symmetricDifference } from '../../../src/geometry/polygon/diff';

const square = (x: number, y: number, side: number): Polygon => ({
  outer: Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side),
  holes: [],
});

describe('symmetricDifference', () => {
  it('of a region with itself is nothing, in any order', () => {
    const region = [square(0, 0, 4), square(10, 0, 4), square(0, 0, 1)];
    expect(symmetricDifference(region, [...region].reverse())).toEqual([]);
  });

  it('counts what was added, taken away and moved', () => {
    const before = [square(0, 0, 4), square(10, 0, 4), square(20, 0, 2)];
    const after = [square(0, 0, 4), square(11, 0, 4), square(30, 0, 3)];
    expect(areaOf(symmetricDifference(before, after))).toBeCloseTo(4 + 4 + 4 + 9, 6);
    expect(areaOf(symmetricDifference(after, before))).toBeCloseTo(21, 6);
  });

  it('sees a change in a hole', () => {
    const hole = Float64Array.of(1, 1, 1, 2, 2, 2, 2, 1);
    const whole = square(0, 0, 4);
    expect(areaOf(symmetricDifference([whole], [{ ...whole, holes: [hole] }]))).toBeCloseTo(1, 6);
  });

  it('matches twins one to one', () => {
    expect(areaOf(symmetricDifference([square(0, 0, 1), square(0, 0, 1)], [square(0, 0, 1)]))).toBeCloseTo(1, 6);
  });
});

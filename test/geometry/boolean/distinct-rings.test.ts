import { describe, expect, it } from 'vitest';
import { distinctRings } from '../../../src/geometry/boolean/distinct-rings';

const square = (x: number) => Float64Array.from([x, 0, x + 1, 0, x + 1, 1, x, 1]);

describe('distinctRings', () => {
  it('keeps the first of rings with the same points in the same order', () => {
    const [first, other] = [square(0), square(2)];
    expect(distinctRings([first, square(0), other, square(2), square(0)])).toEqual([first, other]);
  });

  it('keeps rings that differ in their last digit, in their course or in what follows', () => {
    const moved = square(0);
    moved[0] = 1e-15;
    const turned = Float64Array.from([0, 0, 0, 1, 1, 1, 1, 0]);
    const longer = Float64Array.from([...square(0), 0, 0.5]);
    expect(distinctRings([square(0), moved, turned, longer])).toHaveLength(4);
  });
});

import { describe, expect, it } from 'vitest';
import { multiply, rotation, translation } from '../../src/geometry/base/matrix';
import type { Region } from '../../src/geometry/base/polygon-types';
import { areaOf } from '../../src/geometry/boolean/index';
import { MisregistrationModel } from '../../src/stack/misregistration';

const box = (x: number, y: number, width: number, height: number): Region => [
  {
    outer: Float64Array.of(x, y, x + width, y, x + width, y + height, x, y + height),
    holes: [],
  },
];

/** A band across a field: 40 by 20, painted 0..20 by the first and from 20 on by the second, `lap` mm over it. */
const twoFields = (lap: number) => new MisregistrationModel([box(0, 0, 20, 20), box(20 - lap, 0, 20 + lap, 20)]);

describe('two colours side by side', () => {
  it('a slip away opens a gap as wide as the slip, save near the outline', () => {
    const { area, whole, seams } = twoFields(0).exposedAfter([undefined, translation(0.4, 0)], 0.5);
    // 1 mm at each end of the seam belongs to the outline.
    expect(area).toBeCloseTo(0.4 * 18, 2);
    expect(whole).toBeCloseTo(0.4 * 20, 2);
    expect(seams).toHaveLength(1);
  });

  it('a slip along the seam or over it opens none; the edge it leaves is outline', () => {
    const along = twoFields(0).exposedAfter([undefined, translation(0, 0.4)], 0.5);
    expect(along.area).toBe(0);
    expect(along.whole).toBeCloseTo(0.4 * 20, 2);
    const over = twoFields(0).exposedAfter([undefined, translation(-0.4, 0)], 0.5);
    expect(over.area).toBe(0);
    expect(over.whole).toBeCloseTo(0.4 * 20, 2);
  });

  it('an overlap takes up as much slip as it is wide', () => {
    expect(twoFields(0.3).exposedAfter([undefined, translation(0.3, 0)], 0.5).area).toBe(0);
    expect(twoFields(0.3).exposedAfter([undefined, translation(0.4, 0)], 0.5).area).toBeCloseTo(0.1 * 18, 2);
  });

  it('a slip beyond twice the allowance: the edge it leaves is still outline', () => {
    const { area, whole } = twoFields(0).exposedAfter([undefined, translation(-3, 0)], 0.5);
    expect(whole).toBeCloseTo(3 * 20, 2);
    expect(area).toBe(0);
    expect(twoFields(0).exposedAfter([undefined, translation(3, 0)], 0.5).area).toBeCloseTo(3 * 14, 1);
  });

  it('in register nothing is bare', () => {
    expect(twoFields(0).exposedAfter([], 0.5)).toEqual({ seams: [], area: 0, whole: 0 });
  });

  it('both sheets slipping the same way keep together', () => {
    const place = translation(0.3, -0.2);
    expect(twoFields(0).exposedAfter([place, place], 0.5).area).toBe(0);
  });

  it('a turn opens a wedge', () => {
    const angle = Math.PI / 180;
    const aboutCorner = multiply(translation(20, 20), multiply(rotation(angle), translation(-20, -20)));
    const { whole } = new MisregistrationModel([box(0, 0, 20, 20), box(20, 0, 20, 20)]).exposedAfter(
      [undefined, aboutCorner],
      0.1,
    );
    // Turned about the foot of the seam: a triangle of 20 mm and 20·tan 1°, and the strips along top and bottom apart.
    expect(whole).toBeGreaterThan((20 * 20 * Math.tan(angle)) / 2);
  });
});

describe('the sweep', () => {
  it('of colours that touch: the area goes with the share of the slip that leads away', () => {
    const { areas, safe, seams } = twoFields(0).sweep(1, 0.5, 8);
    const expected = [1, Math.SQRT1_2, 0, 0, 0, 0, 0, Math.SQRT1_2].map((share) => share * 0.5 * 18);
    areas.forEach((area, index) => expect(area).toBeCloseTo(expected[index]!, 1));
    expect(safe).toBeLessThan(0.01);
    expect(areaOf(seams)).toBeCloseTo(0.5 * 18, 1);
  });

  it('an overlap is the safe slip', () => {
    expect(twoFields(0.3).sweep(1, 0.5, 8).safe).toBeCloseTo(0.3, 1);
    expect(twoFields(0.8).sweep(1, 0.5, 8)).toEqual({ areas: Array(8).fill(0), seams: [], safe: 0.5 });
  });

  it('a layer that is not there, or has no openings, bares nothing', () => {
    expect(twoFields(0).sweep(7, 0.5, 4)).toEqual({ areas: [0, 0, 0, 0], seams: [], safe: 0.5 });
    expect(new MisregistrationModel([[]]).sweep(0, 0.5, 4).safe).toBe(0.5);
  });
});

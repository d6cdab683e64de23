import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/base/polygon-types';
import { regionFromRings } from '../../src/geometry/boolean/index';
import { findThinPlaces } from '../../src/sheet/thin-places';

/** Two squares, 10 mm a side, joined by a bar 0.5 mm wide and 6 mm long; moved to the right by `x`. */
function dumbbell(x = 0): Region {
  const points = [0, 0, 10, 0, 10, 4.75, 16, 4.75, 16, 0, 26, 0, 26, 10, 16, 10, 16, 5.25, 10, 5.25, 10, 10, 0, 10];
  return regionFromRings([Float64Array.from(points, (value, i) => (i % 2 === 0 ? value + x : value))], 'nonzero');
}

describe('findThinPlaces', () => {
  it.each([
    ['material', 0.2, 0.3],
    ['an opening', -0.2, 0.7],
    ['material cut by a compensated file', 0, 0.5],
    ['material that burns through', 0.6, -0.1],
  ])('tells the width drawn from the width cut: %s', (_, kerf, cut) => {
    const [place, ...others] = findThinPlaces(dumbbell(), 0.8, kerf);
    expect(others).toEqual([]);
    expect(place?.kind).toBe('neck');
    expect(place?.drawnWidth).toBeCloseTo(0.5, 6);
    expect(place?.cutWidth).toBeCloseTo(cut, 6);
  });

  it('looks for what is under the limit as cut', () => {
    expect(findThinPlaces(dumbbell(), 0.4, 0)).toEqual([]);
    expect(findThinPlaces(dumbbell(), 0.4, 0.2)).toHaveLength(1);
    expect(findThinPlaces(dumbbell(), 0.6, -0.2)).toEqual([]);
    expect(findThinPlaces(dumbbell(), 0.1, -0.2)).toEqual([]);
  });

  it('gives the same where it takes over what did not change', () => {
    const [before, after] = [
      [...dumbbell(), ...dumbbell(40)],
      [...dumbbell(), ...dumbbell(41)],
    ];
    const earlier = { region: before, places: findThinPlaces(before, 0.8, 0.2) };
    expect(findThinPlaces(after, 0.8, 0.2, earlier)).toEqual(findThinPlaces(after, 0.8, 0.2));
  });
});

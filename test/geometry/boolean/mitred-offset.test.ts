import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ringsOf } from '../../../src/geometry/base/ring';
import { offsetRings } from '../../../src/geometry/boolean/clipper';
import { areaOf, difference, perimeterOf, regionFromRings } from '../../../src/geometry/boolean/index';
import { mitredOffset } from '../../../src/geometry/boolean/mitred-offset';
import { nestRings } from '../../../src/geometry/boolean/nest';
import { looseRing } from '../arbitraries';

describe('mitredOffset', () => {
  it('is the offset of the polygon library, in and out, up to rounding', () => {
    const delta = fc.double({ min: -2, max: 2, noNaN: true }).filter((each) => Math.abs(each) > 1e-3);
    fc.assert(
      fc.property(fc.array(looseRing, { minLength: 1, maxLength: 3 }), delta, (drawn, by) => {
        const rings = regionFromRings(drawn, 'nonzero').flatMap(ringsOf);
        fc.pre(rings.length > 0);
        const moved = nestRings(mitredOffset(rings, by, 1));
        const byLibrary = regionFromRings(offsetRings(rings, by, 'miter', 1), 'nonzero');
        const apart = areaOf(difference(moved, byLibrary)) + areaOf(difference(byLibrary, moved));
        expect(apart).toBeLessThan(1e-3 * (1 + perimeterOf(byLibrary)));
      }),
      { numRuns: 200 },
    );
  });

  it('moves a square and its hole by closed forms', () => {
    const outer = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10);
    const hole = Float64Array.of(4, 4, 4, 6, 6, 6, 6, 4);
    expect(areaOf(nestRings(mitredOffset([outer, hole], -0.5, 1)))).toBeCloseTo(81 - 9, 9);
    expect(areaOf(nestRings(mitredOffset([outer, hole], 0.5, 1)))).toBeCloseTo(121 - 1, 9);
    expect(areaOf(nestRings(mitredOffset([outer, hole], 2, 1)))).toBeCloseTo(196, 9);
    expect(mitredOffset([outer, hole], -6, 1)).toEqual([]);
  });

  it('keeps mitres of ten times the move, and cuts longer ones square', () => {
    const wedge = Float64Array.of(0, 0, 100, -2, 100, 2);
    const [moved] = mitredOffset([wedge], 0.1, 1);
    expect(Math.min(...(moved ?? []).filter((_, i) => i % 2 === 0))).toBeCloseTo(-0.1, 3);
  });
});

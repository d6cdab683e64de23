import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Polygon, Region } from '../../../src/geometry/base/polygon-types';
import { reverseRing, ringOfBox, ringsOf } from '../../../src/geometry/base/ring';
import { withoutCovered } from '../../../src/geometry/boolean/covered';
import { areaOf, difference, regionFromRings } from '../../../src/geometry/boolean/index';
import { looseRing } from '../arbitraries';

const square = (x: number, y: number, size: number) => ringOfBox({ minX: x, minY: y, maxX: x + size, maxY: y + size });
const field: Polygon = { outer: square(0, 0, 100), holes: [] };
const holed: Polygon = { outer: square(0, 0, 100), holes: [reverseRing(square(40, 40, 10))] };
const at = (x: number, y: number, size: number): Polygon => ({ outer: square(x, y, size), holes: [] });

describe('polygons that others cover', () => {
  it.each<[string, Region, Region]>([
    ['inside a background', [field, at(10, 10, 5)], [field]],
    ['inside one that is inside another', [at(20, 20, 5), field, at(10, 10, 50)], [field]],
    ['touching the border from inside', [field, at(0, 10, 5)], [field, at(0, 10, 5)]],
    ['nearer to the border than rounding tells', [field, at(0.0002, 10, 5)], [field, at(0.0002, 10, 5)]],
    ['over the border', [field, at(98, 10, 5)], [field, at(98, 10, 5)]],
    ['outside', [field, at(110, 10, 5)], [field, at(110, 10, 5)]],
    ['in a hole', [holed, at(42, 42, 5)], [holed, at(42, 42, 5)]],
    ['round a hole', [holed, at(30, 30, 30)], [holed, at(30, 30, 30)]],
    ['beside a hole', [holed, at(10, 10, 5)], [holed]],
    ['the same twice', [field, { ...field }], [field, { ...field }]],
  ])('%s', (_, given, kept) => {
    expect(withoutCovered(given)).toEqual(kept);
  });

  it('leaving them out changes no union', () => {
    fc.assert(
      fc.property(fc.array(looseRing, { minLength: 2, maxLength: 6 }), (rings) => {
        // Each a little larger than the one before.
        const polygons = rings.flatMap((ring, i) =>
          regionFromRings([ring.map((value) => (value * (i + 1)) / 6)], 'nonzero'),
        );
        const whole = (region: Region): Region => regionFromRings(region.flatMap(ringsOf), 'nonzero');
        const kept = whole(withoutCovered(polygons));
        expect(areaOf(difference(whole(polygons), kept)) + areaOf(difference(kept, whole(polygons)))).toBeLessThan(
          1e-6,
        );
      }),
      { numRuns: 100 },
    );
  });
});

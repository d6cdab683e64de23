import { describe, expect, it } from 'vitest';
import type { Polygon, Region } from '../../../src/geometry/base/polygon-types';
import { polygonOfBox } from '../../../src/geometry/base/ring';
import { areaOf, boxOfPolygon, union } from '../../../src/geometry/boolean/index';
import { isMostlyThin } from '../../../src/geometry/polygon/mostly-thin';
import { thinWithin } from '../../../src/geometry/polygon/thin-within';

const WIDTH = 0.6;

const bar = (minX: number, minY: number, maxX: number, maxY: number): Region => [
  polygonOfBox({ minX, minY, maxX, maxY }),
];

/** A comb on a block of 10 mm width: so many teeth of half the width and 20 mm length. */
function comb(teeth: number, height: number): Polygon {
  const rows = Array.from({ length: teeth }, (_, i) => bar(9, i, 30, i + WIDTH / 2));
  const [polygon] = union([bar(0, 0, 10, height), bar(9, 0, 9.5, teeth), ...rows]);
  if (!polygon) throw new Error('A comb has an area.');
  return polygon;
}

describe('isMostlyThin', () => {
  it('tells a hairline from a block', () => {
    expect(isMostlyThin(polygonOfBox({ minX: 0, minY: 0, maxX: 50, maxY: WIDTH / 2 }), WIDTH)).toBe(true);
    expect(isMostlyThin(polygonOfBox({ minX: 0, minY: 0, maxX: 50, maxY: 2 * WIDTH }), WIDTH)).toBe(false);
    expect(isMostlyThin(polygonOfBox({ minX: 0, minY: 0, maxX: 50, maxY: 50 }), WIDTH)).toBe(false);
  });

  // A tooth has 6 mm²: beside 300 mm² of a block, 50 teeth are half.
  it.each([10, 30, 44, 48, 52, 56, 70, 400])('agrees with the thin parts of a comb of %d teeth', (teeth) => {
    const polygon = comb(teeth, 30);
    const thin = areaOf(thinWithin([polygon], boxOfPolygon(polygon), WIDTH));
    expect(isMostlyThin(polygon, WIDTH)).toBe(thin > areaOf(polygon) / 2);
  });
});

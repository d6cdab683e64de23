import { describe, expect, it } from 'vitest';
import type { Box, Region } from '../../../src/geometry/base/polygon-types';
import { polygonOfBox, ringsOf } from '../../../src/geometry/base/ring';
import { areaOf, difference, intersection, union } from '../../../src/geometry/boolean/index';
import { thinWithin } from '../../../src/geometry/polygon/thin-within';

const WIDTH = 0.6;
const SIDE = 40;
const BLOCK: Box = { minX: 11, minY: 17, maxX: 19, maxY: 23 };
const SHEET: Box = { minX: 0, minY: 0, maxX: SIDE, maxY: SIDE };

const bar = (minX: number, minY: number, maxX: number, maxY: number): Region => [
  polygonOfBox({ minX, minY, maxX, maxY }),
];

/** Bars of half the width, one each so many mm, and a block that is thick. */
function mesh(each: number): Region {
  const places = Array.from({ length: SIDE / each - 1 }, (_, i) => (i + 0.5) * each);
  return union([
    ...places.flatMap((at) => [bar(at, 0, at + WIDTH / 2, SIDE), bar(0, at, SIDE, at + WIDTH / 2)]),
    [polygonOfBox(BLOCK)],
  ]);
}

const edgesOf = (region: Region) => region.flatMap(ringsOf).reduce((sum, ring) => sum + ring.length / 2, 0);

describe('thinWithin', () => {
  it.each([
    ['in one go', 4],
    ['cell by cell', 1],
  ])('finds the bars of a mesh, and nothing of a thick block: %s', (way, each) => {
    const region = mesh(each);
    expect(edgesOf(region) > 2000).toBe(way === 'cell by cell');
    const thin = thinWithin(region, SHEET, WIDTH);
    const bars = difference(region, [polygonOfBox(BLOCK)]);
    // Discs in the block reach a little into the bars that end on it, and leave its corners.
    expect(Math.abs(areaOf(thin) - areaOf(bars))).toBeLessThan(0.01 * areaOf(bars));
    expect(areaOf(intersection(thin, [polygonOfBox(BLOCK)]))).toBeLessThan(0.1);
    expect(areaOf(difference(thin, region))).toBeLessThan(1e-3);
  });

  it('finds the same cell by cell as in boxes of few edges each', () => {
    const region = mesh(1);
    const boxes = Array.from({ length: 16 }, (_, i): Box => {
      const [x, y] = [(i % 4) * (SIDE / 4), Math.floor(i / 4) * (SIDE / 4)];
      return { minX: x, minY: y, maxX: x + SIDE / 4, maxY: y + SIDE / 4 };
    });
    const apart = union(boxes.map((box) => thinWithin(region, box, WIDTH)));
    const whole = thinWithin(region, SHEET, WIDTH);
    expect(areaOf(difference(apart, whole)) + areaOf(difference(whole, apart))).toBeLessThan(1e-3);
    expect(whole.length).toBe(apart.length);
  });
});

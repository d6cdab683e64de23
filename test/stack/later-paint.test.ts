import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/base/polygon-types';
import { polygonOfBox } from '../../src/geometry/base/ring';
import { areaOf, clipToBox } from '../../src/geometry/boolean/index';
import { LaterPaint } from '../../src/stack/later-paint';

const rect = (minX: number, minY: number, maxX: number, maxY: number): Region => [
  polygonOfBox({ minX, minY, maxX, maxY }),
];
const place = polygonOfBox({ minX: 10, minY: 10, maxX: 14, maxY: 14 });
const paintOf = (layers: readonly Region[], kerf = 0) => new LaterPaint(layers.map((openings) => ({ openings, kerf })));

describe('later paint', () => {
  const large = paintOf([[], rect(0, 0, 100, 100), rect(12, 0, 13, 100)]);

  it('in a box is what later layers paint there, each place once', () => {
    const box = { minX: 10, minY: 10, maxX: 14, maxY: 14 };
    expect(areaOf(clipToBox(large.within(box, 0), box))).toBeCloseTo(16, 6);
    expect(areaOf(clipToBox(large.within(box, 1), box))).toBeCloseTo(4, 6);
    expect(large.within(box, 2)).toEqual([]);
    expect(areaOf(clipToBox(large.within(box, 0, 2), box))).toBeCloseTo(4, 6);
  });

  it('over a place is told with the layers that it takes', () => {
    expect(large.over(place, 0, 0.5)).toEqual({ layers: [1], rim: false });
    expect(large.over(place, 1, 0.5)).toBeUndefined();
    const halves = paintOf([[], rect(0, 0, 13, 20), rect(12, 0, 20, 20)]);
    expect(halves.over(place, 0, 0.5)).toEqual({ layers: [1, 2], rim: false });
    expect(halves.over(place, 1, 0.5)).toBeUndefined();
  });

  it('over a sliver is told with a layer, too', () => {
    const sliver = polygonOfBox({ minX: 10, minY: 10, maxX: 10.004, maxY: 10.1 });
    expect(large.over(sliver, 0, 0.5)).toEqual({ layers: [1], rim: false });
  });

  it('may leave a rim narrower than the slip', () => {
    const inner = paintOf([[], rect(10.3, 10.3, 13.7, 13.7)]);
    expect(inner.over(place, 0, 0.5)).toEqual({ layers: [1], rim: true });
    expect(inner.over(place, 0, 0.2)).toBeUndefined();
    expect(inner.over(place, 0, 0)).toBeUndefined();
  });

  it('is as wide as it is cut', () => {
    expect(paintOf([[], rect(10.05, 10.05, 13.95, 13.95)], 0.2).over(place, 0, 0)).toMatchObject({ rim: false });
  });

  it('hides an opening where no place of it shows', () => {
    const sheet = { kerf: 0 };
    expect(paintOf([[place], [place]]).hides(place, sheet, 0)).toBe(true);
    expect(paintOf([[place], rect(10, 10, 14, 13.9)]).hides(place, sheet, 0)).toBe(false);
    expect(paintOf([rect(0, 0, 20, 20), [place]]).hides(place, sheet, 1)).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';
import { remixed } from '../../../src/separate/labels/remix';
import { hardLabels, type Rgb } from '../../../src/separate/raster';
import { painted } from '../pictures';

const COLOURS: Rgb[] = [
  [255, 255, 255],
  [40, 90, 30],
  [245, 248, 250],
];

/** Green on the left of white, with a column between them that is a third green. */
const mixture: Rgb = [183, 200, 180];
const picture = painted(12, 6, (x) => (x < 5 ? COLOURS[1]! : x > 5 ? COLOURS[0]! : mixture));
const labelsWith = (column: number) => ({
  width: 12,
  height: 6,
  labels: Uint8Array.from({ length: 72 }, (_, at) => (at % 12 < 5 ? 1 : at % 12 === 5 ? column : 0)),
});

describe('what a clean-up gave to a neighbour', () => {
  it('is a mixture of what is beside it now', () => {
    const { labels, other, share } = remixed(picture, COLOURS, hardLabels(labelsWith(2)), labelsWith(0));
    for (let at = 5; at < 72; at += 12) {
      expect([labels[at], other[at]]).toEqual([0, 1]);
      expect(share[at]).toBeCloseTo(2 / 3, 1);
    }
  });

  it('is all of its own where it looks like no such mixture', () => {
    const red = painted(12, 6, (x) => (x < 5 ? COLOURS[1]! : x > 5 ? COLOURS[0]! : [250, 20, 20]));
    const { share } = remixed(red, COLOURS, hardLabels(labelsWith(2)), labelsWith(0));
    expect(share[5]).toBe(1);
  });

  it('leaves what was not changed as it was', () => {
    const before = hardLabels(labelsWith(0));
    before.share[5] = 0.6;
    expect(remixed(picture, COLOURS, before, labelsWith(0)).share).toEqual(before.share);
  });
});

import { describe, expect, it } from 'vitest';
import { nearestLabels } from '../../../src/separate/labels/nearest';
import { shareAtSeam } from '../../../src/separate/labels/seam';
import { unmixed } from '../../../src/separate/labels/unmix';
import type { Rgb } from '../../../src/separate/raster';
import { rendered } from '../pictures';

const WHITE: Rgb = [255, 255, 255];
const GREY: Rgb = [225, 232, 237];
const BROWN: Rgb = [120, 60, 40];
const GREEN: Rgb = [62, 114, 29];

const over = (upper: Rgb, coverage: number, below: Rgb): Rgb =>
  [0, 1, 2].map((i) => coverage * upper[i]! + (1 - coverage) * below[i]!) as unknown as Rgb;

describe('a pixel at a seam', () => {
  it.each([0.15, 0.3, 0.5, 0.8])('tells the coverage of both shapes (%d)', (coverage) => {
    const pixel = over(GREY, coverage, over(BROWN, coverage, WHITE));
    const colours = [WHITE, GREY, BROWN, GREEN];
    expect(shareAtSeam(pixel, [GREY, WHITE], 0.9, colours)).toBeCloseTo(coverage, 2);
    expect(shareAtSeam(pixel, [WHITE, GREY], 0.1, colours)).toBeCloseTo(1 - coverage, 2);
  });

  it('is none where no third colour explains it', () => {
    expect(shareAtSeam([90, 20, 200], [GREY, WHITE], 0.5, [WHITE, GREY, BROWN])).toBeUndefined();
  });
});

describe('a shape that ends where another one under it ends', () => {
  it('has its border where it was drawn', () => {
    // Edges lie on the quarters of pixels, to which the renderer rounds them.
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 60"><rect width="60" height="60" fill="#ffffff"/>
      <rect x="10" y="10" width="40" height="30.25" fill="#783c28"/><rect x="20" y="20" width="30" height="20.25" fill="#e1e8ed"/></svg>`;
    const picture = rendered(svg, 60);
    const colours = [WHITE, GREY, BROWN];
    const { labels, other, share } = unmixed(picture, colours, nearestLabels(picture, colours));
    for (let x = 25; x < 45; x += 1) {
      const at = 40 * 60 + x;
      expect([labels[at], other[at]]).toEqual([0, 1]);
      expect(share[at]).toBeCloseTo(0.75, 1);
    }
  });
});

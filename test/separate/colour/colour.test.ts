import { describe, expect, it } from 'vitest';
import { colourDifference, type Lab, labOf } from '../../../src/separate/colour/difference';
import { hexOf, rgbOf } from '../../../src/separate/colour/hex';
import { oklabOf, oklabOfLinear, rgbOfOklab } from '../../../src/separate/colour/oklab';
import { choosePalette, coloursIn } from '../../../src/separate/colour/palette';
import type { Picture, Rgb } from '../../../src/separate/raster';
import { drawn, noisy, painted, seeded } from '../pictures';
import published from './ciede2000-pairs.json';

/** The inverse of IEC 61966-2-1's matrix from linear sRGB to XYZ. */
const TO_LINEAR = [
  [3.2404542, -1.5371385, -0.4985314],
  [-0.969266, 1.8760108, 0.041556],
  [0.0556434, -0.2040259, 1.0572252],
];

describe('OKLab', () => {
  // B. Ottosson, "A perceptual color space for image processing", 2020: the table of XYZ and OKLab pairs.
  it.each([
    [
      [0.95, 1, 1.089],
      [1, 0, 0],
    ],
    [
      [1, 0, 0],
      [0.45, 1.236, -0.019],
    ],
    [
      [0, 1, 0],
      [0.922, -0.671, 0.263],
    ],
    [
      [0, 0, 1],
      [0.153, -1.415, -0.449],
    ],
  ])('of XYZ %j is %j, to three decimals', (xyz, expected) => {
    const [red, green, blue] = TO_LINEAR.map((row) => row.reduce((sum, factor, i) => sum + factor * xyz[i]!, 0));
    oklabOfLinear(red!, green!, blue!).forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 2.7));
  });

  it('leads back to every colour', () => {
    for (let value = 0; value < 0x1000000; value += 4093) {
      const rgb: Rgb = [value >> 16, (value >> 8) & 255, value & 255];
      expect(rgbOfOklab(oklabOf(rgb))).toEqual(rgb);
      expect(rgbOf(hexOf(rgb))).toEqual(rgb);
    }
  });
});

describe('CIEDE2000', () => {
  it('gives the published differences to four decimals, in both orders', () => {
    expect(published.pairs).toHaveLength(34);
    for (const [l1, a1, b1, l2, a2, b2, expected] of published.pairs as number[][]) {
      const [first, second]: [Lab, Lab] = [
        [l1!, a1!, b1!],
        [l2!, a2!, b2!],
      ];
      expect(colourDifference(first, second).toFixed(4)).toBe(expected!.toFixed(4));
      expect(colourDifference(second, first).toFixed(4)).toBe(expected!.toFixed(4));
    }
  });

  it('is nothing between a colour and itself, and a hundred between black and white', () => {
    expect(colourDifference(labOf([18, 52, 86]), labOf([18, 52, 86]))).toBe(0);
    expect(colourDifference(labOf([0, 0, 0]), labOf([255, 255, 255]))).toBeCloseTo(100, 2);
  });
});

const MARSH: Rgb[] = [
  [242, 230, 200],
  [95, 147, 168],
  [47, 93, 74],
  [224, 144, 44],
];

describe('a palette', () => {
  it('of a flat drawing is its very colours', () => {
    const palette = choosePalette(coloursIn(drawn(MARSH)), 4, []);
    expect([...palette.colours].map(String).sort()).toEqual(MARSH.map(String).sort());
    expect(palette.isDrawing).toBe(true);
    expect(palette.difference).toBe(0);
  });

  it('of a compressed drawing has no traces of compression, but pale colours that were drawn', () => {
    const random = seeded(5);
    const palePatch = (x: number, y: number) => x > 20 && x < 60 && y > 20 && y < 60;
    const compressed = painted(300, 300, (x, y) => {
      if (x > 150) return [30, 40, 50];
      if (palePatch(x, y)) return [245, 248, 250];
      return [255, 255, 255];
    });
    // Beside the dark half, blocks of nearly white, as rings of JPEG are.
    for (let y = 0; y < 300; y += 3) {
      const near = [248 + Math.floor(4 * random()), 255, 251 + Math.floor(4 * random()), 255];
      for (const [u, v] of [
        [0, 0],
        [1, 0],
        [0, 1],
        [1, 1],
      ] as const)
        compressed.data.set(near, 4 * ((y + v) * 300 + 147 + u));
    }
    const { colours } = choosePalette(coloursIn(compressed), 8, []);
    expect(colours.map(String).sort()).toEqual(['245,248,250', '255,255,255', '30,40,50']);
  });

  it('has fewer colours where the picture has', () => {
    expect(choosePalette(coloursIn(drawn(MARSH)), 9, []).colours).toHaveLength(4);
  });

  it('of fewer colours than a drawing has gives up what is least missed, not what is small', () => {
    // White, a pale grey, nearly black, and a little yellow: of three the grey is one with white.
    const eagle = painted(200, 200, (x, y) => {
      if (y < 82) return [255, 255, 255];
      if (y < 144) return [225, 232, 237];
      return x < 163 ? [41, 47, 51] : [255, 204, 77];
    });
    const { colours } = choosePalette(coloursIn(eagle), 3, []);
    expect(colours.map(String).sort()).toEqual(['255,204,77', '255,255,255', '41,47,51']);
  });

  it('never moves the paints that are given', () => {
    const paints: Rgb[] = [
      [10, 200, 30],
      [250, 10, 20],
    ];
    for (const picture of [drawn(MARSH), noisy()]) {
      expect(choosePalette(coloursIn(picture), 4, paints).colours.slice(0, 2)).toEqual(paints);
      expect(choosePalette(coloursIn(picture), 2, paints).colours).toEqual(paints);
    }
  });

  it('takes a picture with grain everywhere for a photo', () => {
    expect(choosePalette(coloursIn(noisy()), 4, []).isDrawing).toBe(false);
  });

  it('takes smooth tones that go over into each other for a photo', () => {
    const moon = painted(160, 160, (x, y) => {
      const grey = Math.round(90 + 0.3 * x + 6 * Math.sin(y / 9));
      return [grey, grey, grey];
    });
    expect(coloursIn(moon).isDrawing).toBe(false);
  });

  it('is the same each time', () => {
    const picture: Picture = noisy();
    expect(choosePalette(coloursIn(picture), 5, [])).toEqual(choosePalette(coloursIn(picture), 5, []));
  });
});

/** How different two colours look, as the trade of colours counts it. */
import { defined } from '../../base/defined';
import type { Rgb } from '../raster';

/** CIELAB: lightness, red against green, yellow against blue. */
export type Lab = readonly [number, number, number];

/** sRGB to XYZ at D65 (IEC 61966-2-1), a row for each of X, Y, Z, and its white. */
const TO_XYZ = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
] as const;
const WHITE = [0.95047, 1, 1.08883] as const;

const RADIAN = Math.PI / 180;

/** CIELAB (CIE 15) at D65. */
export function labOf(rgb: Rgb): Lab {
  const linear = rgb.map((value) => {
    const c = value / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  const [x, y, z] = TO_XYZ.map((row, axis) => {
    const t = row.reduce((sum, factor, i) => sum + factor * defined(linear[i]), 0) / defined(WHITE[axis]);
    return t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116;
  }) as [number, number, number];
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/**
 * CIEDE2000 of two colours; 1 is about what can just be seen.
 * G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000 color-difference formula: implementation notes, supplementary test data,
 * and mathematical observations", Color Research and Application 30(1), 2005.
 */
export function colourDifference([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
  const chroma7 = ((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2) ** 7;
  const g = 0.5 * (1 - Math.sqrt(chroma7 / (chroma7 + 25 ** 7)));
  const [c1, h1] = polar((1 + g) * a1, b1);
  const [c2, h2] = polar((1 + g) * a2, b2);
  const grey = c1 * c2 === 0;
  const turn = grey ? 0 : ((h2 - h1 + 540) % 360) - 180;
  // Opposite hues: the paper leaves the turn at 180 rather than at -180.
  const dh = turn === -180 && h2 > h1 ? 180 : turn;
  const deltaH = 2 * Math.sqrt(c1 * c2) * Math.sin((dh / 2) * RADIAN);
  const [l, c, h] = [(l1 + l2) / 2, (c1 + c2) / 2, meanHue(h1, h2, grey)];
  const t =
    1 -
    0.17 * Math.cos((h - 30) * RADIAN) +
    0.24 * Math.cos(2 * h * RADIAN) +
    0.32 * Math.cos((3 * h + 6) * RADIAN) -
    0.2 * Math.cos((4 * h - 63) * RADIAN);
  const turned =
    2 * Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7)) * Math.sin(60 * RADIAN * Math.exp(-(((h - 275) / 25) ** 2)));
  const inLightness = (l2 - l1) / (1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2));
  const inChroma = (c2 - c1) / (1 + 0.045 * c);
  const inHue = deltaH / (1 + 0.015 * c * t);
  return Math.sqrt(inLightness ** 2 + inChroma ** 2 + inHue ** 2 - turned * inChroma * inHue);
}

/** Chroma, and hue in degrees from 0 to 360. */
function polar(a: number, b: number): [number, number] {
  const hue = a === 0 && b === 0 ? 0 : Math.atan2(b, a) / RADIAN;
  return [Math.hypot(a, b), hue < 0 ? hue + 360 : hue];
}

function meanHue(first: number, second: number, grey: boolean): number {
  const sum = first + second;
  if (grey) return sum;
  if (Math.abs(first - second) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

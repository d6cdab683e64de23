/**
 * OKLab, in which equal distances look about equally different.
 * B. Ottosson, "A perceptual color space for image processing", 2020.
 */
import { defined } from '../../base/defined';
import type { Rgb } from '../raster';

/** Lightness 0..1, and the two axes from green to red and from blue to yellow. */
export type Oklab = readonly [number, number, number];

/** sRGB to linear light (IEC 61966-2-1). */
const LINEAR = Float32Array.from({ length: 256 }, (_, value) => {
  const c = value / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});

export function oklabOf([red, green, blue]: Rgb): Oklab {
  return oklabOfLinear(defined(LINEAR[red]), defined(LINEAR[green]), defined(LINEAR[blue]));
}

/** Of linear light, 0..1 each where it can be shown. */
export function oklabOfLinear(red: number, green: number, blue: number): Oklab {
  const l = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
  const m = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
  const s = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

/** The nearest colour that can be shown, component by component. */
export function rgbOfOklab([lightness, a, b]: Oklab): Rgb {
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    encoded(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    encoded(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    encoded(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ];
}

function encoded(light: number): number {
  const c = Math.max(0, Math.min(1, light));
  return Math.round(255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055));
}

export function squaredDistance(first: Oklab, second: Oklab): number {
  return (first[0] - second[0]) ** 2 + (first[1] - second[1]) ** 2 + (first[2] - second[2]) ** 2;
}

/** The place of the nearest colour in a list that is not empty. */
export function nearestOf(colours: readonly Oklab[], colour: Oklab): number {
  let nearest = 0;
  let least = Infinity;
  colours.forEach((each, place) => {
    const distance = squaredDistance(each, colour);
    if (distance >= least) return;
    least = distance;
    nearest = place;
  });
  return nearest;
}

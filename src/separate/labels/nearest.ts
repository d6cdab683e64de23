/** Each pixel's nearest colour. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { nearestOf, oklabOf } from '../colour/oklab';
import type { LabelMap, Picture, Rgb } from '../raster';

/** Colours that are remembered, each in the place that its lowest bits say. */
const REMEMBERED = 1 << 16;

/** At most 255 colours. */
export function nearestLabels({ width, height, data }: Picture, colours: readonly Rgb[]): LabelMap {
  const places = colours.map(oklabOf);
  const labels = new Uint8Array(width * height);
  const known = new Int32Array(REMEMBERED).fill(-1);
  const labelOf = new Uint8Array(REMEMBERED);
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let at = y * width; at < (y + 1) * width; at += 1) {
      const [red, green, blue] = [defined(data[4 * at]), defined(data[4 * at + 1]), defined(data[4 * at + 2])];
      const key = (red << 16) | (green << 8) | blue;
      // Greys and their likes differ in all three channels: each of them is to count.
      const place = (key ^ (key >> 5)) & (REMEMBERED - 1);
      if (known[place] !== key) {
        known[place] = key;
        labelOf[place] = nearestOf(places, oklabOf([red, green, blue]));
      }
      labels[at] = defined(labelOf[place]);
    }
  }
  return { width, height, labels };
}

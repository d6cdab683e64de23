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
  let last = -1;
  let label = 0;
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let at = y * width; at < (y + 1) * width; at += 1) {
      const key = (defined(data[4 * at]) << 16) | (defined(data[4 * at + 1]) << 8) | defined(data[4 * at + 2]);
      if (key !== last) {
        // Greys and their likes differ in all three channels: each of them is to count.
        const place = (key ^ (key >> 5)) & (REMEMBERED - 1);
        if (known[place] !== key) {
          known[place] = key;
          labelOf[place] = nearestOf(places, oklabOf([key >> 16, (key >> 8) & 255, key & 255]));
        }
        label = defined(labelOf[place]);
        last = key;
      }
      labels[at] = label;
    }
  }
  return { width, height, labels };
}

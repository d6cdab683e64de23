/** Each pixel's nearest colour. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { nearestOf, oklabOf } from '../colour/oklab';
import type { LabelMap, Picture, Rgb } from '../raster';

const UNKNOWN = 255;

/** At most 255 colours. */
export function nearestLabels({ width, height, data }: Picture, colours: readonly Rgb[]): LabelMap {
  const places = colours.map(oklabOf);
  const labels = new Uint8Array(width * height);
  const known = new Uint8Array(1 << 24).fill(UNKNOWN);
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let at = y * width; at < (y + 1) * width; at += 1) {
      const [red, green, blue] = [defined(data[4 * at]), defined(data[4 * at + 1]), defined(data[4 * at + 2])];
      const key = (red << 16) | (green << 8) | blue;
      let label = defined(known[key]);
      if (label === UNKNOWN) {
        label = nearestOf(places, oklabOf([red, green, blue]));
        known[key] = label;
      }
      labels[at] = label;
    }
  }
  return { width, height, labels };
}

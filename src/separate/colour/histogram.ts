/** The colours of a picture, those that are nearly alike taken together. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Picture, Rgb } from '../raster';

export interface Bin {
  /** The mean of what fell into it. */
  readonly colour: Rgb;
  readonly count: number;
}

/** Five bits of each channel. */
const BINS = 1 << 15;

/** More pixels than these tell nothing more of a picture's colours: every so many rows are passed over. */
const ENOUGH = 2e6;

export function histogramOf({ width, height, data }: Picture): Bin[] {
  const counts = new Float64Array(BINS);
  const sums = new Float64Array(3 * BINS);
  const step = Math.max(1, Math.floor((width * height) / ENOUGH));
  for (let y = 0; y < height; y += step) {
    checkpoint(width);
    const end = 4 * (y + 1) * width;
    for (let at = 4 * y * width; at < end; at += 4) {
      const red = defined(data[at]);
      const green = defined(data[at + 1]);
      const blue = defined(data[at + 2]);
      const bin = ((red >> 3) << 10) | ((green >> 3) << 5) | (blue >> 3);
      counts[bin] = defined(counts[bin]) + 1;
      sums[3 * bin] = defined(sums[3 * bin]) + red;
      sums[3 * bin + 1] = defined(sums[3 * bin + 1]) + green;
      sums[3 * bin + 2] = defined(sums[3 * bin + 2]) + blue;
    }
  }
  const bins: Bin[] = [];
  counts.forEach((count, bin) => {
    if (count === 0) return;
    const mean = (channel: number): number => Math.round(defined(sums[3 * bin + channel]) / count);
    bins.push({ colour: [mean(0), mean(1), mean(2)], count });
  });
  return bins;
}

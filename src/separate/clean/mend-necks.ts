/** Necks that are nearly wide enough are widened, the others cut. */
import { defined } from '../../base/defined';
import { Disc } from '../layers/discs';
import type { LabelMap } from '../raster';
import type { Neck } from './necks';

/** Of the least width: what is as wide is widened. */
const WIDENED_FROM = 0.3;

/**
 * @param necks of sets of pixels
 * @param areOfOneSet whether two pixels lie in the same one
 * @param radius pixels: half of the least width
 * @returns the labels with the necks mended
 */
export function withoutNecks(
  map: LabelMap,
  necks: readonly Neck[],
  areOfOneSet: (one: number, other: number) => boolean,
  radius: number,
): Uint8Array {
  const labels = map.labels.slice();
  const disc = new Disc(map, radius + 0.5);
  for (const { waist, depth, beside, middle } of necks) {
    const isCut = beside !== undefined && 2 * depth - 1 < WIDENED_FROM * 2 * radius;
    const from = isCut ? beside : waist;
    const label = defined(map.labels[from]);
    for (const at of isCut ? [waist] : middle) {
      disc.stamp(at, (pixel) => {
        if (!areOfOneSet(pixel, from)) labels[pixel] = label;
      });
    }
  }
  return labels;
}

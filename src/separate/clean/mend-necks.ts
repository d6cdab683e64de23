/** Necks that are nearly wide enough are widened, the others cut. */
import { defined } from '../../base/defined';
import { Disc } from '../layers/discs';
import type { LabelMap } from '../raster';
import { necksOf } from './necks';

/** Of the least width: what is as wide is widened. */
const WIDENED_FROM = 0.3;

/** Sets of pixels that are to be without necks. */
export interface Sets {
  /** For each pixel its set. */
  readonly of: LabelMap;
  isWanted(set: number): boolean;
}

/**
 * @param radius pixels: half of the least width
 * @returns the labels with the necks mended; undefined where there are none
 */
export function withoutNecks(map: LabelMap, { of: sets, isWanted }: Sets, radius: number): Uint8Array | undefined {
  const necks = necksOf(sets, isWanted, radius);
  if (necks.length === 0) return undefined;
  const labels = map.labels.slice();
  const disc = new Disc(map, radius + 0.5);
  for (const { waist, depth, beside, middle } of necks) {
    const isCut = beside !== undefined && 2 * depth - 1 < WIDENED_FROM * 2 * radius;
    const from = isCut ? beside : waist;
    const [set, label] = [sets.labels[from], defined(map.labels[from])];
    for (const at of isCut ? [waist] : middle) {
      disc.stamp(at, (pixel) => {
        if (sets.labels[pixel] !== set) labels[pixel] = label;
      });
    }
  }
  return labels;
}

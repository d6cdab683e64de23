/**
 * Borders that a clean-up moved. A pixel that took a neighbour's colour is a mixture still, often of what is beside it now:
 * compression leaves specks of third colours along borders, and where those are gone the border runs between the pixels as
 * it did before.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { LabelMap, Picture, Rgb, SoftLabels } from '../raster';
import { mix, newMixture } from './mixture';
import { isOnRim } from './unmix';

/** Squared steps of the channels: what is farther from a mixture is none, but something that was cut away. */
const UNLIKELY = 900;

/**
 * @param before what was cleaned up
 * @param after its labels now; those beyond the colours are of no colour
 */
export function remixed(picture: Picture, colours: readonly Rgb[], before: SoftLabels, after: LabelMap): SoftLabels {
  const { width, height, labels } = after;
  const other = before.other.slice();
  const share = before.share.slice();
  const mixture = newMixture();
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      const own = defined(labels[at]);
      if (own === before.labels[at]) continue;
      share[at] = 1;
      if (own >= colours.length || !isOnRim(after, x, y)) continue;
      const near = [own, ...labelsBeside(after, x, y, own)].filter((label) => label < colours.length);
      mix(picture.data, 4 * at, colours, near, own, mixture);
      if (mixture.residual > UNLIKELY) continue;
      const isFirst = mixture.first === own;
      other[at] = isFirst ? mixture.second : mixture.first;
      share[at] = Math.max(0.5, isFirst ? mixture.share : 1 - mixture.share);
    }
  }
  return { width, height, labels, other, share };
}

function labelsBeside({ width, height, labels }: LabelMap, x: number, y: number, own: number): Set<number> {
  const beside = new Set<number>();
  const at = y * width + x;
  if (x > 0) beside.add(defined(labels[at - 1]));
  if (x + 1 < width) beside.add(defined(labels[at + 1]));
  if (y > 0) beside.add(defined(labels[at - width]));
  if (y + 1 < height) beside.add(defined(labels[at + width]));
  beside.delete(own);
  return beside;
}

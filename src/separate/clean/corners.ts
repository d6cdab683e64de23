/** Corners of drawings: what a disc does not reach of them is no fault. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { LabelMap } from '../raster';

/**
 * Gives back what a clean-up took from the tips of regions: connected pixels that it changed, of one label, that touch
 * what their label has kept at one place only, and reach no farther from there than the disc is wide. So far a
 * corner of 39 degrees reaches, and so far `thin-bridge` and its likes let tips be.
 * @param before the labels as they were
 * @param after those of the clean-up; they are changed
 * @param radius pixels, of the disc
 */
export function keptCorners(before: LabelMap, after: Uint8Array, radius: number): void {
  const { width, height, labels } = before;
  const seen = new Uint8Array(labels.length);
  const members: number[] = [];
  for (let start = 0; start < labels.length; start += 1) {
    if (seen[start] === 1 || after[start] === labels[start]) continue;
    const label = defined(labels[start]);
    members.length = 0;
    members.push(start);
    seen[start] = 1;
    const roots: number[] = [];
    // The list grows while it is gone through.
    for (const at of members) {
      checkpoint(8);
      const [x, y] = [at % width, Math.floor(at / width)];
      for (const [u, v] of NEIGHBOURS) {
        if (x + u < 0 || x + u >= width || y + v < 0 || y + v >= height) continue;
        const other = at + v * width + u;
        if (labels[other] !== label || seen[other] === 1) continue;
        if (after[other] === label) {
          roots.push(other);
          continue;
        }
        seen[other] = 1;
        members.push(other);
      }
    }
    if (isTip(members, roots, width, radius)) for (const at of members) after[at] = label;
  }
}

const NEIGHBOURS = [
  [-1, 0],
  [1, 0],
  [0, -1],
  [0, 1],
] as const;

/** Whether all pixels are within a disc's width of the middle of what they hang on, and that is one short stretch. */
function isTip(members: readonly number[], roots: readonly number[], width: number, radius: number): boolean {
  if (roots.length === 0) return false;
  let [sumX, sumY] = [0, 0];
  for (const at of roots) {
    sumX += at % width;
    sumY += Math.floor(at / width);
  }
  const [midX, midY] = [sumX / roots.length, sumY / roots.length];
  const within = (at: number, reach: number): boolean =>
    ((at % width) - midX) ** 2 + (Math.floor(at / width) - midY) ** 2 <= reach * reach;
  return roots.every((at) => within(at, radius)) && members.every((at) => within(at, 2 * radius));
}

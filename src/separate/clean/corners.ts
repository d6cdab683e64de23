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
 * @param changed the pixels that it changed
 * @param radius pixels, of the disc
 */
export function keptCorners(before: LabelMap, after: Uint8Array, changed: readonly number[], radius: number): void {
  const { width, height, labels } = before;
  const seen = new Set<number>();
  for (const start of changed) {
    if (seen.has(start)) continue;
    const label = defined(labels[start]);
    const members = [start];
    const roots: number[] = [];
    seen.add(start);
    const visit = (other: number): void => {
      if (labels[other] !== label) return;
      if (after[other] === label) roots.push(other);
      else if (!seen.has(other)) {
        seen.add(other);
        members.push(other);
      }
    };
    // The list grows while it is gone through.
    for (const at of members) {
      checkpoint(8);
      const x = at % width;
      if (x > 0) visit(at - 1);
      if (x + 1 < width) visit(at + 1);
      if (at >= width) visit(at - width);
      if (at + width < width * height) visit(at + width);
    }
    if (isTip(members, roots, width, radius)) for (const at of members) after[at] = label;
  }
}

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

/** Where a disc has room. */
import { checkpoint } from '../../base/checkpoint';
import { Disc } from '../layers/discs';
import type { LabelMap } from '../raster';

/**
 * 1 where a disc of the radius round the pixel lies within its label; the frame is an edge like others, for what it cuts off
 * is as hard to cut as anything. Undefined where there is none.
 */
export function coresOf(map: LabelMap, radius: number): Uint8Array | undefined {
  const core = new Uint8Array(map.labels.length).fill(1);
  // From the pixel on the rim the border itself is half a pixel away.
  const reach = radius - 0.5;
  // What is as far away as that is not in the disc.
  const disc = new Disc(map, reach - 1e-6);
  if (reach > 0) for (const at of rimOf(map)) disc.mark(at, core, 0);
  return core.includes(1) ? core : undefined;
}

/** The pixels that have a neighbour of another label, or none at some side. */
function rimOf({ width, height, labels }: LabelMap): number[] {
  const rim: number[] = [];
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    const atEdge = y === 0 || y + 1 === height;
    for (let x = 0, at = y * width; x < width; x += 1, at += 1) {
      const label = labels[at];
      if (
        atEdge ||
        x === 0 ||
        x + 1 === width ||
        labels[at + 1] !== label ||
        labels[at - 1] !== label ||
        labels[at + width] !== label ||
        labels[at - width] !== label
      ) {
        rim.push(at);
      }
    }
  }
  return rim;
}

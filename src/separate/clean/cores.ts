/** Where a disc has room. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { FOUR_TIMES } from '../layers/discs';
import { SweptDisc } from '../layers/swept-disc';
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
  if (reach > 0) new SweptDisc(map, reach - 1e-6).mark(rimOf(map), core, 0);
  return core.includes(1) ? core : undefined;
}

/** The pixels that have a neighbour of another label, or none at some side. */
function rimOf({ width, height, labels }: LabelMap): number[] {
  const rim: number[] = [];
  const fours = new DataView(labels.buffer, labels.byteOffset, labels.length);
  for (let y = 0; y < height; y += 1) {
    checkpoint(width >> 1);
    const row = y * width;
    const end = row + width;
    const atEdge = y === 0 || y + 1 === height;
    for (let at = row; at < end; at += 1) {
      const label = defined(labels[at]);
      const isWithin = !atEdge && at > row && labels[at - 1] === label;
      // Most pixels lie far from any rim: four are passed at once.
      if (isWithin && at + 4 < end && labels[at + 4] === label) {
        const all = label * FOUR_TIMES;
        const areSame =
          fours.getUint32(at) === all && fours.getUint32(at - width) === all && fours.getUint32(at + width) === all;
        if (areSame) {
          at += 3;
          continue;
        }
      }
      const isInside =
        isWithin &&
        at + 1 < end &&
        labels[at + 1] === label &&
        labels[at + width] === label &&
        labels[at - width] === label;
      if (!isInside) rim.push(at);
    }
  }
  return rim;
}

/** Where a disc has room. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { Bitmap } from '../bits/bitmap';
import { DiscShape } from '../bits/disc-shape';
import { FOUR_TIMES } from '../bits/label-sets';
import type { LabelMap } from '../raster';

/**
 * The pixels round which a disc of the radius lies within one label; the frame is an edge like others, for what it cuts off
 * is as hard to cut as anything.
 */
export function coresOf(map: LabelMap, radius: number): Bitmap {
  const reach = reachOf(radius);
  return (reach > 0 ? new DiscShape(reach).dilated(rimOf(map)) : new Bitmap(map)).complement();
}

/** The same of one set of pixels. */
export function coresIn(set: Bitmap, radius: number): Bitmap {
  const reach = reachOf(radius);
  return reach > 0 ? set.without(new DiscShape(reach).dilated(set.edge(true))) : set;
}

/** From the pixel on the rim the border itself is half a pixel away. What is as far away as that is not in the disc. */
function reachOf(radius: number): number {
  return radius - 0.5 - 1e-6;
}

/** The pixels that have a neighbour of another label, or none at some side. */
function rimOf(map: LabelMap): Bitmap {
  const { width, height, labels } = map;
  const rim = new Bitmap(map);
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
      if (!isInside) rim.add(at);
    }
  }
  return rim;
}

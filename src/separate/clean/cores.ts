/** Where a disc has room. */
import { Bitmap } from '../bits/bitmap';
import { DiscShape } from '../bits/disc-shape';
import { LabelSets } from '../bits/label-sets';
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
  const sets = new LabelSets(map);
  const rim = new Bitmap(map);
  for (const label of sets.labels) rim.addAll(sets.of(label).edge(true));
  return rim;
}

/** What lies beyond the frame: the sheet's margin, which is as bare as what is left unpainted. */
import { checkpoint } from '../../base/checkpoint';
import type { LabelMap } from '../raster';

/**
 * Works on a map as if the ground went on beyond the frame, so that ground along the frame is as wide as it comes out. All
 * that is painted ends at the frame as before.
 * @param ground the label that is left unpainted; undefined where there is none
 * @param reach pixels: how wide areas must be
 */
export function onGround<Result extends LabelMap | undefined>(
  map: LabelMap,
  ground: number | undefined,
  reach: number,
  work: (map: LabelMap) => Result,
): Result | LabelMap {
  if (ground === undefined) return work(map);
  // Room for a disc whose middle is beyond the frame.
  const margin = 2 * Math.ceil(reach) + 2;
  const wide = grown(map, ground, margin);
  const worked = work(wide);
  if (!worked) return worked;
  return worked === wide ? map : cut(worked, margin, map);
}

function grown({ width, height, labels }: LabelMap, ground: number, by: number): LabelMap {
  const across = width + 2 * by;
  const into = new Uint8Array(across * (height + 2 * by)).fill(ground);
  for (let y = 0; y < height; y += 1) {
    checkpoint(width >> 3);
    into.set(labels.subarray(y * width, (y + 1) * width), (y + by) * across + by);
  }
  return { width: across, height: height + 2 * by, labels: into };
}

function cut({ width: across, labels }: LabelMap, by: number, like: LabelMap): LabelMap {
  const { width, height } = like;
  const into = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    checkpoint(width >> 3);
    const from = (y + by) * across + by;
    into.set(labels.subarray(from, from + width), y * width);
  }
  return { ...like, labels: into };
}

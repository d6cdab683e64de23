/**
 * Areas whose sheets hold. A layer's sheet is what all earlier colours show, and the ground: where two of them meet between
 * two of the layer's own tips each may be wide by itself, and both together too thin.
 */
import { Ranks } from '../layers/ranks';
import type { LabelMap } from '../raster';
import { type CleanUp, cleanedUp } from './clean-up';
import { type Sets, withoutNecks } from './mend-necks';

/** So often all sheets are gone through: what is mended for one may be thin in another. */
const ROUNDS = 4;

/**
 * @param order labels, first sprayed first
 * @param width pixels: the least one
 */
export function clearedSheets<Map extends LabelMap>(
  map: Map,
  order: readonly number[],
  { width, keepsCorners }: CleanUp,
): Map | LabelMap {
  const ranks = new Ranks(order);
  let now: Map | LabelMap = map;
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = now;
    now = mended(now, { of: now, isWanted: () => true }, width / 2);
    for (let rank = 1; rank < order.length; rank += 1) now = mended(now, earlierThan(now, ranks, rank), width / 2);
    if (now === before) return now;
    // Between mends crumbs are left.
    now = cleanedUp(now, { width, keepsCorners, rounds: 1 }) ?? now;
  }
  return now;
}

function mended(map: LabelMap, sets: Sets, radius: number): LabelMap {
  const labels = withoutNecks(map, sets, radius);
  return labels ? { ...map, labels } : map;
}

const EARLIER = 1;

function earlierThan(map: LabelMap, ranks: Ranks, rank: number): Sets {
  const labels = new Uint8Array(map.labels.length);
  for (let at = 0; at < labels.length; at += 1) labels[at] = ranks.at(map, at) < rank ? EARLIER : 0;
  return { of: { ...map, labels }, isWanted: (set) => set === EARLIER };
}

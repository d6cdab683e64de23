/**
 * Areas whose sheets hold. A layer's sheet is what all earlier colours show, and the ground: where two of them meet between
 * two of the layer's own tips each may be wide by itself, and both together too thin.
 */
import { defined } from '../../base/defined';
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
  const mends = new Mends(width / 2);
  let now: Map | LabelMap = map;
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = now;
    now = mends.of(now, 0, { of: now, isWanted: () => true });
    for (let rank = 1; rank < order.length; rank += 1) now = mends.of(now, rank, earlierThan(now, ranks, rank));
    if (now === before) return now;
    // Between mends crumbs are left.
    now = cleanedUp(now, { width, keepsCorners, rounds: 1 }) ?? now;
  }
  return now;
}

/** Mends sets that are not known to be without necks. */
class Mends {
  private readonly radius: number;
  /** By number of a set: how it was when it had none. */
  private readonly sound = new Map<number, Uint8Array>();

  constructor(radius: number) {
    this.radius = radius;
  }

  of(map: LabelMap, number: number, sets: Sets): LabelMap {
    const known = this.sound.get(number);
    if (known && areSame(known, sets.of.labels)) return map;
    const labels = withoutNecks(map, sets, this.radius);
    if (labels) return { ...map, labels };
    this.sound.set(number, sets.of.labels);
    return map;
  }
}

function areSame(one: Uint8Array, other: Uint8Array): boolean {
  for (let at = 0; at < one.length; at += 1) if (one[at] !== other[at]) return false;
  return true;
}

const EARLIER = 1;

function earlierThan(map: LabelMap, ranks: Ranks, rank: number): Sets {
  const setOf = Uint8Array.from({ length: 256 }, (_, label) => (ranks.of(label) < rank ? EARLIER : 0));
  const labels = new Uint8Array(map.labels.length);
  for (let at = 0; at < labels.length; at += 1) labels[at] = defined(setOf[defined(map.labels[at])]);
  return { of: { ...map, labels }, isWanted: (set) => set === EARLIER };
}

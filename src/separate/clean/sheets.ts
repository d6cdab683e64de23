/**
 * Areas whose sheets hold. A layer's sheet is what all earlier colours show, and the ground: where two of them meet between
 * two of the layer's own tips each may be wide by itself, and both together too thin.
 */
import type { Bitmap } from '../bits/bitmap';
import { LabelSets } from '../bits/label-sets';
import { Ranks } from '../layers/ranks';
import type { LabelMap } from '../raster';
import { type CleanUp, cleanedUp } from './clean-up';
import { withoutNecks } from './mend-necks';
import { necksOf } from './necks';

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
    now = mends.ofAreas(now);
    for (let rank = 1; rank < order.length; rank += 1) now = mends.ofSheet(now, rank, ranks);
    if (now === before) return now;
    // Between mends crumbs are left.
    now = cleanedUp(now, { width, keepsCorners, rounds: 1 }) ?? now;
  }
  return now;
}

/** Mends sets that are not known to be without necks. */
class Mends {
  private readonly radius: number;
  /** By name: how a set was when it had no necks. */
  private readonly sound = new Map<string, Bitmap>();

  private last: { readonly map: LabelMap; readonly sets: LabelSets } | undefined;

  constructor(radius: number) {
    this.radius = radius;
  }

  ofAreas(map: LabelMap): LabelMap {
    const { labels } = map;
    const sets = this.setsOf(map);
    const necks = sets.labels.flatMap((label) => this.necksIn(`area ${label}`, sets.of(label)));
    if (necks.length === 0) return map;
    return { ...map, labels: withoutNecks(map, necks, (one, other) => labels[one] === labels[other], this.radius) };
  }

  /** The sheet of what is sprayed in a place of the order. */
  ofSheet(map: LabelMap, rank: number, ranks: Ranks): LabelMap {
    const isSheet = (label: number): boolean => ranks.of(label) < rank;
    const necks = this.necksIn(`sheet ${rank}`, this.setsOf(map).where(isSheet));
    if (necks.length === 0) return map;
    const isInSheet = (pixel: number): boolean => isSheet(map.labels[pixel] ?? 0);
    return {
      ...map,
      labels: withoutNecks(map, necks, (one, other) => isInSheet(one) === isInSheet(other), this.radius),
    };
  }

  private setsOf(map: LabelMap): LabelSets {
    if (this.last?.map !== map) this.last = { map, sets: new LabelSets(map) };
    return this.last.sets;
  }

  private necksIn(name: string, set: Bitmap) {
    if (this.sound.get(name)?.equals(set)) return [];
    const necks = necksOf(set, this.radius);
    if (necks.length === 0) this.sound.set(name, set);
    return necks;
  }
}

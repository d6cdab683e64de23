/**
 * What each layer paints: its own area, and what later layers paint over anyway, as far as that helps. Earlier colours reach
 * under later ones by the slip, so that no bare ground shows when a sheet lands off its place, and sheet that would be too
 * thin to hold is given up where later paint covers it.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { Bitmap } from '../bits/bitmap';
import { DiscShape } from '../bits/disc-shape';
import { LabelSets } from '../bits/label-sets';
import { necksOf } from '../clean/necks';
import type { LabelMap } from '../raster';
import { Disc } from './discs';
import type { Ranks } from './ranks';

/** The region of pixels that a layer paints though a later one covers them. */
export const UNDER_LATER = 254;

/** So often thin paint is given up for thin sheet: the one may come of the other. */
const SETTLED = 2;

/** In pixels. */
export interface SpreadSizes {
  /** How far earlier colours reach under later ones. */
  readonly slip: number;
  /** The least widths of sheet and of openings. */
  readonly bridge: number;
  readonly opening: number;
}

export interface SpreadLayer {
  readonly label: number;
  readonly rank: number;
  /** The pixels that it paints though later ones cover them. */
  readonly under: readonly number[];
}

export function* spreadLayers(map: LabelMap, ranks: Ranks, sizes: SpreadSizes): Generator<SpreadLayer> {
  const spreading = new Spreading(map, ranks, sizes);
  spreading.reach(-1);
  for (const [rank, label] of ranks.order.entries()) yield { label, rank, under: spreading.underLater(rank, label) };
}

class Spreading {
  private readonly map: LabelMap;
  private readonly sets: LabelSets;
  private readonly ranks: Ranks;
  private readonly sizes: SpreadSizes;
  private readonly sheetDisc: DiscShape;
  private readonly paintDisc: DiscShape;
  private readonly slip: Disc;
  /** Pixels of each rank, that of the ground first, beside later colours. */
  private readonly rims: number[][];
  /** The squared distance to the nearest pixel of earlier colours, and that pixel. */
  private readonly least: Float32Array;
  private readonly site: Int32Array;
  /** The last rank that reached a pixel. */
  private readonly last: Int16Array;

  constructor(map: LabelMap, ranks: Ranks, sizes: SpreadSizes) {
    const { slip, bridge, opening } = sizes;
    this.sizes = sizes;
    this.map = map;
    this.sets = new LabelSets(map);
    this.ranks = ranks;
    this.sheetDisc = discAcross(bridge);
    this.paintDisc = discAcross(opening);
    this.slip = new Disc(map, slip);
    this.rims = slip > 0 ? rimsOf(map, ranks) : [];
    this.least = new Float32Array(map.labels.length).fill(Infinity);
    this.site = new Int32Array(map.labels.length).fill(-1);
    this.last = new Int16Array(map.labels.length).fill(-2);
  }

  underLater(rank: number, label: number): number[] {
    const reached = this.reach(rank);
    if (reached.length === 0) return [];
    const own = this.sets.of(label);
    const free = this.awayFromEarlier(rank);
    const paint = this.settled(own.or(Bitmap.ofPixels(this.map, reached).and(free)), own, free);
    return paint.without(own).pixels();
  }

  /**
   * The pixels of later colours that the colour of a rank reaches. Where several reach one from the same side the nearest
   * does, of those as near the earliest: so colours meet under later ones half-way from where they meet in the open. From
   * opposite sides all reach it, else strips of later colours would be held by too little.
   */
  reach(rank: number): number[] {
    const reached: number[] = [];
    const { width } = this.map;
    for (const rim of this.rims[rank + 1] ?? []) {
      this.slip.stamp(rim, (at, squared) => {
        if (this.last[at] === rank && squared >= defined(this.least[at])) return;
        if (this.ranks.at(this.map, at) <= rank) return;
        const isNearest = squared < defined(this.least[at]);
        if (!isNearest && !isBetween(at, rim, defined(this.site[at]), width)) return;
        if (this.last[at] !== rank) reached.push(at);
        this.last[at] = rank;
        if (!isNearest) return;
        this.least[at] = squared;
        this.site[at] = rim;
      });
    }
    return reached;
  }

  /** Gives up sheet under later paint that is too thin, and paint that is; last the sheet, for that must hold. */
  private settled(reached: Bitmap, own: Bitmap, free: Bitmap): Bitmap {
    let paint = this.withoutNecks(reached, free);
    for (let time = 0; ; time += 1) {
      paint = paint.or(this.sheetDisc.uncovered(paint.complement()).and(free));
      if (time === SETTLED) return paint;
      const thin = this.paintDisc.uncovered(paint).without(own);
      if (thin.isEmpty) return paint;
      paint = paint.without(thin);
    }
  }

  /** Where sheet under later paint is too narrow it is cut. */
  private withoutNecks(paint: Bitmap, free: Bitmap): Bitmap {
    const { opening, bridge } = this.sizes;
    const waists = necksOf(paint.complement(), bridge / 2).map(({ waist }) => waist);
    const cut = new DiscShape(opening / 2).dilated(Bitmap.ofPixels(this.map, waists));
    return paint.or(cut.and(free));
  }

  /**
   * Under which pixels a colour may reach: later ones, away from earlier ones and from bare ground. Its edge would come out
   * there beside the later colour's own.
   */
  private awayFromEarlier(rank: number): Bitmap {
    const where = (isWanted: (rank: number) => boolean): Bitmap =>
      this.sets.where((label) => isWanted(this.ranks.of(label)));
    const earlier = where((other) => other < rank);
    return where((other) => other > rank).without(new DiscShape(Math.SQRT2).dilated(earlier));
  }
}

/**
 * A disc of so many pixels. From a pixel's centre to its edge it is half a pixel; what is as far away as that is not in the disc.
 */
export function discAcross(pixels: number): DiscShape {
  return new DiscShape(pixels / 2 + 0.5 - 1e-6);
}

/** Whether a pixel lies between two others, seen from it. */
function isBetween(at: number, one: number, other: number, width: number): boolean {
  if (other < 0) return true;
  const [x, y] = [at % width, Math.floor(at / width)];
  const dot =
    ((one % width) - x) * ((other % width) - x) + (Math.floor(one / width) - y) * (Math.floor(other / width) - y);
  return dot < 0;
}

function rimsOf(map: LabelMap, ranks: Ranks): number[][] {
  const { width, height, labels } = map;
  const rims: number[][] = [[], ...ranks.order.map(() => [])];
  let [x, left] = [0, 0];
  for (let at = 0; at < labels.length; at += 1, x += 1) {
    if (x === width) x = 0;
    if (x === 0) checkpoint(width);
    const label = defined(labels[at]);
    const below = at + width;
    if (x > 0 && left !== label) note(at - 1, at);
    if (below < width * height && labels[below] !== label) note(at, below);
    left = label;
  }
  function note(first: number, second: number): void {
    const [one, other] = [ranks.at(map, first), ranks.at(map, second)];
    if (one === other) return;
    const [rank, pixel] = one < other ? [one, first] : [other, second];
    const rim = defined(rims[rank + 1]);
    if (rim.at(-1) !== pixel) rim.push(pixel);
  }
  return rims;
}

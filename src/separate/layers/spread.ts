/**
 * What each layer paints: its own area, and what later layers paint over anyway, as far as that helps. Earlier colours reach
 * under later ones by the slip, so that no bare ground shows when a sheet lands off its place, and sheet that would be too
 * thin to hold is given up where later paint covers it.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { LabelMap } from '../raster';
import { Disc, hasNeighbour } from './discs';
import type { Ranks } from './ranks';

/** The region of pixels that a layer paints though a later one covers them. */
export const UNDER_LATER = 254;

/** In pixels. */
export interface SpreadSizes {
  /** How far earlier colours reach under later ones. */
  readonly slip: number;
  /** The least width of sheet. */
  readonly bridge: number;
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
  private readonly ranks: Ranks;
  private readonly bridge: number;
  private readonly slip: Disc;
  /** The label of each pixel, but where a layer is worked on. */
  private readonly regions: Uint8Array;
  /** Pixels of each rank, that of the ground first, beside later colours. */
  private readonly rims: number[][];
  /** The squared distance to the nearest colour so far, and its rank. */
  private readonly least: Float32Array;
  private readonly nearest: Int16Array;

  constructor(map: LabelMap, ranks: Ranks, { slip, bridge }: SpreadSizes) {
    this.map = map;
    this.ranks = ranks;
    this.bridge = bridge;
    this.slip = new Disc(map, slip);
    this.regions = map.labels.slice();
    this.rims = slip > 0 ? rimsOf(map, ranks) : [];
    this.least = new Float32Array(map.labels.length).fill(Infinity);
    this.nearest = new Int16Array(map.labels.length).fill(-2);
  }

  underLater(rank: number, label: number): number[] {
    const reached = this.reach(rank);
    const regions = this.regions;
    for (const at of reached) regions[at] = UNDER_LATER;
    const thin = reached.length > 0 ? this.thinSheet(regions, rank, label, reached) : [];
    for (const at of reached) regions[at] = defined(this.map.labels[at]);
    const painted = [...reached, ...thin];
    const beside = new Set(this.besideEarlier(rank, painted));
    return beside.size === 0 ? painted : painted.filter((at) => !beside.has(at));
  }

  /**
   * The pixels of later colours that the colour of a rank reaches. Where several reach one the nearest does, of those as near
   * the earliest: so colours meet under later ones half-way from where they meet in the open.
   */
  reach(rank: number): number[] {
    const reached: number[] = [];
    for (const rim of this.rims[rank + 1] ?? []) {
      this.slip.stamp(rim, (at, squared) => {
        if (squared >= defined(this.least[at]) || this.ranks.at(this.map, at) <= rank) return;
        this.least[at] = squared;
        if (this.nearest[at] !== rank) reached.push(at);
        this.nearest[at] = rank;
      });
    }
    return reached;
  }

  /** Sheet under later paint that no disc as wide as a bridge covers. */
  private thinSheet(regions: Uint8Array, rank: number, label: number, reached: readonly number[]): number[] {
    const isSheet = (at: number): boolean => regions[at] !== label && regions[at] !== UNDER_LATER;
    const near = new Uint8Array(regions.length);
    const close: number[] = [];
    const half = new Disc(this.map, this.bridge / 2);
    for (const at of reached) {
      if (!hasNeighbour(this.map, at, isSheet)) continue;
      half.stamp(at, (pixel) => {
        if (near[pixel] === 1 || !isSheet(pixel)) return;
        near[pixel] = 1;
        close.push(pixel);
      });
    }
    const holding = new Disc(this.map, this.bridge / 2 + 0.5);
    const held = new Uint8Array(regions.length);
    const isCore = (at: number): boolean => isSheet(at) && near[at] === 0;
    for (const at of close) {
      if (!hasNeighbour(this.map, at, isCore)) continue;
      holding.stamp(at, (pixel) => {
        held[pixel] = 1;
      });
    }
    return close.filter((at) => held[at] === 0 && this.ranks.at(this.map, at) > rank);
  }

  /**
   * What is painted under a later colour ends short of earlier ones, and of bare ground: its edge would come out there
   * beside the later colour's own.
   */
  private besideEarlier(rank: number, painted: readonly number[]): number[] {
    const beside = new Disc(this.map, Math.SQRT2);
    return painted.filter((at) => {
      let found = false;
      beside.stamp(at, (pixel) => {
        found ||= this.ranks.at(this.map, pixel) < rank;
      });
      return found;
    });
  }
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

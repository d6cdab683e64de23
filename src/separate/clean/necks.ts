/**
 * Necks of sets of pixels: what is too thin, and joins two places of its set that are not. No disc of the least width
 * passes them, though what lies on either side is wide.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { Joined } from '../layers/components';
import { Disc, edgeOf, hasNeighbour } from '../layers/discs';
import type { LabelMap } from '../raster';
import { coresOf } from './cores';
import { partNumbers } from './part-numbers';

/** Pixels along and across: roots as near to each other lie beside each other. */
const LINK = 2;

/** Pixels by which half a neck is too narrow at least: what is less may come of the pixels. */
const SURELY = 0.25;

export interface Neck {
  /** The pixel where it is narrowest. */
  readonly waist: number;
  /** Pixels from there to the nearest one that is not in the set. */
  readonly depth: number;
  /** That pixel; none where it is the frame. */
  readonly beside: number | undefined;
  /** The pixels along its middle. */
  readonly middle: readonly number[];
}

/**
 * @param sets for each pixel its set
 * @param radius pixels: half of the least width
 */
export function necksOf(sets: LabelMap, isWanted: (set: number) => boolean, radius: number): Neck[] {
  const core = coresOf(sets, radius);
  return core ? thinNecks(sets, isWanted, ownersOf(sets, core, radius), radius) : [];
}

const NOBODY = -1;

/** For each pixel the connected core whose discs cover it; nobody where there is none, or more than one. */
function ownersOf(sets: LabelMap, core: Uint8Array, radius: number): Int32Array {
  const owners = partNumbers(sets, core, NOBODY);
  const contested: number[] = [];
  const disc = new Disc(sets, radius + 0.5);
  for (const at of edgeOf(sets, core, 1)) {
    const set = sets.labels[at];
    const own = defined(owners[at]);
    disc.stamp(at, (pixel) => {
      if (core[pixel] === 1 || sets.labels[pixel] !== set) return;
      if (owners[pixel] === NOBODY) owners[pixel] = own;
      else if (owners[pixel] !== own) contested.push(pixel);
    });
  }
  for (const at of contested) owners[at] = NOBODY;
  return owners;
}

function thinNecks(sets: LabelMap, isWanted: (set: number) => boolean, owners: Int32Array, radius: number): Neck[] {
  const { labels } = sets;
  const place = new Int32Array(labels.length).fill(-1);
  const necks: Neck[] = [];
  for (let start = 0; start < labels.length; start += 1) {
    if (owners[start] !== NOBODY || place[start] !== -1 || !isWanted(defined(labels[start]))) continue;
    const thin: number[] = [start];
    const roots = new Set<number>();
    const set = labels[start];
    place[start] = 0;
    // The list grows while it is gone through.
    for (const at of thin) {
      checkpoint(8);
      hasNeighbour(sets, at, (pixel) => {
        if (labels[pixel] !== set) return false;
        if (owners[pixel] !== NOBODY) roots.add(pixel);
        else if (place[pixel] === -1) {
          place[pixel] = thin.length;
          thin.push(pixel);
        }
        return false;
      });
    }
    necks.push(...necksAmong(sets, thin, place, stretchesOf(sets, owners, [...roots]), radius));
  }
  return necks;
}

/** Joins the deepest pixels first: one that joins two roots is where a neck is narrowest. */
function necksAmong(
  sets: LabelMap,
  thin: readonly number[],
  place: Int32Array,
  { of: stretchOf, count }: Stretches,
  radius: number,
): Neck[] {
  if (count < 2) return [];
  const others = thin.map((pixel) => nearestOther(sets, pixel, radius));
  const depth = (i: number): number => defined(others[i]).distance;
  const depthAt = (pixel: number): number => {
    const i = place[pixel] ?? -1;
    // Another part's pixels are counted from 0 as well.
    return thin[i] === pixel ? depth(i) : Infinity;
  };
  const parts = new Parts(thin.length, count);
  const necks: Neck[] = [];
  for (const i of [...thin.keys()].sort((a, b) => depth(b) - depth(a))) {
    const at = defined(thin[i]);
    const beside: number[] = [];
    hasNeighbour(sets, at, (pixel) => {
      if (sets.labels[pixel] !== sets.labels[at]) return false;
      const stretch = stretchOf.get(pixel);
      beside.push(stretch === undefined ? defined(place[pixel]) : thin.length + stretch);
      return false;
    });
    if (!parts.add(i, beside) || depth(i) > radius - SURELY) continue;
    const isMiddle = (j: number): boolean => parts.isWith(j, i) && isDeepest(sets, defined(thin[j]), depthAt);
    const middle = [...thin.keys()].filter(isMiddle).map((j) => defined(thin[j]));
    necks.push({ waist: at, depth: depth(i), beside: defined(others[i]).pixel, middle: [at, ...middle] });
  }
  return necks;
}

/** Pixels that are joined one by one, and which of what they hang on each group has reached. */
class Parts {
  private readonly joined = new Joined();
  private readonly added: Uint8Array;
  private readonly isRooted: Uint8Array;

  constructor(pixels: number, roots: number) {
    for (let i = 0; i < pixels + roots; i += 1) this.joined.add();
    this.added = new Uint8Array(pixels + roots).fill(1, pixels);
    this.isRooted = this.added.slice();
  }

  /** @returns whether it joins two groups that both have a root */
  add(pixel: number, beside: readonly number[]): boolean {
    this.added[pixel] = 1;
    let isJoint = false;
    for (const other of beside) {
      const [own, root] = [this.joined.rootOf(pixel), this.joined.rootOf(other)];
      if (this.added[other] === 0 || own === root) continue;
      const [one, two] = [this.isRooted[own] === 1, this.isRooted[root] === 1];
      isJoint ||= one && two;
      this.joined.join(own, root);
      this.isRooted[own] = one || two ? 1 : 0;
    }
    return isJoint;
  }

  isWith(pixel: number, other: number): boolean {
    return this.added[pixel] === 1 && this.joined.rootOf(pixel) === this.joined.rootOf(other);
  }
}

interface Stretches {
  readonly of: ReadonlyMap<number, number>;
  readonly count: number;
}

/** The roots in stretches: those of one have one owner, and lie beside each other. */
function stretchesOf({ width }: LabelMap, owners: Int32Array, roots: readonly number[]): Stretches {
  const of = new Map(roots.map((root) => [root, -1]));
  let count = 0;
  for (const first of roots) {
    if (of.get(first) !== -1) continue;
    of.set(first, count);
    const open = [first];
    // The list grows while it is gone through.
    for (const at of open) {
      for (let v = -LINK; v <= LINK; v += 1) {
        for (let u = -LINK; u <= LINK; u += 1) {
          const other = at + v * width + u;
          if (of.get(other) !== -1 || owners[other] !== owners[first]) continue;
          of.set(other, count);
          open.push(other);
        }
      }
    }
    count += 1;
  }
  return { of, count };
}

/** The nearest pixel of another label, none where it is the frame, and how far away it is, in pixels. */
function nearestOther(
  { width, height, labels }: LabelMap,
  at: number,
  radius: number,
): { readonly distance: number; readonly pixel: number | undefined } {
  const [x, y] = [at % width, Math.floor(at / width)];
  const reach = Math.ceil(radius) + 1;
  let least = reach * reach;
  let pixel: number | undefined;
  for (let v = -reach; v <= reach; v += 1) {
    for (let u = -reach; u <= reach; u += 1) {
      const squared = u * u + v * v;
      if (squared >= least) continue;
      const isInside = x + u >= 0 && x + u < width && y + v >= 0 && y + v < height;
      const other = at + v * width + u;
      if (isInside && labels[other] === labels[at]) continue;
      least = squared;
      pixel = isInside ? other : undefined;
    }
  }
  return { distance: Math.sqrt(least), pixel };
}

/** Whether in some direction neither of its neighbours is farther from other labels. */
function isDeepest({ width, labels }: LabelMap, at: number, depthAt: (pixel: number) => number): boolean {
  const own = depthAt(at);
  const isLower = (pixel: number): boolean => labels[pixel] !== labels[at] || depthAt(pixel) <= own;
  return [1, width, width + 1, width - 1].some((step) => isLower(at - step) && isLower(at + step));
}

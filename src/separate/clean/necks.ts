/**
 * Necks of sets of pixels: what is too thin, and joins two places of its set that are not. No disc of the least width
 * passes them, though what lies on either side is wide.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { Joined } from '../layers/components';
import { edgeOf, hasNeighbour } from '../layers/discs';
import { SweptDisc } from '../layers/swept-disc';
import type { LabelMap } from '../raster';
import { coresOf } from './cores';
import { NearestOther } from './nearest-other';
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

/** Thin pixels are known by their places in the list of their part, counted down from here, when they are in it. */
const FIRST_PLACE = -2;

/** For each pixel the connected core whose discs cover it; nobody where there is none, or more than one. */
function ownersOf(sets: LabelMap, core: Uint8Array, radius: number): Int32Array {
  const owners = partNumbers(sets, core, NOBODY);
  const contested: number[] = [];
  const { labels } = sets;
  // Cores beside each other are one, and of one set.
  new SweptDisc(sets, radius + 0.5).visit(edgeOf(sets, core, 1), (pixel, middle) => {
    if (core[pixel] === 1 || labels[pixel] !== labels[middle]) return;
    const own = defined(owners[middle]);
    if (owners[pixel] === NOBODY) owners[pixel] = own;
    else if (owners[pixel] !== own) contested.push(pixel);
  });
  for (const at of contested) owners[at] = NOBODY;
  return owners;
}

function thinNecks(sets: LabelMap, isWanted: (set: number) => boolean, owners: Int32Array, radius: number): Neck[] {
  const { labels } = sets;
  const necks: Neck[] = [];
  for (let start = owners.indexOf(NOBODY); start >= 0; start = owners.indexOf(NOBODY, start + 1)) {
    if (!isWanted(defined(labels[start]))) continue;
    const thin: number[] = [start];
    const roots = new Set<number>();
    const set = labels[start];
    owners[start] = FIRST_PLACE;
    // The list grows while it is gone through.
    for (const at of thin) {
      checkpoint(8);
      hasNeighbour(sets, at, (pixel) => {
        if (labels[pixel] !== set) return false;
        const owner = defined(owners[pixel]);
        if (owner > NOBODY) roots.add(pixel);
        else if (owner === NOBODY) {
          owners[pixel] = FIRST_PLACE - thin.length;
          thin.push(pixel);
        }
        return false;
      });
    }
    necks.push(...necksAmong(sets, thin, owners, stretchesOf(sets, owners, [...roots]), radius));
  }
  return necks;
}

/** Joins the deepest pixels first: one that joins two roots is where a neck is narrowest. */
function necksAmong(
  sets: LabelMap,
  thin: readonly number[],
  owners: Int32Array,
  { of: stretchOf, count }: Stretches,
  radius: number,
): Neck[] {
  if (count < 2) return [];
  const nearest = new NearestOther(sets, Math.ceil(radius) + 1);
  const depths = Float64Array.from(thin, (pixel) => nearest.of(pixel).distance);
  const depth = (i: number): number => defined(depths[i]);
  const depthAt = (pixel: number): number => {
    const i = FIRST_PLACE - (owners[pixel] ?? 0);
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
      beside.push(stretch === undefined ? FIRST_PLACE - defined(owners[pixel]) : thin.length + stretch);
      return false;
    });
    if (!parts.add(i, beside) || depth(i) > radius - SURELY) continue;
    const isWithIt = parts.with(i);
    const middle = thin.filter((pixel, j) => isWithIt(j) && isDeepest(sets, pixel, depthAt));
    necks.push({ waist: at, depth: depth(i), beside: nearest.of(at).pixel, middle: [at, ...middle] });
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

  /** Tells which pixels are in one group with another, until more are added. */
  with(other: number): (pixel: number) => boolean {
    const root = this.joined.rootOf(other);
    return (pixel) => this.added[pixel] === 1 && this.joined.rootOf(pixel) === root;
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

/** Whether in some direction neither of its neighbours is farther from other labels. */
function isDeepest({ width, labels }: LabelMap, at: number, depthAt: (pixel: number) => number): boolean {
  const own = depthAt(at);
  const isLower = (pixel: number): boolean => labels[pixel] !== labels[at] || depthAt(pixel) <= own;
  return [1, width, width + 1, width - 1].some((step) => isLower(at - step) && isLower(at + step));
}

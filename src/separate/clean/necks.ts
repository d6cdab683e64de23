/**
 * Necks of sets of pixels: what is too thin, and joins two places of its set that are not. No disc of the least width
 * passes them, though what lies on either side is wide.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Bitmap } from '../bits/bitmap';
import type { Grid } from '../labels/box-blur';
import { Joined } from '../layers/components';
import { hasNeighbour } from '../layers/discs';
import { NearestOther } from './nearest-other';
import { BEYOND, Owners, THIN } from './neck-owners';

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

/** @param radius pixels: half of the least width */
export function necksOf(set: Bitmap, radius: number): Neck[] {
  return thinNecks(set, new Owners(set, radius), radius);
}

/** Thin pixels are known by their places in the list of their part, counted down from here, when they are in it. */
const FIRST_PLACE = -4;

function thinNecks(grid: Grid, known: Owners, radius: number): Neck[] {
  const necks: Neck[] = [];
  const owners = known.of;
  for (const start of known.thin) {
    if (owners[start] !== THIN) continue;
    const thin: number[] = [start];
    const roots = new Set<number>();
    owners[start] = FIRST_PLACE;
    // The list grows while it is gone through.
    for (const at of thin) {
      checkpoint(8);
      hasNeighbour(grid, at, (pixel) => {
        const owner = known.at(pixel);
        if (owner >= 0) roots.add(pixel);
        else if (owner === THIN) {
          owners[pixel] = FIRST_PLACE - thin.length;
          thin.push(pixel);
        }
        return false;
      });
    }
    necks.push(...necksAmong(grid, thin, owners, stretchesOf(grid, owners, [...roots]), radius));
  }
  return necks;
}

/** Joins the deepest pixels first: one that joins two roots is where a neck is narrowest. */
function necksAmong(
  grid: Grid,
  thin: readonly number[],
  owners: Int32Array,
  { of: stretchOf, count }: Stretches,
  radius: number,
): Neck[] {
  if (count < 2) return [];
  const nearest = new NearestOther(grid, (pixel) => owners[pixel] === BEYOND, Math.ceil(radius) + 1);
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
    hasNeighbour(grid, at, (pixel) => {
      const owner = defined(owners[pixel]);
      if (owner === BEYOND) return false;
      const stretch = stretchOf.get(pixel);
      beside.push(stretch === undefined ? FIRST_PLACE - owner : thin.length + stretch);
      return false;
    });
    if (!parts.add(i, beside) || depth(i) > radius - SURELY) continue;
    const isWithIt = parts.with(i);
    const middle = thin.filter((pixel, j) => isWithIt(j) && isDeepest(grid, owners, pixel, depthAt));
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
function stretchesOf({ width }: Grid, owners: Int32Array, roots: readonly number[]): Stretches {
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

/** Whether in some direction neither of its neighbours is farther from what is not in the set. */
function isDeepest({ width }: Grid, owners: Int32Array, at: number, depthAt: (pixel: number) => number): boolean {
  const own = depthAt(at);
  const isLower = (pixel: number): boolean => (owners[pixel] ?? BEYOND) === BEYOND || depthAt(pixel) <= own;
  return [1, width, width + 1, width - 1].some((step) => isLower(at - step) && isLower(at + step));
}

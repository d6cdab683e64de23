/**
 * Necks of sets of pixels: what is too thin, and joins two places of its set that are not. No disc of the least width
 * passes them, though what lies on either side is wide.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { Bitmap } from '../bits/bitmap';
import type { Grid } from '../labels/box-blur';
import { Joined } from '../layers/components';
import { hasNeighbour } from '../layers/discs';
import { NearestOther } from './nearest-other';
import { Owners, THIN } from './neck-owners';

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

/** The thin pixels that are connected, each with its place in their order. */
type ThinPart = ReadonlyMap<number, number>;

function thinNecks(set: Bitmap, known: Owners, radius: number): Neck[] {
  const necks: Neck[] = [];
  const seen = new Bitmap(set);
  for (const start of known.thin) {
    if (seen.has(start)) continue;
    const part = new Map([[start, 0]]);
    const roots = new Set<number>();
    // The list grows while it is gone through.
    for (const at of part.keys()) {
      checkpoint(8);
      seen.add(at);
      hasNeighbour(set, at, (pixel) => {
        const owner = known.at(pixel);
        if (owner >= 0) roots.add(pixel);
        else if (owner === THIN && !part.has(pixel)) part.set(pixel, part.size);
        return false;
      });
    }
    necks.push(...necksAmong(set, part, stretchesOf(set, known, [...roots]), radius));
  }
  return necks;
}

/** Joins the deepest pixels first: one that joins two roots is where a neck is narrowest. */
function necksAmong(set: Bitmap, part: ThinPart, { of: stretchOf, count }: Stretches, radius: number): Neck[] {
  if (count < 2) return [];
  const thin = [...part.keys()];
  const nearest = new NearestOther(set, (pixel) => !set.has(pixel), Math.ceil(radius) + 1);
  const depths = Float64Array.from(thin, (pixel) => nearest.of(pixel).distance);
  const depth = (i: number): number => defined(depths[i]);
  const depthAt = (pixel: number): number => {
    const i = part.get(pixel);
    return i === undefined ? Infinity : depth(i);
  };
  const joined = new Joining(thin.length, count);
  const necks: Neck[] = [];
  for (const i of [...thin.keys()].sort((a, b) => depth(b) - depth(a))) {
    const at = defined(thin[i]);
    const beside: number[] = [];
    hasNeighbour(set, at, (pixel) => {
      const stretch = stretchOf.get(pixel);
      const place = stretch === undefined ? part.get(pixel) : thin.length + stretch;
      if (place !== undefined) beside.push(place);
      return false;
    });
    if (!joined.add(i, beside) || depth(i) > radius - SURELY) continue;
    const isWithIt = joined.with(i);
    const middle = thin.filter((pixel, j) => isWithIt(j) && isDeepest(set, pixel, depthAt));
    necks.push({ waist: at, depth: depth(i), beside: nearest.of(at).pixel, middle: [at, ...middle] });
  }
  return necks;
}

/** Pixels that are joined one by one, and which of what they hang on each group has reached. */
class Joining {
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
function stretchesOf({ width }: Grid, known: Owners, roots: readonly number[]): Stretches {
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
          if (of.get(other) !== -1 || known.at(other) !== known.at(first)) continue;
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
function isDeepest(set: Bitmap, at: number, depthAt: (pixel: number) => number): boolean {
  const own = depthAt(at);
  const all = set.width * set.height;
  const isLower = (pixel: number): boolean => pixel < 0 || pixel >= all || !set.has(pixel) || depthAt(pixel) <= own;
  return [1, set.width, set.width + 1, set.width - 1].some((step) => isLower(at - step) && isLower(at + step));
}

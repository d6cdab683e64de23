/** The curves of several chains, numbered through, and the boxes round them. */

import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve } from '../base/curve-types';
import { memoizeByIdentity } from '../base/derived-facts';
import type { Box } from '../base/polygon-types';
import { DRAWN_ALIKE } from '../base/tolerances';
import { distance, dot, subtract, vectorLength } from '../base/vector';
import { tangentAt } from './evaluate';
import { roughBoundsOf } from './measure';

export type CurveChain = readonly Curve[];

export interface LocatedCurve {
  readonly chain: number;
  readonly index: number;
  readonly curve: Curve;
  readonly box: Box;
}

/** Boxes in mm. */
export interface ChainBoxes {
  /** Round all of it. */
  readonly whole: Box;
  /** Round each of its curves, not the least ones: the least x and y of each, its greatest x and y. */
  readonly sides: Float64Array;
}

/** A chain is met again after each edit, so its boxes are remembered. */
export const boxesOfChain = memoizeByIdentity('boxes of a chain', (chain: readonly Curve[]): ChainBoxes => {
  checkpoint(4 + 10 * chain.length);
  const sides = new Float64Array(4 * chain.length);
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  chain.forEach((curve, i) => {
    const { minX, minY, maxX, maxY } = roughBoundsOf(curve);
    sides[4 * i] = minX;
    sides[4 * i + 1] = minY;
    sides[4 * i + 2] = maxX;
    sides[4 * i + 3] = maxY;
    [left, top, right, bottom] = [
      Math.min(left, minX),
      Math.min(top, minY),
      Math.max(right, maxX),
      Math.max(bottom, maxY),
    ];
  });
  return { whole: { minX: left, minY: top, maxX: right, maxY: bottom }, sides };
});

function boxAt(sides: Float64Array, number: number): Box {
  const [minX, minY] = [defined(sides[4 * number]), defined(sides[4 * number + 1])];
  return { minX, minY, maxX: defined(sides[4 * number + 2]), maxY: defined(sides[4 * number + 3]) };
}

/** mm: lines nearer than this are one cut; coordinates are commonly written to two or three decimals. */
export const COINCIDENCE_TOLERANCE = DRAWN_ALIKE;

/** The cosine of the angle beyond which neighbours in a chain do not turn back on each other. */
const MIN_CONTINUATION_COSINE = -0.98;

export class CurveTable {
  readonly count: number;
  private readonly chainOf: Int32Array;
  /** The number of each chain's first curve. */
  private readonly start: Int32Array;

  private readonly chains: readonly CurveChain[];

  constructor(chains: readonly CurveChain[]) {
    this.chains = chains;

    this.start = new Int32Array(chains.length + 1);
    chains.forEach((chain, i) => (this.start[i + 1] = defined(this.start[i]) + chain.length));
    this.count = defined(this.start[chains.length]);
    this.chainOf = new Int32Array(this.count);
    chains.forEach((_, i) => this.chainOf.fill(i, this.start[i], this.start[i + 1]));
  }

  curve(number: number): Curve {
    const chain = defined(this.chainOf[number]);
    return defined(defined(this.chains[chain])[number - defined(this.start[chain])]);
  }

  located(number: number): LocatedCurve {
    const chain = defined(this.chainOf[number]);
    const index = number - defined(this.start[chain]);
    return {
      chain,
      index,
      curve: this.curve(number),
      box: boxAt(boxesOfChain(defined(this.chains[chain])).sides, index),
    };
  }

  /** Of the boxes of all curves, one after the other. */
  sides(): Float64Array {
    const sides = new Float64Array(4 * this.count);
    this.chains.forEach((chain, i) => sides.set(boxesOfChain(chain).sides, 4 * defined(this.start[i])));
    return sides;
  }

  /**
   * Whether the two, given in their order, follow each other in one chain without turning back: the common case, told
   * without any search.
   */
  part(a: number, b: number): boolean {
    const chain = defined(this.chainOf[a]);
    if (chain !== this.chainOf[b]) return false;
    const [first, end] = [defined(this.start[chain]), defined(this.start[chain + 1])];
    if (end - first < 3) return false;
    const follows = b === a + 1;
    const closes = a === first && b === end - 1;
    if (!follows && !closes) return false;
    return goesOn(this.curve(follows ? a : b), this.curve(follows ? b : a));
  }
}

function goesOn(before: Curve, after: Curve): boolean {
  if (distance(before.end, after.start) >= COINCIDENCE_TOLERANCE) return false;
  if (before.kind === 'line' && after.kind === 'line') {
    const [one, other] = [subtract(before.end, before.start), subtract(after.end, after.start)];
    const sizes = vectorLength(one) * vectorLength(other);
    if (sizes > 0) return dot(one, other) > MIN_CONTINUATION_COSINE * sizes;
  }
  return dot(tangentAt(before, 1), tangentAt(after, 0)) > MIN_CONTINUATION_COSINE;
}

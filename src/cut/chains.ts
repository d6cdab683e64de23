/** Chains of curves end to end. Millimetres. */
import { defined } from '../base/defined';
import type { Curve, Point } from '../geometry/base/curve-types';
import { translation } from '../geometry/base/matrix';
import type { Box, Ring } from '../geometry/base/polygon-types';
import { joinBoxes } from '../geometry/base/ring';
import { FLATTENING } from '../geometry/base/tolerances';
import { flattenSubpath } from '../geometry/curve/flatten';
import { boundsOf, lengthOf, subCurve, transformCurve } from '../geometry/curve/index';

export type Chain = readonly Curve[];

export function lengthOfChain(chain: Chain): number {
  return chain.reduce((sum, curve) => sum + lengthOf(curve), 0);
}

export function boxOfChain(chain: Chain): Box {
  return joinBoxes(chain.map(boundsOf));
}

export function moveChain(chain: Chain, by: Point): Curve[] {
  const matrix = translation(by.x, by.y);
  return chain.map((curve) => transformCurve(curve, matrix));
}

/** A closed chain, begun at another of its joints. */
export function beginAt(chain: Chain, joint: number): Chain {
  return joint === 0 ? chain : [...chain.slice(joint), ...chain.slice(0, joint)];
}

/** Its first so many mm. */
export function headOf(chain: Chain, length: number): Curve[] {
  const head: Curve[] = [];
  let left = length;
  for (const curve of chain) {
    if (!(left > 0)) break;
    const own = lengthOf(curve);
    head.push(own <= left ? curve : subCurve(curve, 0, parameterAt(curve, left)));
    left -= own;
  }
  return head;
}

/** The parameter at which a curve has run so many mm, by halving. */
function parameterAt(curve: Curve, length: number): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (lengthOf(subCurve(curve, 0, middle)) < length) low = middle;
    else high = middle;
  }
  return high;
}

/** Straight edges in its place; a closed chain's last point is not the first again. */
export function ringOfChain(chain: Chain, tolerance = FLATTENING): Ring {
  return flattenSubpath(chain, tolerance);
}

export function chainOfRing(ring: Ring): Curve[] {
  const count = ring.length / 2;
  const at = (i: number): Point => ({ x: defined(ring[2 * (i % count)]), y: defined(ring[2 * (i % count) + 1]) });
  return Array.from({ length: count }, (_, i) => ({ kind: 'line', start: at(i), end: at(i + 1) }));
}

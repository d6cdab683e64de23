/** Where a ring leaves a square of 10 mm and comes back to it; worked out by hand. */
import { describe, expect, it } from 'vitest';
import { outerChains } from '../../../../src/edits/opening/splice/boundary-crossings';
import type { Curve } from '../../../../src/geometry/base/curve-types';
import type { Ring } from '../../../../src/geometry/base/polygon-types';

const box = (x0: number, y0: number, x1: number, y1: number): Ring => Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1);

const corners = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 10 },
  { x: 0, y: 10 },
];
const square = corners.map((start, i): Curve => ({ kind: 'line', start, end: corners[(i + 1) % 4]! }));
const inside = [{ outer: box(0, 0, 10, 10), holes: [] }];
const chains = (ring: Ring) => outerChains(ring, [square], inside);

describe('the stretches of a ring outside a shape', () => {
  it('is one where the ring reaches over one edge', () => {
    const [only, ...others] = chains(box(9, 2, 11, 8));
    expect(others).toEqual([]);
    expect(only?.from).toEqual({ subpath: 0, curve: 1, t: 0.2 });
    expect(only?.to).toEqual({ subpath: 0, curve: 1, t: 0.8 });
    expect(only?.points).toEqual([
      { x: 10, y: 2 },
      { x: 11, y: 2 },
      { x: 11, y: 8 },
      { x: 10, y: 8 },
    ]);
  });

  it('goes round a corner', () => {
    const [only] = chains(box(9, -1, 11, 5));
    expect([only?.from.curve, only?.to.curve].sort()).toEqual([0, 1]);
    expect(only?.points).toHaveLength(5);
  });

  it('are two where it reaches over two sides', () => {
    expect(chains(box(-1, 4, 11, 6))).toHaveLength(2);
  });

  it('is none where it stays within, or runs along the edge', () => {
    expect(chains(box(2, 2, 8, 8))).toEqual([]);
    expect(chains(box(5, 2, 10.004, 8))).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestOrder, costOf, movedLayers, type OrderQuestion } from '../../../src/stack/order/best-order';
import { isAllowed, permutations } from './permutations';

/** A cost for each layer and set of later layers, and some layers that must come after others. */
const question: fc.Arbitrary<OrderQuestion> = fc.integer({ min: 1, max: 6 }).chain((count) =>
  fc
    .record({
      costs: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: count << count, maxLength: count << count }),
      ties: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: count << count, maxLength: count << count }),
      after: fc.array(fc.integer({ min: 0, max: (1 << count) - 1 }), { minLength: count, maxLength: count }),
      free: fc.boolean(),
    })
    .map(({ costs, ties, after, free }) => ({
      count,
      after: after.map((set, layer) => (free ? 0 : set & ~((2 << layer) - 1))),
      cost: (layer, later) => costs[(layer << count) | later] as number,
      tie: (layer, later) => ties[(layer << count) | later] as number,
    })),
);

const swapped = (order: readonly number[]): number =>
  order.reduce((sum, layer, i) => sum + order.slice(i + 1).filter((later) => later < layer).length, 0);

describe('the best order', () => {
  it('is that of all orders that are tried one by one', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const { count, after, cost, tie } = asked;
        const worth = (order: readonly number[]) => [costOf(order, cost), costOf(order, tie), swapped(order)];
        const all = permutations(count).filter((order) => isAllowed(order, after));
        const [least] = all.map(worth).sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]! || a[2]! - b[2]!);
        const best = bestOrder(asked);
        expect(isAllowed(best, after)).toBe(true);
        expect(worth(best)).toEqual(least);
      }),
      { numRuns: 200 },
    );
  });

  it('is the present one where all cost the same', () => {
    expect(bestOrder({ count: 5, after: [0, 0, 0, 0, 0], cost: () => 1, tie: () => 0 })).toEqual([0, 1, 2, 3, 4]);
  });

  it('of sixteen layers is found too: here each wants to be under all that have a lower number', () => {
    const count = 16;
    const cost = (layer: number, later: number) => layer - [...permutationBits(later & ((1 << layer) - 1))].length;
    const order = bestOrder({ count, after: Array.from({ length: count }, () => 0), cost, tie: () => 0 });
    expect(order).toEqual(Array.from({ length: count }, (_, i) => count - 1 - i));
  });
});

function* permutationBits(set: number): Iterable<number> {
  for (let rest = set; rest !== 0; rest &= rest - 1) yield rest & -rest;
}

describe('the layers that move', () => {
  it.each([
    [[0, 1, 2, 3], []],
    [[1, 2, 3, 0], [0]],
    [[3, 0, 1, 2], [3]],
    [
      [0, 3, 2, 1, 4],
      [2, 1],
    ],
  ])('to %j are as few as can be', (order, moved) => {
    expect(movedLayers(order)).toHaveLength(moved.length);
    const stays = order.filter((layer) => !movedLayers(order).includes(layer));
    expect(stays).toEqual([...stays].sort((a, b) => a - b));
  });
});

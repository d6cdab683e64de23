import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastLoss } from '../../../src/sheet/layer/least-loss';

type Losses = readonly Float64Array[];

const table = (rows: readonly (readonly number[])[]): Losses =>
  rows.map((row, i) => Float64Array.from(row, (loss, k) => (i === k ? 0 : loss)));
const square = (size: number) =>
  fc
    .array(fc.array(fc.oneof(fc.constant(0), fc.nat(9)), { minLength: size, maxLength: size }), {
      minLength: size,
      maxLength: size,
    })
    .map(table);

function lossOf(losses: Losses, order: readonly number[]): number {
  return order.reduce(
    (sum, one, place) => order.slice(place + 1).reduce((rest, other) => rest + losses[one]![other]!, sum),
    0,
  );
}

function* permutations(items: readonly number[]): Iterable<number[]> {
  if (items.length === 0) yield [];
  for (const first of items)
    for (const rest of permutations(items.filter((item) => item !== first))) yield [first, ...rest];
}

describe('an order that loses least', () => {
  it('is the best of all orders', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }).chain(square), (losses) => {
        const order = leastLoss(losses);
        const all = [...permutations(losses.map((_, i) => i))].map((each) => lossOf(losses, each));
        expect([...order].sort()).toEqual(losses.map((_, i) => i));
        expect(lossOf(losses, order)).toBe(Math.min(...all));
      }),
      { numRuns: 150 },
    );
  });

  it('leaves things as they are where nothing is lost', () => {
    expect(leastLoss(table([0, 1, 2, 3].map(() => [0, 0, 0, 0])))).toEqual([0, 1, 2, 3]);
  });

  it('loses nothing of many where it need not', () => {
    const losses = table(Array.from({ length: 30 }, (_, i) => Array.from({ length: 30 }, (__, k) => (k > i ? 1 : 0))));
    expect(lossOf(losses, leastLoss(losses))).toBe(0);
  });

  it('breaks one bond of a large circle, the weakest', () => {
    const size = 24;
    const losses = table(
      Array.from({ length: size }, (_, i) =>
        Array.from({ length: size }, (__, k) => (k === (i + 1) % size ? 2 + ((i * 7) % size) : 0)),
      ),
    );
    expect(lossOf(losses, leastLoss(losses))).toBe(2);
  });
});

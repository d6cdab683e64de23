/** The best of all orders in which layers may be sprayed, by dynamic programming over sets. Sets are bit masks of layers. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';

/** The time goes as 2^k · k, and so does the memory: 16 layers take about a second. */
export const MAX_ORDERED_LAYERS = 16;

export interface OrderQuestion {
  /** How many layers there are, at most `MAX_ORDERED_LAYERS`; their numbers are their places in the present order. */
  readonly count: number;
  /** For each layer those that must be sprayed after it. All of them come after it in the present order too. */
  readonly after: readonly number[];
  /** What a layer costs when exactly the layers of the set are sprayed after it. */
  cost(layer: number, later: number): number;
  /** The same, to choose between orders of equal cost. */
  tie(layer: number, later: number): number;
}

/** The layers, first sprayed first. */
export type Order = readonly number[];

/**
 * The allowed order of least cost. Of several the one with the fewest ties, then that in which the fewest pairs of layers
 * have changed places. The layers that are sprayed last are chosen first: what is known of a set of them is the least
 * that they cost among themselves, in whatever order (Bellman 1962 and Held & Karp 1962, for sequences).
 */
export function bestOrder({ count, after, cost, tie }: OrderQuestion): Order {
  const sets = 1 << count;
  const costs = new Float64Array(sets).fill(Infinity);
  const ties = new Float64Array(sets);
  const swaps = new Uint16Array(sets);
  const first = new Int8Array(sets);
  costs[0] = 0;
  for (let set = 0; set < sets; set += 1) {
    if (costs[set] === Infinity) continue;
    checkpoint(count);
    for (let layer = 0; layer < count; layer += 1) {
      const bit = 1 << layer;
      if ((set & bit) !== 0 || (defined(after[layer]) & ~set) !== 0) continue;
      const next = set | bit;
      const spent = defined(costs[set]) + cost(layer, set);
      const even = defined(ties[set]) + tie(layer, set);
      const swapped = defined(swaps[set]) + bitsOf(set & (bit - 1));
      const difference = spent - defined(costs[next]) || even - defined(ties[next]) || swapped - defined(swaps[next]);
      if (difference >= 0) continue;
      costs[next] = spent;
      ties[next] = even;
      swaps[next] = swapped;
      first[next] = layer;
    }
  }
  const order: number[] = [];
  for (let set = sets - 1; set !== 0; set &= ~(1 << defined(first[set]))) order.push(defined(first[set]));
  return order;
}

/**
 * What an order costs in all.
 * @param behind those that are sprayed later than all of it
 */
export function costOf(order: Order, cost: OrderQuestion['cost'], behind = 0): number {
  let later = behind;
  let sum = 0;
  for (const layer of order.toReversed()) {
    sum += cost(layer, later);
    later |= 1 << layer;
  }
  return sum;
}

/** The fewest layers that must be taken out and put in elsewhere: all but a longest run that keeps its order. */
export function movedLayers(order: Order): number[] {
  const runs: number[][] = [];
  for (const layer of order) {
    const before = runs.filter((run) => defined(run.at(-1)) < layer);
    runs.push([...longest(before), layer]);
  }
  const stays = new Set(longest(runs));
  return order.filter((layer) => !stays.has(layer));
}

function longest(runs: readonly number[][]): number[] {
  return runs.reduce((most, run) => (run.length > most.length ? run : most), []);
}

export function bitsOf(set: number): number {
  let bits = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) bits += 1;
  return bits;
}

/** An order of things, some of which should come before others, that breaks as little of this as can be. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';

/** So many are put in order exactly: the work doubles with each. */
const MAX_EXACT = 14;

/**
 * @param losses of each, what is lost where one of the others comes after it: 0 or more
 * @returns their numbers in order; of several orders that lose the same, the first by number
 */
export function leastLoss(losses: readonly Float64Array[]): number[] {
  const left = losses.map((_, index) => index);
  const free = takeFree(losses, left);
  return [...free, ...(left.length <= MAX_EXACT ? exact : greedy)(losses, left)];
}

const lossOf = (losses: readonly Float64Array[], one: number, after: readonly number[]): number =>
  after.reduce((sum, other) => sum + defined(defined(losses[one])[other]), 0);

/** Takes out of a list, one by one, what loses nothing by coming next: there is an order without loss that begins so. */
function takeFree(losses: readonly Float64Array[], left: number[]): number[] {
  const taken: number[] = [];
  for (;;) {
    const next = left.findIndex((one) => lossOf(losses, one, left) === 0);
    if (next < 0) return taken;
    taken.push(...left.splice(next, 1));
  }
}

/** By what is lost at the least after each set of them has come (Held and Karp, 1962). */
function exact(losses: readonly Float64Array[], items: readonly number[]): number[] {
  const all = 2 ** items.length - 1;
  const rest = new Float64Array(all + 1);
  const costs = (placed: number): number[] => {
    const left = items.filter((_, i) => (placed & (1 << i)) === 0);
    return items.map((one, i) =>
      placed & (1 << i) ? Infinity : lossOf(losses, one, left) + defined(rest[placed | (1 << i)]),
    );
  };
  for (let placed = all - 1; placed >= 0; placed -= 1) {
    checkpoint(items.length);
    rest[placed] = Math.min(...costs(placed));
  }
  const order: number[] = [];
  for (let placed = 0; placed < all; ) {
    const least = costs(placed);
    const next = least.indexOf(Math.min(...least));
    order.push(defined(items[next]));
    placed |= 1 << next;
  }
  return order;
}

/** Next comes what loses least, less what the others would lose by coming before it (Eades, Lin and Smyth, 1993). */
function greedy(losses: readonly Float64Array[], items: readonly number[]): number[] {
  const left = [...items];
  const order: number[] = [];
  while (left.length > 0) {
    const price = left.map(
      (one) => lossOf(losses, one, left) - left.reduce((sum, other) => sum + defined(defined(losses[other])[one]), 0),
    );
    order.push(...left.splice(price.indexOf(Math.min(...price)), 1), ...takeFree(losses, left));
  }
  return order;
}

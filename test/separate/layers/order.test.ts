import { describe, expect, it } from 'vitest';
import { holesOf } from '../../../src/separate/layers/holes';
import { paintingOrder } from '../../../src/separate/layers/order';
import type { LabelMap, Rgb } from '../../../src/separate/raster';
import { blots } from '../pictures';

const COLOURS: Rgb[] = [
  [240, 230, 200],
  [90, 150, 170],
  [40, 90, 70],
  [220, 140, 40],
  [20, 20, 30],
  [160, 60, 90],
];

function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length === 0) yield [];
  for (const item of items)
    for (const rest of permutations(items.filter((each) => each !== item))) yield [item, ...rest];
}

/** Islands of a colour that the later ones leave, by flooding its holes. */
function islandsLeft({ width, height, labels }: LabelMap, label: number, later: ReadonlySet<number>): number {
  const seen = new Set<number>();
  let islands = 0;
  for (let start = 0; start < labels.length; start += 1) {
    if (labels[start] === label || seen.has(start)) continue;
    const open = [start];
    seen.add(start);
    let [touches, covered] = [false, true];
    for (const at of open) {
      const [x, y] = [at % width, Math.floor(at / width)];
      if (!later.has(labels[at]!)) covered = false;
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) touches = true;
      const beside = [x > 0 && at - 1, x + 1 < width && at + 1, y > 0 && at - width, y + 1 < height && at + width];
      for (const other of beside) {
        if (other === false || seen.has(other) || labels[other] === label) continue;
        seen.add(other);
        open.push(other);
      }
    }
    if (!touches && !covered) islands += 1;
  }
  return islands;
}

describe('the painting order', () => {
  it.each([1, 2, 3, 4])('leaves as few islands as any of all orders (%d)', (seed) => {
    const map = blots(60, 50, 5, 70, seed);
    const { order, ordered, alone } = paintingOrder(map, COLOURS, { unpainted: new Set() });
    const cost = (each: readonly number[]): number =>
      each.reduce((sum, label, i) => sum + islandsLeft(map, label, new Set(each.slice(i + 1))), 0);
    const least = Math.min(...[...permutations([0, 1, 2, 3, 4])].map(cost));
    expect(ordered).toBe(least);
    expect(cost(order)).toBe(least);
    expect(alone).toBe([0, 1, 2, 3, 4].reduce((sum, label) => sum + islandsLeft(map, label, new Set()), 0));
  });

  it('sprays light colours first where it makes no difference', () => {
    const halves = { width: 4, height: 2, labels: Uint8Array.from([4, 4, 0, 0, 4, 4, 0, 0]) };
    expect(paintingOrder(halves, COLOURS, { unpainted: new Set() }).order).toEqual([0, 4]);
  });

  it('never paints what is left unpainted, which covers no island', () => {
    const ring = Uint8Array.from([1, 1, 1, 1, 0, 1, 1, 1, 1]);
    const map = { width: 3, height: 3, labels: ring };
    expect(paintingOrder(map, COLOURS, { unpainted: new Set() })).toMatchObject({ order: [1, 0], ordered: 0 });
    expect(paintingOrder(map, COLOURS, { unpainted: new Set([0]) })).toEqual({ order: [1], alone: 1, ordered: 1 });
  });

  it('sprays an outline last', () => {
    const map = blots(40, 40, 4, 30, 9);
    expect(paintingOrder(map, COLOURS, { unpainted: new Set(), last: 1 }).order.at(-1)).toBe(1);
  });

  it('finds the holes of a ring with all that is in them', () => {
    const labels = Uint8Array.from([0, 0, 0, 0, 0, 0, 1, 1, 1, 0, 0, 1, 2, 1, 0, 0, 1, 1, 1, 0, 0, 0, 0, 0, 0]);
    const holes = holesOf({ width: 5, height: 5, labels }, 3);
    expect(holes.map((each) => each.map((hole) => [[...hole.labels].sort(), hole.size]))).toEqual([
      [[[1, 2], 9]],
      [[[2], 1]],
      [],
    ]);
  });
});

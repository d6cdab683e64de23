import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check, type Report } from '../../../src/engine/index';
import { endsAtEdge } from '../../../src/sheet/sheet-edge';
import { isCoveredByLater } from '../../../src/stack/covered-by-later';
import { fewestIslands } from '../../../src/stack/order/index';
import { layersAfter } from '../../../src/stack/order/print-order';
import type { StackLayer } from '../../../src/stack/stack';
import { type MadeLayer, madeStack, svgOf } from './made-stacks';
import { isAllowed, permutations } from './permutations';
import { farChanges } from './print-changes';

const SLIP = 0.5;

const stackOf = (svg: string): readonly StackLayer[] => check(svg).stack.layers;

const paintedOf = (layers: readonly StackLayer[]) =>
  layers.map(({ sheet }) => ({ painted: sheet.openings, paint: sheet.layer.paint }));

/** Islands that later paint does not cover: asked of each island, for each order anew. */
function islandsBy(layers: readonly StackLayer[]): (order: readonly number[]) => number {
  const memory = new Map<number, number>();
  const left = (layer: number, later: readonly number[]): number => {
    const key = later.reduce((set, each) => set | (1 << each), layer << layers.length);
    const known = memory.get(key);
    if (known !== undefined) return known;
    const paint = later.flatMap((each) => layers[each]!.sheet.openings);
    const { sheet } = layers[layer]!;
    const islands = sheet.pieces.filter((piece) => piece.island && !endsAtEdge(sheet, piece));
    const count = islands.filter(({ polygon }) => !isCoveredByLater([polygon], paint, SLIP)).length;
    memory.set(key, count);
    return count;
  };
  return (order) => order.reduce((sum, layer, i) => sum + left(layer, order.slice(i + 1)), 0);
}

/** As the findings have it: those of islands that say of no later paint. */
function uncovered({ complete }: Report): number {
  return complete.filter(({ subject }) => subject?.kind === 'island' && !subject.cover).length;
}

describe('the order with the fewest islands', () => {
  it('is the best of all allowed ones, tried one by one', { timeout: 120_000 }, () => {
    let better = 0;
    fc.assert(
      fc.property(madeStack, (made) => {
        const report = check(svgOf(made));
        const { layers } = report.stack;
        const after = layersAfter(paintedOf(layers), SLIP);
        const islands = islandsBy(layers);
        const allowed = permutations(layers.length).filter((order) => isAllowed(order, after));
        const present = layers.map((_, i) => i);
        const best = fewestIslands(layers, { slip: SLIP });
        expect(isAllowed(best.order, after)).toBe(true);
        expect(best.before).toBe(islands(present));
        expect(best.before).toBe(uncovered(report));
        expect(best.after).toBe(islands(best.order));
        expect(best.after).toBe(Math.min(...allowed.map(islands)));
        if (best.after === best.before) expect(best.order).toEqual(present);
        else better += 1;
      }),
      { numRuns: 40 },
    );
    expect(better).toBeGreaterThan(3);
  });

  it('prints the same picture outside the slip, as a renderer shows it', { timeout: 120_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(madeStack, async (made) => {
        const after = layersAfter(paintedOf(stackOf(svgOf(made))), SLIP);
        const allowed = permutations(made.length).filter((order) => isAllowed(order, after));
        const some = allowed.filter((_, i) => i % Math.ceil(allowed.length / 6) === 0);
        const now = svgOf(made);
        for (const order of some) {
          expect(await farChanges(now, svgOf(made, order), SLIP)).toBe(0);
        }
      }),
      { numRuns: 25 },
    );
  });
});

const paints = ['#aa2200', '#ffee88', '#224466'];
const three = (...shapes: string[]): MadeLayer[] => shapes.map((d, i) => ({ paint: paints[i]!, d }));
const RING = 'M4 4h16v16h-16zM8 8v8h8v-8z';

describe('which orders are allowed', () => {
  const after = (made: MadeLayer[], slip = SLIP) => layersAfter(paintedOf(stackOf(svgOf(made))), slip);

  it('all, where no two layers overlap', () => {
    expect(after(three(RING, 'M8 8h8v8h-8z', 'M22 4h4v16h-4z'))).toEqual([0, 0, 0]);
  });

  it('all, where one was extended under the other by the slip at most', () => {
    expect(after(three('M4 4h8.4v10h-8.4z', 'M12 4h8v10h-8z'))).toEqual([0, 0]);
    expect(after(three('M4 4h8.6v10h-8.6z', 'M12 4h8v10h-8z'))).toEqual([2, 0]);
  });

  it('not those that would hide a line, however thin it is', () => {
    expect(after(three('M4 4h16v16h-16z', 'M6 10h12v0.3h-12z'))).toEqual([2, 0]);
  });

  it('not those that would show what lies hidden under another layer, however thin it is', () => {
    expect(after(three('M6 10h12v0.3h-12z', 'M4 4h16v16h-16z'))).toEqual([2, 0]);
  });

  it('not those that would take a strip away from both sides', () => {
    const strip = 'M12 4h0.8v10h-0.8z';
    expect(after(three('M4 4h8.4v10h-8.4z', strip))).toEqual([0, 0]);
    expect(after(three('M4 4h8.4v10h-8.4z', 'M12.4 4h8v10h-8z', strip))).toEqual([4, 4, 0]);
  });

  it('any, of layers of one paint; and what a third layer covers asks for nothing', () => {
    const [under, over, cover] = ['M4 4h10v10h-10z', 'M10 4h10v10h-10z', 'M8 2h8v14h-8z'];
    expect(after([under, over].map((d) => ({ paint: '#aa2200', d })))).toEqual([0, 0]);
    expect(after(three(under, over, cover))).toEqual([4, 4, 0]);
  });
});

describe('a ring, what it holds, and a line beside it', () => {
  const inside = 'M8 8h8v8h-8z';
  const choose = (made: MadeLayer[], lightOverDark?: number) =>
    fewestIslands(stackOf(svgOf(made)), { slip: SLIP, ...(lightOverDark !== undefined && { lightOverDark }) });

  it('the ring goes first, and only what must be is moved', () => {
    expect(choose(three(inside, 'M22 4h4v16h-4z', RING))).toEqual({
      order: [2, 0, 1],
      moved: [2],
      islands: 1,
      before: 1,
      after: 0,
    });
  });

  it('stays as it is where nothing is gained', () => {
    expect(choose(three(RING, inside))).toEqual({ order: [0, 1], moved: [], islands: 1, before: 0, after: 0 });
  });

  it('light over dark costs what is stated', () => {
    const dark = [
      { paint: '#ffee88', d: inside },
      { paint: '#224466', d: RING },
    ];
    expect(choose(dark).order).toEqual([1, 0]);
    expect(choose(dark, 0.5).order).toEqual([1, 0]);
    expect(choose(dark, 1.5)).toMatchObject({ order: [0, 1], before: 1, after: 1 });
  });
});

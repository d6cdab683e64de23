/** Orders of stacks in which a colour has two sheets: those stay together, and count as one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits, check, type Report, reorderStack, sprayOrder } from '../../../src/engine/index';
import { fewestIslands, tooManyToOrder } from '../../../src/stack/order/index';
import { layersAfter } from '../../../src/stack/order/print-order';
import { layersIn, sprayUnits, unitsWith } from '../../../src/stack/order/spray-units';
import { type MadeLayer, madeStack, svgOf } from './made-stacks';
import { isAllowed, permutations } from './permutations';

const SLIP = 0.5;

/** The stack with one of its layers cut twice, the second sheet right behind the first. */
function doubled(made: readonly MadeLayer[], layer: number): string {
  return svgOf(made).replace(new RegExp(`<g id="layer-${layer}".*?</g>`, 's'), (group) => {
    return group + group.replace(`"layer-${layer}"`, `"again" data-tombolo-with="layer-${layer}"`);
  });
}

describe('layers that are sprayed right after each other', () => {
  it('are those that follow each other in one painted region', () => {
    expect(sprayUnits([0, 1, 1, 3])).toEqual([[0], [1, 2], [3]]);
    expect(sprayUnits([0, 1, 0])).toEqual([[0], [1], [2]]);
    const units = [[0], [1, 2], [3]];
    expect(layersIn(units, 0b110)).toBe(0b1110);
    expect(unitsWith(units, 0b0101)).toBe(0b011);
  });

  it('count as one where there are many', () => {
    const pairs = (many: number) => Array.from({ length: 2 * many }, (_, i) => i - (i % 2));
    expect(tooManyToOrder(pairs(15))).toBeUndefined();
    expect(tooManyToOrder(pairs(16))).toBe('up to 30');
    expect(tooManyToOrder(Array.from({ length: 17 }, (_, i) => i))).toBe('up to 16');
  });

  it('stay together in the best of all orders in which they do', { timeout: 120_000 }, () => {
    let better = 0;
    fc.assert(
      fc.property(madeStack, fc.nat(), (made, which) => {
        fc.pre(made.length < 6);
        const { layers, firsts } = check(doubled(made, which % made.length)).stack;
        const first = which % made.length;
        expect(firsts[first + 1]).toBe(first);
        const best = fewestIslands(layers, { slip: SLIP }, firsts);
        const at = best.order.indexOf(first);
        expect(best.order[at + 1]).toBe(first + 1);
        const after = layersAfter(
          layers.map(({ sheet }) => ({ painted: sheet.openings, paint: sheet.layer.paint })),
          SLIP,
        );
        const together = permutations(layers.length).filter(
          (order) => order[order.indexOf(first) + 1] === first + 1 && isAllowed(order, after),
        );
        const islands = islandsOf(layers);
        expect(best.after).toBe(Math.min(...together.map(islands)));
        expect(best.before).toBe(islands(layers.map((_, i) => i)));
        if (best.after < best.before) better += 1;
      }),
      { numRuns: 25 },
    );
    expect(better).toBeGreaterThan(1);
  });

  it('are moved together in their file', () => {
    const ring = 'M4 4h16v16h-16zM8 8v8h8v-8z';
    const made = [
      { paint: '#ffee88', d: 'M8 8h8v8h-8z' },
      { paint: '#224466', d: ring },
    ];
    const text = doubled(made, 1);
    const report = check(text);
    const best = sprayOrder(report);
    expect(best).toMatchObject({ order: [1, 2, 0], moved: [0], before: 2, after: 0 });
    const names = ({ stack }: Report) => stack.layers.map(({ sheet }) => sheet.layer.name);
    const answer = reorderStack(report, undefined, [1, 2, 0]);
    if (typeof answer === 'string') throw new Error(answer);
    expect(names(check(applyEdits(text, answer.edits)))).toEqual(['layer-1', 'again', 'layer-0']);
  });
});

/** Islands that later paint does not cover: each order asked for as the present one of a stack without second sheets. */
function islandsOf(layers: Parameters<typeof fewestIslands>[0]): (order: readonly number[]) => number {
  return (order) => {
    const moved = order.map((layer) => layers[layer]!);
    return fewestIslands(moved, { slip: SLIP }).before;
  };
}

import { describe, expect, test } from 'vitest';
import { carryOver, FIRST_STATE, isFindingShown, isLayerShown } from '../../src/preview/bench-state';
import type { Stack, StackFinding, StackLayer } from '../../src/server/protocol';

const layer = (name: string): StackLayer => ({
  name, paint: '#000000', reading: 'openings', readingStated: true, openings: '', openingCount: 0, openingArea: 0,
  materialArea: 0, cutLength: 0, islands: [],
});

const stack = (version: number, names: readonly string[]): Stack => ({
  uri: 'file:///heron.svg', version, stencil: true, elapsed: 1, width: 10, height: 10, sizeStated: true,
  sheet: { minX: 0, minY: 0, maxX: 10, maxY: 10 }, layers: names.map(layer), findings: [],
});

const finding = (of: number | undefined): StackFinding => ({
  check: 'floating-island', severity: 'error', message: '', layer: of, at: undefined, measure: undefined,
  chord: undefined, from: 0, to: 0,
});

describe('what shows', () => {
  const reeds = stack(1, ['sun', 'reeds', 'heron']);

  test('all layers but those switched off, and their findings', () => {
    const state = { ...FIRST_STATE, hidden: ['reeds'] };
    expect([0, 1, 2].map((index) => isLayerShown(state, reeds, index))).toEqual([true, false, true]);
    expect(isFindingShown(state, reeds, finding(1))).toBe(false);
    expect(isFindingShown(state, reeds, finding(undefined))).toBe(true);
  });

  test('one sheet, whatever is switched off', () => {
    const state = { ...FIRST_STATE, mode: 'sheet', sheet: 1, hidden: ['reeds'] } as const;
    expect([0, 1, 2].map((index) => isLayerShown(state, reeds, index))).toEqual([false, true, false]);
  });

  test('the choice outlives new text, the chosen finding does not', () => {
    const state = { ...FIRST_STATE, mode: 'sheet', sheet: 2, hidden: ['sun'], selected: 4 } as const;
    expect(carryOver(state, reeds, stack(1, ['sun', 'reeds', 'heron']))).toEqual(state);
    expect(carryOver(state, reeds, stack(2, ['sun', 'heron']))).toEqual({ ...state, sheet: 1, selected: undefined });
    expect(carryOver(state, reeds, stack(3, [])).sheet).toBe(0);
  });
});

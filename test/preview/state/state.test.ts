import { describe, expect, it } from 'vitest';
import {
  type BenchState,
  carryOver,
  FIRST_STATE,
  isFindingShown,
  isLayerShown,
  layerKeys,
  NO_FILTER,
  restoredState,
} from '../../../src/preview/state/state';
import type { PreviewFinding } from '../../../src/protocol/index';
import type { FindingId } from '../../../src/report/finding-id';
import { madeStack } from '../made-stack';

const stack = (version: number, names: readonly string[]) => madeStack({ version, names });

const finding = (of: number | undefined): PreviewFinding => ({
  number: 1,
  id: '@1/floating-island/0' as FindingId,
  uri: 'file:///heron.svg',
  check: 'floating-island',
  severity: 'error',
  message: '',
  layer: of,
  at: undefined,
  measure: undefined,
  island: false,
  chord: undefined,
  from: 0,
  to: 0,
});

describe('what shows', () => {
  const reeds = stack(1, ['sun', 'reeds', 'heron']);

  it('all layers but those switched off, and their findings', () => {
    const state = { ...FIRST_STATE, hidden: ['reeds'] };
    expect([0, 1, 2].map((index) => isLayerShown(state, reeds, index))).toEqual([true, false, true]);
    expect(isFindingShown(state, reeds, finding(1))).toBe(false);
    expect(isFindingShown(state, reeds, finding(undefined))).toBe(true);
  });

  it('no findings of checks and layers that are left out', () => {
    const without = (filter: Partial<BenchState['filter']>) => ({
      ...FIRST_STATE,
      filter: { ...NO_FILTER, ...filter },
    });
    expect(isFindingShown(without({ checks: ['floating-island'] }), reeds, finding(undefined))).toBe(false);
    expect(isFindingShown(without({ checks: ['thin-bridge'] }), reeds, finding(1))).toBe(true);
    expect([0, 1].map((of) => isFindingShown(without({ layers: ['reeds'] }), reeds, finding(of)))).toEqual([
      true,
      false,
    ]);
  });

  it('one sheet, whatever is switched off', () => {
    const state = { ...FIRST_STATE, mode: 'sheet', sheet: 1, hidden: ['reeds'] } as const;
    expect([0, 1, 2].map((index) => isLayerShown(state, reeds, index))).toEqual([false, true, false]);
  });

  it('of layers with the same name each can be switched off by itself', () => {
    const twins = stack(1, ['sun', 'sun', 'heron', 'sun']);
    expect(layerKeys(twins)).toEqual(['sun', 'sun (2)', 'heron', 'sun (3)']);
    const state = { ...FIRST_STATE, hidden: ['sun (2)'] };
    expect([0, 1, 2, 3].map((index) => isLayerShown(state, twins, index))).toEqual([true, false, true, true]);
  });
});

describe('the choice', () => {
  const reeds = stack(1, ['sun', 'reeds', 'heron']);
  const state: BenchState = { ...FIRST_STATE, mode: 'sheet', sheet: 2, hidden: ['sun'], selected: 4 };

  it('outlives new text, and so does the chosen finding as long as it is there', () => {
    const found = { ...stack(2, ['sun', 'heron']), findings: [3, 4].map((number) => ({ ...finding(0), number })) };
    expect(carryOver(state, reeds, found)).toEqual({ ...state, sheet: 1 });
    expect(carryOver(state, reeds, stack(2, ['sun', 'heron']))).toEqual({ ...state, sheet: 1, selected: undefined });
    expect(carryOver(state, reeds, stack(3, [])).sheet).toBe(0);
  });

  it('stays with its sheet when the layers change their order', () => {
    expect(carryOver(state, reeds, stack(2, ['heron', 'sun', 'reeds'])).sheet).toBe(0);
  });

  it('that was kept is restored; whatever does not fit is as at first', () => {
    const slips = { sun: { x: 0.5, y: 0, turn: -1 } };
    const kept = {
      ...state,
      filter: { checks: ['bare-gap'], layers: [] },
      opacity: 0.5,
      apart: 0.2,
      ground: '#336699',
      slips,
      held: 'sun',
    };
    expect(restoredState(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
    for (const odd of [undefined, null, 'print', 7, []]) expect(restoredState(odd)).toEqual(FIRST_STATE);
    expect(
      restoredState({
        mode: 'stack',
        sheet: -1,
        hidden: [1, 'sun'],
        opacity: 7,
        ground: 'red"/>',
        slips: { sun: null, reeds: { x: 'a' } },
      }),
    ).toEqual({ ...FIRST_STATE, hidden: ['sun'] });
  });
});

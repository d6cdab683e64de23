import { describe, expect, it } from 'vitest';
import { readConfig } from '../../../src/engine/check/known-checks';
import { findingsOf, sheetOf } from '../stencils';

const bridges = (svg: string, settings = {}) => findingsOf('thin-bridge', svg, settings);
const bars = (gap: number) => sheetOf(`<path d="M20 20H40V50H20Z"/><path d="M${40 + gap} 20H70V50H${40 + gap}Z"/>`);

describe('thin-bridge', () => {
  it('names the width, the limit and both sides', () => {
    const [bridge, ...others] = bridges(bars(0.42));
    expect(others).toEqual([]);
    expect(bridge).toMatchObject({ severity: 'warning', measure: '0.42 mm', layer: 'stencil' });
    expect([...(bridge?.related ?? [])].sort()).toEqual(['V50', 'Z']);
    expect(bridge?.related).toContain(bridge?.text);
    expect(bridge?.message).toBe(
      'Bridge only 0.42 mm wide (minimum 0.80 mm for 0.3 mm card): it will tear or burn through.',
    );
  });

  it('is reported once for a long web, and for each of several', () => {
    expect(bridges(sheetOf('<path d="M10 10H90V30H10Z M10 30.5H90V50H10Z"/>'))).toHaveLength(1);
    expect(bridges(sheetOf('<path d="M10 10H30V90H10Z M30.5 10H50V90H30.5Z M50.5 10H70V90H50.5Z"/>'))).toHaveLength(2);
  });

  it('is an error where it alone holds a piece', () => {
    const tied = sheetOf('<path d="M30.3 20V30H40V50H20V30H29.7V20H10V60H50V20Z"/>');
    expect(bridges(tied)).toMatchObject([{ severity: 'error', measure: '0.60 mm' }]);
    expect(bridges(tied)[0]?.detail).toMatch(/It alone holds a piece of 40\d\.\d mm²,/);
  });

  it('follows the limit of the configuration, and the material', () => {
    expect(bridges(bars(0.42), { config: readConfig('{"limits": {"bridge": "0.4mm"}}').config })).toEqual([]);
    expect(bridges(bars(1.1), { config: readConfig('{"material": "paper-0.1"}').config })).toMatchObject([
      { measure: '1.10 mm' },
    ]);
  });

  it('loses the kerf', () => expect(bridges(bars(0.9), { kerf: 0.2 })).toMatchObject([{ measure: '0.70 mm' }]));

  it('lets wide enough ones, corners and the rim go', () => {
    expect(bridges(bars(0.81))).toEqual([]);
    expect(bridges(sheetOf('<path d="M20 20L80 50L20 80L45 50Z"/>'))).toEqual([]);
    expect(bridges(sheetOf('<path d="M0.5 20H40V50H0.5Z"/>'))).toEqual([]);
  });

  it('is a hint where two openings nearly meet in a point', () => {
    const point = (apart: number) => sheetOf(`<path d="M20 50H60V80H20Z M30 ${50 - apart}L10 20H50Z"/>`);
    expect(bridges(point(0.04))).toMatchObject([{ severity: 'hint', measure: '0.04 mm' }]);
    expect(bridges(point(0.04))[0]?.message).toBe(
      'Web only 0.04 mm wide (minimum 0.80 mm): two openings nearly meet. They will run together here.',
    );
    expect(bridges(point(0.06))).toMatchObject([{ severity: 'warning' }]);
    // A web of the same width that is long comes off in the hand, and one that holds a piece drops it.
    expect(bridges(bars(0.04))).toMatchObject([{ severity: 'warning' }]);
    // What is finer than any sheet that stands is gone, however long it is.
    const discs = (gap: number) => sheetOf(`<circle cx="25" cy="40" r="20"/><circle cx="${65 + gap}" cy="40" r="20"/>`);
    expect(bridges(discs(0.01))).toMatchObject([{ severity: 'hint', measure: '0.01 mm' }]);
    expect(bridges(discs(0.04))).toMatchObject([{ severity: 'warning' }]);
    const tied = sheetOf('<path d="M30.02 29.9V30H40V50H20V30H29.98V29.9H10V60H50V29.9Z"/>');
    expect(bridges(tied)).toMatchObject([{ severity: 'error' }]);
  });
});

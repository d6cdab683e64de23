import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { millimetres, rulerTicks, scaleBarLength } from '../../../src/preview/dom/ruler-ticks';

describe('rulers', () => {
  it('at true size there is a label for each 20 mm, and ticks between', () => {
    const ticks = rulerTicks(0, 40, 96 / 25.4);
    expect(ticks.filter(({ length }) => length === 'long').map(({ at }) => at)).toEqual([0, 20, 40]);
    expect(ticks.filter(({ length }) => length === 'middle').map(({ at }) => at)).toEqual([10, 30]);
    expect(ticks.map(({ at }) => at)).toContain(2);
  });

  it('labels never crowd, ticks never run together, at whatever scale', () => {
    const scales = fc.double({ min: 0.05, max: 2000, noNaN: true });
    const starts = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(scales, starts, (scale, from) => {
        const ticks = rulerTicks(from, from + 800 / scale, scale);
        expect(gap(ticks.filter(({ length }) => length === 'long').map(({ at }) => at * scale))).toBeGreaterThan(45);
        expect(gap(ticks.map(({ at }) => at * scale))).toBeGreaterThan(4.9);
        expect(ticks.length).toBeLessThan(200);
      }),
    );
  });

  it('the scale bar has a round length that fits', () => {
    expect(scaleBarLength(160, 96 / 25.4)).toBe(20);
    expect(scaleBarLength(160, 100)).toBe(1);
  });

  it('numbers carry no noise', () => {
    expect(millimetres(0.1 + 0.2)).toBe('0.3');
    expect(millimetres(50)).toBe('50');
    expect(millimetres(12.3456)).toBe('12.346');
  });
});

function gap(places: readonly number[]): number {
  return places.reduce(
    (least, place, i) => (i === 0 ? least : Math.min(least, place - (places[i - 1] ?? 0))),
    Infinity,
  );
}

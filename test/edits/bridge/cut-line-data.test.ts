import { describe, expect, it } from 'vitest';
import { cutLineData } from '../../../src/edits/bridge/cut-line-data';
import { type Strip, stripAlong } from '../../../src/edits/strip/strip';
import { IDENTITY } from '../../../src/geometry/base/matrix';
import { applyEdits } from '../../../src/text/text';

/** Upright, so many millimetres wide, about x = at. */
const strip = (at: number, width = 1): Strip => stripAlong({ x: at, y: -2 }, { x: at, y: 2 }, width, 0);

function cut(data: string, ...strips: readonly Strip[]): string | undefined {
  const line = { width: 1, cap: 'butt', miterLimit: 4 } as const;
  const manner = { decimals: 2, numbers: undefined, lined: true };
  const edits = cutLineData(data, { ...line, ...manner, strips, toFrame: IDENTITY } as Parameters<
    typeof cutLineData
  >[1]);
  return edits && applyEdits(data, edits);
}

describe('a closed line', () => {
  const square = 'M5 0H10V10H0V0Z';

  it('is opened at one strip and at two', () => {
    expect(cut(square, strip(7))).toBe('M7.5 0H10V10H0V0H5H6.5');
    expect(cut(square, strip(3), strip(7))?.match(/M/g)).toHaveLength(2);
  });

  it('is opened once where gaps meet over the place at which it begins', () => {
    expect(cut(square, strip(4.8), strip(5.5))?.match(/M/g)).toHaveLength(1);
    expect(cut(square, strip(4.8), strip(5.5))).toMatch(/^M6 0/);
  });
});

import { expect, test } from 'vitest';
import { formGlyphRow } from '../../../../src/edits/plan/design/glyph-row';

const box = (x: number, y: number, width: number, height: number) => ({
  minX: x,
  minY: y,
  maxX: x + width,
  maxY: y + height,
});

test('three counters side by side stand in a row, whatever their order', () => {
  const row = [box(0, 0, 4, 6), box(20, 1, 4, 6), box(10, -1, 4, 8)];
  expect(formGlyphRow(row)).toBe(true);
  expect(formGlyphRow([...row].reverse())).toBe(true);
  expect(formGlyphRow(row.slice(1))).toBe(false);
});

test('counters one above the other, of other heights or one in the other do not', () => {
  expect(formGlyphRow([box(0, 0, 4, 6), box(0, 10, 4, 6), box(0, 20, 4, 6)])).toBe(false);
  expect(formGlyphRow([box(0, 0, 4, 6), box(10, 0, 4, 2), box(20, 4, 4, 2)])).toBe(false);
  expect(formGlyphRow([box(0, 0, 9, 9), box(1, 1, 7, 7), box(2, 2, 5, 5)])).toBe(false);
});

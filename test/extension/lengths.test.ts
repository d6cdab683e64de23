import { describe, expect, it } from 'vitest';
import { likelyWidth, parseSides, withUnit } from '../../src/extension/setup/lengths';

describe('withUnit', () => {
  it.each([
    ['90', '90mm'],
    [' 12,5 ', '12.5mm'],
    ['6in', '6in'],
    ['14.8 cm', '14.8 cm'],
    ['wide', 'wide'],
    ['', ''],
  ])('%j becomes %j', (typed, length) => expect(withUnit(typed)).toBe(length));
});

describe('likelyWidth', () => {
  const pixels = (units: number) => (units * 25.4) / 96;

  it('is what the drawing states', () => expect(likelyWidth(147.9999, true)).toBe('148mm'));
  it('is as many millimetres as the drawing has units', () => expect(likelyWidth(pixels(90), false)).toBe('90mm'));
  it('is a postcard where the units can be no millimetres', () => {
    expect(likelyWidth(pixels(24000), false)).toBe('148mm');
    expect(likelyWidth(pixels(1), false)).toBe('148mm');
  });
});

describe('parseSides', () => {
  it.each([
    ['148 × 105', [148, 105]],
    ['148x105mm', [148, 105]],
    ['6in * 4in', [152.4, 101.6]],
    ['12,5 X 10', [12.5, 10]],
  ])('%j in mm', (typed, sides) => {
    const found = parseSides(typed);
    expect(found?.map((side) => Number(side.toFixed(6)))).toEqual(sides);
  });
  it.each(['148', '148 × ', '0 × 105', '148 × -5', '1 × 2 × 3', 'a × b'])('%j is no size', (typed) =>
    expect(parseSides(typed)).toBeUndefined(),
  );
});

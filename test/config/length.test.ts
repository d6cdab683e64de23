import { describe, expect, it } from 'vitest';
import { formatMillimetres, parseLength } from '../../src/config/length';

describe('parseLength', () => {
  // CSS Values and Units 4, "Absolute Lengths": 1in = 2.54cm = 96px, 6pc = 72pt = 1in, 40Q = 1cm.
  it.each([
    ['1in', 25.4],
    ['2.54cm', 25.4],
    ['96px', 25.4],
    ['6pc', 25.4],
    ['72pt', 25.4],
    ['40Q', 10],
    ['148mm', 148],
    [' .5 MM ', 0.5],
    ['1e1mm', 10],
    ['-2mm', -2],
  ])('%s is %f mm', (text, millimetres) => expect(parseLength(text)).toBeCloseTo(millimetres, 12));

  it.each(['', '5', 'mm', '5em', '5 %', '1,5mm', '5mm 3', '1e999mm'])('%j is no length', (text) => {
    expect(parseLength(text)).toBeUndefined();
  });
});

describe('formatMillimetres', () => {
  it('shows hundredths', () => expect(formatMillimetres(0.8)).toBe('0.80 mm'));
});

import { describe, expect, it } from 'vitest';
import {
  isPhysical,
  parseSvgLength,
  resolveFontUnits,
  toMillimetres,
  toUserUnits,
} from '../../../src/drawing/viewport/units';

const VIEWPORT = { width: 300, height: 400 };

describe('parseLength', () => {
  it.each([
    ['12', 12, ''],
    ['-3.5mm', -3.5, 'mm'],
    ['+.5CM', 0.5, 'cm'],
    ['1e2px', 100, 'px'],
    ['1em', 1, 'em'],
    ['1e-1em', 0.1, 'em'],
    ['50%', 50, '%'],
    ['  7\t', 7, ''],
    ['4.', 4, ''],
    ['2Q', 2, 'q'],
  ])('reads %j', (text, value, unit) => {
    expect(parseSvgLength(text)).toEqual({ value, unit });
  });

  it.each(['', 'mm', '1 mm', '1furlong', '1,5', '--1', '1e', '1e999', 'auto', 'calc(1px)', '1mm 2mm'])(
    'refuses %j',
    (text) => {
      expect(parseSvgLength(text)).toBeUndefined();
    },
  );
});

describe('resolving', () => {
  it('font units become user units, percentages stay', () => {
    expect(resolveFontUnits({ value: 2, unit: 'em' }, 10, 16)).toEqual({ value: 20, unit: '' });
    expect(resolveFontUnits({ value: 2, unit: 'ex' }, 10, 16)).toEqual({ value: 10, unit: '' });
    expect(resolveFontUnits({ value: 2, unit: 'rem' }, 10, 16)).toEqual({ value: 32, unit: '' });
    expect(resolveFontUnits({ value: 2, unit: '%' }, 10, 16)).toEqual({ value: 2, unit: '%' });
  });

  it('percentages by axis', () => {
    expect(toUserUnits({ value: 10, unit: '%' }, 'x', VIEWPORT, 16)).toBe(30);
    expect(toUserUnits({ value: 10, unit: '%' }, 'y', VIEWPORT, 16)).toBe(40);
    expect(toUserUnits({ value: 10, unit: '%' }, 'diagonal', VIEWPORT, 16)).toBeCloseTo(50 / Math.SQRT2, 12);
  });

  it('only units of the ruler are physical', () => {
    expect(['mm', 'cm', 'q', 'in', 'pt', 'pc'].map((unit) => isPhysical(unit as 'mm'))).not.toContain(false);
    expect(['', 'px', '%', 'em', 'rem', 'ex', 'ch'].map((unit) => isPhysical(unit as ''))).not.toContain(true);
    expect(toMillimetres({ value: 1, unit: '%' })).toBeUndefined();
    expect(toMillimetres({ value: 96, unit: 'px' })).toBeCloseTo(25.4, 12);
  });
});

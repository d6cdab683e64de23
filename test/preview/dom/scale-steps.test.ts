import { describe, expect, it } from 'vitest';
import { millimetres, scaleBarLength } from '../../../src/preview/dom/scale-steps';

describe('the scale', () => {
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

import { describe, expect, it } from 'vitest';
import { stoutestWidth } from '../../../src/edits/plan/width';

describe('the greatest width of a bridge that holds what lifts too far', () => {
  it.each([
    [3, 3.2],
    [12.8, 3.2],
    [16, 4],
    [19.2, 4.8],
    [40, 4.8],
  ])('at %s mm of length is %s mm', (length, width) => {
    expect(stoutestWidth(length, 0.8)).toBeCloseTo(width, 9);
  });
});

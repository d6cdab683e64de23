/** J. E. Wetzel, "Rectangles in rectangles": cases computed from the criterion, and by brute force over all angles. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Fit, fitOf } from '../../src/sheet/fit-bed';

describe('fitOf', () => {
  // Sheets by ISO 216, ISO/IEC 7810 (ID-1) and the Bureau of Engraving and Printing (banknote 6.14 × 2.61 in).
  it.each<[string, [number, number], [number, number], Fit]>([
    ['a banknote', [155.956, 66.294], [200, 200], 'upright'],
    ['A6', [105, 148], [200, 200], 'upright'],
    ['ID-1', [85.6, 53.98], [200, 200], 'upright'],
    ['A4', [210, 297], [200, 200], 'not'],
    ['Letter', [215.9, 279.4], [200, 200], 'not'],
    ['A5', [148, 210], [200, 200], 'not'],
    ['250 × 33', [250, 33], [200, 200], 'not'],
    ['250 × 20', [250, 20], [200, 200], 'turned'],
    ['210 × 70', [210, 70], [200, 200], 'turned'],
    ['A5', [148, 210], [300, 200], 'upright'],
    ['A4', [210, 297], [300, 200], 'not'],
    ['10 × 10', [10, 10], [8, 8], 'not'],
  ])('%s, %j in %j: %s', (_, sheet, bed, fit) => expect(fitOf(sheet, bed)).toBe(fit));

  it('in a square goes to p + q = s√2 for what is longer than s', () => {
    expect(fitOf([250, 282.84 - 250], [200, 200])).toBe('turned');
    expect(fitOf([250, 282.85 - 250], [200, 200])).toBe('not');
  });

  it('is what trying all angles gives', () => {
    const side = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(side, side, side, side, (p, q, a, b) => {
        let room = -Infinity;
        for (let i = 0; i <= 9000; i += 1) {
          const angle = (i * Math.PI) / 18_000;
          const [c, s] = [Math.cos(angle), Math.sin(angle)];
          room = Math.max(room, Math.min(a - (p * c + q * s), b - (p * s + q * c)));
        }
        // Between two angles the room changes by less than a hundredth.
        if (Math.abs(room) > 0.02) expect(fitOf([p, q], [a, b]) !== 'not').toBe(room > 0);
      }),
      { numRuns: 200 },
    );
  });
});

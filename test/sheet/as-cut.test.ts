/** Pieces as cut, against the material shrunk as a whole. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '../../src/geometry/base/polygon-types';
import { ringOfBox } from '../../src/geometry/base/ring';
import { areaOf, complementInBox, offset, regionFromRings } from '../../src/geometry/boolean/index';
import { sheetAsCut } from '../../src/sheet/as-cut';

const frame: Box = { minX: 0, minY: 0, maxX: 40, maxY: 40 };

const box = fc
  .record({
    minX: fc.double({ min: -2, max: 38, noNaN: true }),
    minY: fc.double({ min: -2, max: 38, noNaN: true }),
    width: fc.double({ min: 0.5, max: 9, noNaN: true }),
    height: fc.double({ min: 0.5, max: 9, noNaN: true }),
  })
  .map(({ minX, minY, width, height }) => ringOfBox({ minX, minY, maxX: minX + width, maxY: minY + height }));

describe('sheetAsCut', () => {
  it('leaves what is left of the material when half the kerf is taken from every edge', () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 12 }), fc.double({ min: 0.05, max: 1, noNaN: true }), (rings, kerf) => {
        const openings = regionFromRings(rings, 'evenodd');
        const material = complementInBox(openings, frame);
        const { pieces } = sheetAsCut({ openings, material, frame, kerf }, undefined);
        const expected = areaOf(offset(material, -kerf / 2, 'round'));
        const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
        expect(Math.abs(area - expected)).toBeLessThan(0.02);
      }),
      { numRuns: 60 },
    );
  });

  it.each([
    [0.4, 1],
    [0.6, 2],
  ])('kerf %d: a tie of 0.5 mm leaves %d pieces', (kerf, count) => {
    const ring = Float64Array.of(
      10,
      10,
      30,
      10,
      30,
      30,
      20.25,
      30,
      20.25,
      28,
      28,
      28,
      28,
      12,
      12,
      12,
      12,
      28,
      19.75,
      28,
      19.75,
      30,
      10,
      30,
    );
    const openings = [{ outer: ring, holes: [] }];
    const material = complementInBox(openings, frame);
    expect(sheetAsCut({ openings, material, frame, kerf }, undefined).pieces).toHaveLength(count);
  });
});

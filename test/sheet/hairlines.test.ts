/** Pieces that less than the least sheet holds are loose, whatever their shape; others are not. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { multiply, rotation, scaling, translation } from '../../src/geometry/base/matrix';
import type { Region, Ring } from '../../src/geometry/base/polygon-types';
import { growBox, joinBoxes, ringOfBox, ringsOf } from '../../src/geometry/base/ring';
import { LEAST_SHEET, OVERLAY_GRID } from '../../src/geometry/base/tolerances';
import {
  areaOf,
  boxOfPolygon,
  complementInBox,
  difference,
  offset,
  regionFromRings,
} from '../../src/geometry/boolean/index';
import { transformRegion } from '../../src/geometry/polygon/transform';
import { sheetAsCut } from '../../src/sheet/as-cut';
import { splitAtHairlines } from '../../src/sheet/hairlines';
import { randomRegion } from '../geometry/thickness/random-regions';
import { cases } from '../thorough';

interface Tie {
  /** Radians, from the middle of the island. */
  readonly angle: number;
  /** mm */
  readonly width: number;
}

const ellipse = (a: number, b: number, corners: number): Ring =>
  Float64Array.from({ length: 2 * corners }, (_, i) => {
    const angle = (Math.PI * (i - (i % 2))) / corners;
    return i % 2 === 0 ? a * Math.cos(angle) : b * Math.sin(angle);
  });

/** An island within a slot, each tie a strip across; hollow where it narrows to its middle. */
function heldIsland(ties: readonly Tie[], a: number, b: number, corners: number): Region {
  const slot = difference(
    regionFromRings([ellipse(a + 2, b + 2, corners)], 'nonzero'),
    regionFromRings([ellipse(a, b, corners)], 'nonzero'),
  );
  const strips = ties.map(({ angle, width }) => {
    const far = a + b + 9;
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    const [u, v] = [(-y * width) / 2, (x * width) / 2];
    return Float64Array.of(u, v, -u, -v, far * x - u, far * y - v, far * x + u, far * y + v);
  });
  return difference(slot, regionFromRings(strips, 'nonzero'));
}

const pieces = (openings: Region, kerf = 0) => {
  const frame = growBox(joinBoxes(openings.map(boxOfPolygon)), 5);
  return sheetAsCut({ openings, material: complementInBox(openings, frame), frame, kerf }, undefined).pieces;
};

const posed = (region: Region, turn: number, mirrored: boolean): Region =>
  regionFromRings(
    transformRegion(region, multiply(rotation(turn), scaling(mirrored ? -1 : 1, 1))).flatMap(ringsOf),
    'evenodd',
  );

const angles = fc.uniqueArray(fc.integer({ min: 0, max: 11 }), { minLength: 1, maxLength: 4 });
const shape = fc.record({
  a: fc.double({ min: 1, max: 12, noNaN: true }),
  b: fc.double({ min: 1, max: 12, noNaN: true }),
  corners: fc.integer({ min: 5, max: 200 }),
  turn: fc.double({ min: 0, max: 6.3, noNaN: true }),
  mirrored: fc.boolean(),
});

describe('sheet that is too thin to be cut', () => {
  it('holds nothing, in all shapes', () => {
    const thin = fc.double({ min: 0.0002, max: LEAST_SHEET - 0.0005, noNaN: true });
    fc.assert(
      fc.property(
        shape,
        angles,
        fc.array(thin, { minLength: 4, maxLength: 4 }),
        ({ a, b, corners, turn, mirrored }, at, widths) => {
          const ties = at.map((step, i) => ({ angle: step * 0.5236, width: widths[i]! }));
          const loose = pieces(posed(heldIsland(ties, a, b, corners), turn, mirrored)).filter(({ island }) => island);
          const whole = areaOf(regionFromRings([ellipse(a, b, corners)], 'nonzero'));
          // What is left of its ties on it is at most a hair.
          const [share] = loose.map(({ area }) => area / whole).sort((one, other) => other - one);
          expect(Math.abs((share ?? 0) - 1)).toBeLessThan(0.03);
        },
      ),
      { numRuns: cases(150, 40) },
    );
  });

  it('is what is narrower than that, and no more: one wider tie holds', () => {
    const wide = fc.double({ min: LEAST_SHEET + 0.0005, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(shape, angles, wide, ({ a, b, corners, turn, mirrored }, at, width) => {
        const ties = at.map((step, i) => ({ angle: step * 0.5236, width: i === 0 ? width : 0.004 }));
        expect(pieces(posed(heldIsland(ties, a, b, corners), turn, mirrored))).toHaveLength(1);
      }),
      { numRuns: cases(100, 30) },
    );
  });

  it('is measured as cut, after the kerf', () => {
    const held = (width: number, kerf: number) => pieces(heldIsland([{ angle: 0.3, width }], 6, 5, 40), kerf).length;
    expect([held(0.1, 0.2), held(0.2043, 0.2), held(0.219, 0.2), held(0.2215, 0.2)]).toEqual([2, 2, 2, 1]);
    expect([held(0.0002, 0), held(0.0043, 0), held(0.019, 0), held(0.0215, 0)]).toEqual([2, 2, 2, 1]);
  });

  it('parts random regions where erosion by half of it does', () => {
    let parted = 0;
    for (let seed = 1; seed <= cases(120, 40); seed += 1) {
      // Small enough that many necks are hairs.
      const region = transformRegion(randomRegion(seed), multiply(scaling(0.05), translation(1, 1)));
      const { result } = splitAtHairlines(region);
      const thick = (parts: Region) => parts.filter((polygon) => offset([polygon], -0.011).length > 0).length;
      const eroded = offset(region, -LEAST_SHEET / 2, 'round').length;
      const little = offset(region, -(LEAST_SHEET / 2 - 0.0005), 'round').length;
      const more = offset(region, -(LEAST_SHEET / 2 + 0.0005), 'round').length;
      if (little !== more) continue;
      parted += eroded > region.filter((polygon) => offset([polygon], -0.0105).length > 0).length ? 1 : 0;
      expect([seed, thick(result)]).toEqual([seed, offset(region, -0.011).length]);
      expect(Math.abs(areaOf(result) - areaOf(region))).toBeLessThan(1e-3);
    }
    expect(parted).toBeGreaterThan(cases(3, 0));
  });

  it('is the same where what did not change is taken over', () => {
    const before = [...heldIsland([{ angle: 0, width: 0.004 }], 5, 4, 30)];
    const after = [
      ...before,
      ...transformRegion(heldIsland([{ angle: 1, width: 0.004 }], 2, 4, 30), translation(30, 0)),
    ];
    const frame = growBox(joinBoxes(after.map(boxOfPolygon)), 5);
    const [old, now] = [before, after].map((openings) => complementInBox(openings, frame));
    expect(splitAtHairlines(now!, splitAtHairlines(old!)).result).toEqual(splitAtHairlines(now!).result);
  });

  it('leaves holes as they are that no cut comes near to', () => {
    const slot = heldIsland([{ angle: 0, width: 0.004 }], 5, 4, 30);
    const [sheet] = complementInBox(slot, growBox(joinBoxes(slot.map(boxOfPolygon)), 30));
    // Finer than the overlay's grid, as rings are where they touched others.
    const far = Float64Array.of(20, -2, 20, 2, 24, 2, 24, -2).map((at) => at + OVERLAY_GRID / 8);
    const { result } = splitAtHairlines([{ outer: sheet!.outer, holes: [...sheet!.holes, far] }]);
    expect(result.map(({ holes }) => holes.includes(far))).toEqual([true, false]);
  });

  it('leaves a sheet without any as it is', () => {
    const region = regionFromRings([ringOfBox({ minX: 0, minY: 0, maxX: 9, maxY: 9 })], 'nonzero');
    expect(splitAtHairlines(region).result).toBe(region);
  });
});

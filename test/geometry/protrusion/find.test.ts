/** Lobes of closed form, posed in many ways. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../../src/geometry/base/matrix';
import type { Region } from '../../../src/geometry/base/polygon-types';
import { complementInBox, regionFromRings } from '../../../src/geometry/boolean/index';
import { findProtrusions } from '../../../src/geometry/protrusion/find';

const FRAME = { minX: -200, minY: -200, maxX: 200, maxY: 200 };

/** An opening cut out of a sheet, after a turn in degrees and perhaps a mirror. */
function sheetWith(points: readonly (readonly [number, number])[], turn = 0, mirror = false): Region {
  const [c, s, m] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180), mirror ? -1 : 1];
  const placed = points.map(([x, y]) => apply({ a: m * c, b: m * s, c: -s, d: c, e: 0, f: 0 }, { x, y }));
  const ring = Float64Array.from(placed.flatMap(({ x, y }) => [x, y]));
  return complementInBox(regionFromRings([ring], 'evenodd'), FRAME);
}

/** A window of 100 × 60 mm into which a strip reaches from its left side. */
const window = (reach: number, root: number, end = root): [number, number][] => [
  [-50, -30],
  [50, -30],
  [50, 30],
  [-50, 30],
  [-50, root / 2],
  [-50 + reach, end / 2],
  [-50 + reach, -end / 2],
  [-50, -root / 2],
];

describe('findProtrusions', () => {
  it('measures a strip from its root to its end, however it is posed', () => {
    const poses = fc.tuple(
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.boolean(),
      fc.double({ min: 32, max: 80, noNaN: true }),
      fc.double({ min: 0.5, max: 7, noNaN: true }),
    );
    fc.assert(
      fc.property(poses, ([turn, mirror, reach, root]) => {
        const lobes = findProtrusions(sheetWith(window(reach, root), turn, mirror), 30);
        expect(lobes).toHaveLength(1);
        expect(lobes[0]?.root).toBeCloseTo(root, 2);
        expect(lobes[0]?.reach).toBeCloseTo(Math.hypot(reach, root / 2), 2);
      }),
      { numRuns: 60 },
    );
  });

  it("takes a wedge at its base and a spoon at its handle's", () => {
    expect(findProtrusions(sheetWith(window(40, 6, 0.2)), 30)).toMatchObject([
      { root: expect.closeTo(6, 2) as number },
    ]);
    const spoon: [number, number][] = [
      [-50, -30],
      [50, -30],
      [50, 30],
      [-50, 30],
      [-50, 1],
      [-30, 1],
      [-30, 12],
      [0, 12],
      [0, -12],
      [-30, -12],
      [-30, -1],
      [-50, -1],
    ];
    expect(findProtrusions(sheetWith(spoon), 30)).toMatchObject([{ root: expect.closeTo(2, 2) as number }]);
    expect(findProtrusions(sheetWith(spoon), 30)[0]?.reach).toBeCloseTo(Math.hypot(50, 12), 2);
  });

  it('gives each tooth of a comb', () => {
    const teeth = Array.from({ length: 20 }, (_, i): [number, number][] => {
      const y = 28 - 2 * i;
      return [
        [-50, y],
        [-15, y],
        [-15, y - 1],
        [-50, y - 1],
      ];
    });
    const comb: [number, number][] = [[-50, -30], [50, -30], [50, 30], [-50, 30], ...teeth.flat()];
    const lobes = findProtrusions(sheetWith(comb), 30);
    expect(lobes).toHaveLength(20);
    for (const { root, reach } of lobes) {
      expect(root).toBeCloseTo(1, 2);
      expect(reach).toBeCloseTo(Math.hypot(35, 0.5), 2);
    }
  });

  it('finds the flap that a slot goes round, and none where the slot closes or the strip is tied', () => {
    const flap: [number, number][] = [
      [0, 0],
      [40, 0],
      [40, 5],
      [0, 5],
      [0, 4.5],
      [39.5, 4.5],
      [39.5, 0.5],
      [0, 0.5],
    ];
    expect(findProtrusions(sheetWith(flap), 30)).toMatchObject([{ root: expect.closeTo(4, 1) as number }]);
    const tied = complementInBox(
      regionFromRings(
        [Float64Array.of(0, 0, 40, 0, 40, 3, 0, 3), Float64Array.of(0, 4, 40, 4, 40, 7, 0, 7)],
        'evenodd',
      ),
      FRAME,
    );
    expect(findProtrusions(tied, 30)).toEqual([]);
  });

  it('finds the strip between the barbs of a hole of four corners', () => {
    const barbed = regionFromRings(
      [Float64Array.of(-60, -60, 60, -60, 60, 60, -60, 60), Float64Array.of(-1, 40, 0, 0, 1, 40, 0, -10)],
      'evenodd',
    );
    const [lobe, ...others] = findProtrusions(barbed, 30);
    expect(others).toEqual([]);
    expect(lobe).toMatchObject({
      root: expect.closeTo(2, 1) as number,
      tip: { x: expect.closeTo(0, 2) as number, y: 0 },
    });
  });

  it('lets short ones, stout ones and openings themselves go', () => {
    expect(findProtrusions(sheetWith(window(29, 2)), 30)).toEqual([]);
    expect(findProtrusions(sheetWith(window(45, 14)), 30)).toEqual([]);
    expect(
      findProtrusions(
        sheetWith([
          [0, 0],
          [90, 0],
          [90, 2],
          [0, 2],
        ]),
        30,
      ),
    ).toEqual([]);
    expect(findProtrusions([], 30)).toEqual([]);
    expect(findProtrusions(sheetWith(window(40, 2)), NaN)).toEqual([]);
  });

  it('takes the smaller side where the outer ring itself is cut nearly in two', () => {
    const hanger = regionFromRings(
      [Float64Array.of(0, 0, 100, 0, 100, 50, 60, 50, 60, 90, 57, 90, 57, 50, 0, 50)],
      'evenodd',
    );
    const [lobe, ...others] = findProtrusions(hanger, 30);
    expect(others).toEqual([]);
    expect(lobe).toMatchObject({ root: expect.closeTo(3, 2) as number, polygon: 0 });
    expect(lobe?.tip.y).toBeCloseTo(90, 3);
  });
});

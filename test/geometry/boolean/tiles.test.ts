/** Cutting into cells, mapping layers and joining again, beside the algebra of whole regions. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Region, Ring } from '../../../src/geometry/base/polygon-types';
import { ringsOf } from '../../../src/geometry/base/ring';
import { fromGrid, toGrid } from '../../../src/geometry/boolean/grid';
import { areaOf, difference, intersection, regionFromRings, union } from '../../../src/geometry/boolean/index';
import { addLayer, overlayLayers, ringsOfCoverage } from '../../../src/geometry/boolean/layered-overlay';
import { nestRings } from '../../../src/geometry/boolean/nest';
import { coreOf, cutIntoTiles, cutToBox, joinTiles, type Tiles } from '../../../src/geometry/boolean/tiles';
import { looseRing } from '../arbitraries';

const region = fc.array(looseRing, { minLength: 1, maxLength: 3 }).map((rings) => regionFromRings(rings, 'nonzero'));

/** 400 mm square about the origin, which holds all random rings. */
const CELLS: Tiles = { x: -2_100_000, y: -2_100_000, size: 700_000, columns: 6, rows: 6, margin: 30_000 };

const gridRings = (shapes: Region): Ring[] => shapes.flatMap(ringsOf).map((ring) => toGrid(ring));
const fromRings = (rings: readonly Ring[]): Region => nestRings(rings.map((ring) => fromGrid(ring)));

/** mm²: crossings are rounded to 0.1 µm, over some metres of outline. */
const SLACK = 0.05;

describe('cells', () => {
  it('hold all of a region between them, and joined are the region', () => {
    fc.assert(
      fc.property(region, (shapes) => {
        const parts = cutIntoTiles(gridRings(shapes), CELLS).map((rings, cell) => cutToBox(rings, coreOf(CELLS, cell)));
        const areas = parts.map((rings) =>
          areaOf(
            regionFromRings(
              rings.map((ring) => fromGrid(ring)),
              'nonzero',
            ),
          ),
        );
        expect(Math.abs(areas.reduce((sum, area) => sum + area, 0) - areaOf(shapes))).toBeLessThan(SLACK);
        const joined = fromRings(joinTiles(parts.flat(), CELLS) ?? []);
        expect(areaOf(difference(joined, shapes)) + areaOf(difference(shapes, joined))).toBeLessThan(SLACK);
        expect(joined.length).toBeLessThanOrEqual(shapes.length + 1);
      }),
      { numRuns: 100 },
    );
  });
});

describe('a map of layers', () => {
  it('says which of them cover each place', () => {
    fc.assert(
      fc.property(region, region, region, (a, b, c) => {
        const map = overlayLayers([gridRings(a), gridRings(b)]);
        const deep = map && addLayer(map, gridRings(c), 29);
        if (!deep) throw new Error('rounding did not come to rest');
        const areaWhere = (cover: number) => areaOf(fromRings(ringsOfCoverage(deep, (each) => each === cover)));
        const same = (cover: number, expected: Region) =>
          expect(Math.abs(areaWhere(cover) - areaOf(expected))).toBeLessThan(SLACK);
        same(1, difference(a, union([b, c])));
        same(3, difference(intersection(a, b), c));
        same((1 << 29) | 3, intersection(intersection(a, b), c));
        same(1 << 29, difference(c, union([a, b])));
      }),
      { numRuns: 60 },
    );
  });

  it('keeps layers apart in both halves of its sums', () => {
    const square = toGrid(Float64Array.of(0, 0, 1, 0, 1, 1, 0, 1));
    const map = overlayLayers(Array.from({ length: 30 }, (_, i) => (i % 7 === 2 ? [] : [square])));
    const all = Array.from({ length: 30 }, (_, i) => (i % 7 === 2 ? 0 : 1 << i)).reduce((bits, bit) => bits | bit, 0);
    expect(map && ringsOfCoverage(map, (cover) => cover === all)).toHaveLength(1);
  });
});

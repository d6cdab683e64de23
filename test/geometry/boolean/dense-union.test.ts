/** Polygons that lie over each other are united bit by bit: the same comes out as of all at once. */
import { describe, expect, it, it as test } from 'vitest';
import type { Region, Ring } from '../../../src/geometry/base/polygon-types';
import { boxOfRing, reverseRing } from '../../../src/geometry/base/ring';
import { isDense, thinnedOut } from '../../../src/geometry/boolean/dense-union';
import {
  areaOf,
  difference,
  perimeterOf,
  regionFromRings,
  union,
  unionByCluster,
} from '../../../src/geometry/boolean/index';
import { nestRings } from '../../../src/geometry/boolean/nest';
import { combineRings } from '../../../src/geometry/boolean/overlay';
import { seededRandom } from '../../benchmark/seeded';

const disc = (x: number, y: number, r: number, corners = 40): Ring =>
  Float64Array.from(
    Array.from({ length: corners }, (_, i) => [
      x + r * Math.cos((2 * Math.PI * i) / corners),
      y + r * Math.sin((2 * Math.PI * i) / corners),
    ]).flat(),
  );

/** Discs as of a can of spray, with gaps between them here and there. */
function dots(seed: number, count: number, largest: number): Ring[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => disc(100 * random(), 100 * random(), 1 + largest * random()));
}

const polygons = (rings: readonly Ring[]): Region => rings.map((outer) => ({ outer, holes: [] }));
const atOnce = (rings: readonly Ring[]): Region => nestRings(combineRings('union', rings, [], 'nonzero'));

/** mm² that two regions may differ by: an edge is moved by a step of the grid each time it is cut. */
function expectAlike(a: Region, b: Region): void {
  expect(areaOf(difference(a, b)) + areaOf(difference(b, a))).toBeLessThan(0.001 * perimeterOf(b));
  expect(areaOf(a)).toBeCloseTo(areaOf(b), 2);
}

describe('many discs over each other', () => {
  it.each([1, 2, 3])('are united as all at once (%i)', (seed) => {
    const rings = dots(seed, 300, 12);
    expect(isDense(rings.map(boxOfRing))).toBe(true);
    const whole = atOnce(rings);
    expectAlike(union([polygons(rings)]), whole);
    expectAlike(regionFromRings(rings, 'nonzero'), whole);
    expect(union([polygons(rings)])).toHaveLength(whole.length);
  });

  it('lose most of their edges before they are united', () => {
    const rings = dots(4, 300, 12);
    const edges = (region: Region) =>
      region.reduce((sum, { outer, holes }) => sum + [outer, ...holes].reduce((n, { length }) => n + length, 0), 0);
    const unite = (few: Region) => union([few]);
    expect(edges(thinnedOut(polygons(rings), unite))).toBeLessThan(0.3 * edges(polygons(rings)));
  });

  it('in one path leave open what turns the other way, as the nonzero rule says', () => {
    const rings = dots(5, 200, 12).map((ring, i) => (i % 5 === 0 ? reverseRing(ring) : ring));
    expectAlike(regionFromRings(rings, 'nonzero'), atOnce(rings));
  });

  it('and a figure of eight among them, which winds both ways', () => {
    const eight = Float64Array.from([20, 20, 80, 80, 80, 20, 20, 80.5]);
    const rings = [...dots(6, 200, 12), eight];
    expectAlike(regionFromRings(rings, 'nonzero'), atOnce(rings));
  });

  it('by the other rule are not united at all', () => {
    const rings = dots(7, 80, 25);
    const region = regionFromRings(rings, 'evenodd');
    expectAlike(region, nestRings(combineRings('union', rings, [], 'evenodd')));
    expect(areaOf(region)).toBeLessThan(0.8 * areaOf(atOnce(rings)));
  });
});

test('a lattice, whose edges all show, is united at once after one round', () => {
  const bars = Array.from({ length: 40 }, (_, i) => 2.5 * i).flatMap((at) => [
    Float64Array.from([0, at, 100, at, 100, at + 0.5, 0, at + 0.5]),
    Float64Array.from([at, 0, at + 0.5, 0, at + 0.5, 100, at, 100]),
  ]);
  const region = regionFromRings(bars, 'nonzero');
  // 80 bars of 100 × 0.5 mm, less the 1600 places where two cross.
  expect(areaOf(region)).toBeCloseTo(80 * 50 - 1600 * 0.25, 6);
  expect(region).toHaveLength(1);
  expect(region[0]?.holes).toHaveLength(39 * 39);
});

test('discs that lie apart are not dense, and few are not either', () => {
  expect(isDense(dots(8, 200, 1).map(boxOfRing))).toBe(false);
  expect(isDense(dots(9, 30, 40).map(boxOfRing))).toBe(false);
});

describe('regions that are united already', () => {
  const square = (at: number, size: number): Ring =>
    Float64Array.from([at, at, at + size, at, at + size, at + size, at, at + size]);
  // One inside the hole of the other: their boxes meet, and nothing of them does.
  const nested = regionFromRings([square(0, 9), square(1, 7), square(2, 5)], 'evenodd');
  const areaWith = (...regions: Region[]) => areaOf(unionByCluster(regions).flatMap(({ result }) => result));

  it('are passed on as they are where no other lies', () => {
    expect(nested).toHaveLength(2);
    const [only, ...others] = unionByCluster([nested, polygons([square(20, 3)])]);
    expect(only?.result).toEqual(nested);
    expect(only?.result[0]).toBe(nested[0]);
    expect(others).toHaveLength(1);
  });

  it('are united with what lies over them', () => {
    expect(areaWith(nested, polygons([square(0.5, 8)]))).toBeCloseTo(81, 6);
  });

  it('and where two have the same polygon', () => {
    expect(areaWith(nested, nested.slice(0, 1))).toBeCloseTo(81 - 49 + 25, 6);
    expect(areaWith(nested.slice(0, 1), nested.slice(0, 1))).toBeCloseTo(81 - 49, 6);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/base/curve-types';
import type { Box, Region, Ring } from '../../../src/geometry/base/polygon-types';
import { boxOfRing, reverseRing, ringOfBox, ringsOf, signedArea } from '../../../src/geometry/base/ring';
import {
  areaOf,
  clipToBox,
  complementInBox,
  difference,
  exclusion,
  intersection,
  offset,
  perimeterOf,
  regionContains,
  regionFromRings,
  union,
} from '../../../src/geometry/boolean/index';
import { gridRing, looseRing } from '../arbitraries';

const fillRule = fc.constantFrom('nonzero' as const, 'evenodd' as const);
const anyRing = fc.oneof(
  gridRing,
  looseRing.map((ring) => ring.map((value) => value / 10)),
);
const region = fc
  .tuple(fc.array(anyRing, { maxLength: 4 }), fillRule)
  .map(([rings, rule]) => regionFromRings(rings, rule));

function box(minX: number, minY: number, maxX: number, maxY: number): Box {
  return { minX, minY, maxX, maxY };
}

function square(minX: number, minY: number, size: number): Ring {
  return ringOfBox(box(minX, minY, minX + size, minY + size));
}

/** The rules that `region.ts` states. */
function expectSound(result: Region): void {
  for (const { outer, holes } of result) {
    expect(signedArea(outer)).toBeGreaterThan(0);
    for (const hole of holes) expect(signedArea(hole)).toBeLessThan(0);
    for (const ring of [outer, ...holes]) expect(ring.every(Number.isFinite)).toBe(true);
    expect(holes.reduce((area, hole) => area + signedArea(hole), signedArea(outer))).toBeGreaterThan(-1e-6);
  }
}

/** Winding number, by signed crossings of the ray to the right. */
function winding(ring: Ring, { x, y }: Point): number {
  let turns = 0;
  for (let index = 0; index < ring.length; index += 2) {
    const [x0, y0] = [ring[index] ?? 0, ring[index + 1] ?? 0];
    const [x1, y1] = [ring[(index + 2) % ring.length] ?? 0, ring[(index + 3) % ring.length] ?? 0];
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) turns += y1 > y0 ? 1 : -1;
  }
  return turns;
}

/** Never on a line between two points of the test grid. */
const probe = fc.record({
  x: fc.integer({ min: -1, max: 10 }).map((value) => value + Math.SQRT2 / 3),
  y: fc.integer({ min: -1, max: 10 }).map((value) => value + Math.PI / 7),
});

describe('regionFromRings', () => {
  it('holds a point exactly when the fill rule does', () => {
    fc.assert(
      fc.property(fc.array(gridRing, { minLength: 1, maxLength: 5 }), fillRule, probe, (rings, rule, place) => {
        const turns = rings.reduce((sum, ring) => sum + winding(ring, place), 0);
        const filled = rule === 'nonzero' ? turns !== 0 : turns % 2 !== 0;
        expect(regionContains(regionFromRings(rings, rule), place)).toBe(filled);
      }),
      { numRuns: 1000 },
    );
  });

  it('is sound and stays the same when taken again', () => {
    fc.assert(
      fc.property(fc.array(anyRing, { maxLength: 6 }), fillRule, (rings, rule) => {
        const first = regionFromRings(rings, rule);
        expectSound(first);
        const again = regionFromRings(first.flatMap(ringsOf), 'nonzero');
        expect(Math.abs(areaOf(again) - areaOf(first))).toBeLessThan(0.02);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps counters in their letters and neighbours apart', () => {
    const rings = [square(0, 0, 10), square(3, 3, 4), square(20, 0, 10), square(23, 3, 4), square(24, 4, 2)];
    const result = regionFromRings(rings, 'evenodd');
    expect(result.map((polygon) => polygon.holes.length).sort()).toEqual([0, 1, 1]);
    expect(areaOf(result)).toBeCloseTo(84 + 84 + 4, 9);
  });

  it('joins rings that share an edge', () => {
    expect(regionFromRings([square(0, 0, 10), square(10, 0, 10)], 'nonzero').length).toBe(1);
  });

  it('takes no harm from what has no area or is not finite', () => {
    const flat = Float64Array.of(0, 0, 5, 5, 10, 10);
    const broken = Float64Array.of(0, 0, Number.NaN, 3, 10, 0, 10, 10, Infinity, -Infinity);
    for (const rule of ['nonzero', 'evenodd'] as const) {
      expect(regionFromRings([], rule)).toEqual([]);
      expect(regionFromRings([flat, new Float64Array(0), Float64Array.of(1, 1)], rule)).toEqual([]);
      expectSound(regionFromRings([broken], rule));
    }
  });
});

describe('union, difference, intersection, exclusion', () => {
  it('obey the law of inclusion and exclusion', () => {
    fc.assert(
      fc.property(region, region, (a, b) => {
        const [both, common, rest] = [union([a, b]), intersection(a, b), difference(a, b)];
        for (const result of [both, common, rest]) expectSound(result);
        const slack = 0.02;
        expect(Math.abs(areaOf(both) + areaOf(common) - areaOf(a) - areaOf(b))).toBeLessThan(slack);
        expect(Math.abs(areaOf(rest) + areaOf(common) - areaOf(a))).toBeLessThan(slack);
        const either = exclusion(a, b);
        expectSound(either);
        expect(Math.abs(areaOf(either) + areaOf(common) - areaOf(both))).toBeLessThan(slack);
      }),
      { numRuns: 300 },
    );
  });

  it('hold the points that the words say', () => {
    fc.assert(
      fc.property(region, region, probe, (a, b, place) => {
        const [inA, inB] = [regionContains(a, place), regionContains(b, place)];
        expect(regionContains(union([a, b]), place)).toBe(inA || inB);
        expect(regionContains(intersection(a, b), place)).toBe(inA && inB);
        expect(regionContains(difference(a, b), place)).toBe(inA && !inB);
        expect(regionContains(exclusion(a, b), place)).toBe(inA !== inB);
      }),
      { numRuns: 300 },
    );
  });

  it('pass on what meets nothing', () => {
    const a = regionFromRings([square(0, 0, 5)], 'nonzero');
    const b = regionFromRings([square(50, 0, 5)], 'nonzero');
    expect(difference(a, b)).toEqual(a);
    expect(intersection(a, b)).toEqual([]);
    expect(union([a, b]).length).toBe(2);
    expect(union([])).toEqual([]);
    expect(difference(a, a)).toEqual([]);
  });
});

describe('clipToBox', () => {
  it('is the intersection with the box', () => {
    const window = box(2, 1, 6.5, 7);
    const boxed = regionFromRings([ringOfBox(window)], 'nonzero');
    fc.assert(
      fc.property(region, (a) => {
        const clipped = clipToBox(a, window);
        expectSound(clipped);
        expect(Math.abs(areaOf(clipped) - areaOf(intersection(a, boxed)))).toBeLessThan(0.02);
      }),
      { numRuns: 200 },
    );
  });
});

describe('complementInBox', () => {
  const sheet = box(-1, -1, 12, 12);

  it('holds the rest of the box, whether openings keep clear of the border or not', () => {
    fc.assert(
      fc.property(region, fc.constantFrom(sheet, box(0, 0, 8, 8), box(3, -2, 20, 5)), (openings, frame) => {
        const rest = complementInBox(openings, frame);
        expectSound(rest);
        const whole = (frame.maxX - frame.minX) * (frame.maxY - frame.minY);
        expect(Math.abs(areaOf(rest) + areaOf(clipToBox(openings, frame)) - whole)).toBeLessThan(0.02);
      }),
      { numRuns: 300 },
    );
  });

  it('is the same as a real difference', () => {
    const frame = regionFromRings([ringOfBox(sheet)], 'nonzero');
    fc.assert(
      fc.property(region, probe, (openings, place) => {
        const rest = complementInBox(openings, sheet);
        const real = difference(frame, openings);
        expect(Math.abs(areaOf(rest) - areaOf(real))).toBeLessThan(0.02);
        expect(regionContains(rest, place)).toBe(regionContains(real, place));
      }),
      { numRuns: 300 },
    );
  });

  it('gives the counter of a ring-shaped opening as a piece of its own', () => {
    const ring = regionFromRings([square(0, 0, 10), reverseRing(square(3, 3, 4))], 'nonzero');
    const rest = complementInBox(ring, sheet);
    expect(rest.map((polygon) => polygon.holes.length).sort()).toEqual([0, 1]);
    expect(areaOf(rest)).toBeCloseTo(169 - 84, 9);
  });

  it('is the whole box without openings', () => {
    expect(areaOf(complementInBox([], sheet))).toBe(169);
  });
});

describe('offset', () => {
  it('of nothing by nothing changes nothing', () => {
    const a = regionFromRings([square(0, 0, 5)], 'nonzero');
    expect(offset(a, 0)).toBe(a);
    expect(offset([], 3)).toEqual([]);
  });

  it('joins what grows together and drops what shrinks away', () => {
    const pair = regionFromRings([square(0, 0, 5), square(6, 0, 5)], 'nonzero');
    expect(pair.length).toBe(2);
    expect(offset(pair, 0.51, 'miter').length).toBe(1);
    expect(offset(pair, 0.49, 'miter').length).toBe(2);
    expect(offset(pair, -2.6)).toEqual([]);
    expect(areaOf(offset(pair, -1))).toBeCloseTo(18, 6);
  });

  it('moves holes the other way', () => {
    const ring = regionFromRings([square(0, 0, 10), reverseRing(square(3, 3, 4))], 'nonzero');
    expect(areaOf(offset(ring, 0.5, 'miter'))).toBeCloseTo(121 - 9, 6);
    expect(areaOf(offset(ring, -0.5, 'miter'))).toBeCloseTo(81 - 25, 6);
  });

  it('grows and shrinks monotonously', () => {
    fc.assert(
      fc.property(region, fc.double({ min: 0.01, max: 1, noNaN: true }), (a, delta) => {
        const [less, more] = [offset(a, -delta), offset(a, delta)];
        expectSound(less);
        expectSound(more);
        expect(areaOf(difference(less, a))).toBeLessThan(0.02);
        expect(areaOf(difference(a, more))).toBeLessThan(0.02);
      }),
      { numRuns: 200 },
    );
  });
});

describe('measures', () => {
  it('take rings, polygons and regions', () => {
    const ring = regionFromRings([square(0, 0, 10), reverseRing(square(3, 3, 4))], 'nonzero');
    expect(areaOf(ring)).toBeCloseTo(84, 9);
    expect(ring[0] && areaOf(ring[0])).toBeCloseTo(84, 9);
    expect(areaOf(reverseRing(square(3, 3, 4)))).toBe(16);
    expect(perimeterOf(ring)).toBeCloseTo(56, 9);
    expect(ring[0] && perimeterOf(ring[0])).toBeCloseTo(56, 9);
    expect(perimeterOf(square(3, 3, 4))).toBe(16);
    expect(boxOfRing(square(3, 3, 4))).toEqual(box(3, 3, 7, 7));
  });
});

/**
 * Input that is odd, broken or very large: no exception, no invented neck, the same answer where the area is the same.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import { findThinParts } from '../../../src/geometry/thickness/index';
import { circle, comb, dumbbell, polygon, rectangle, reversed, ring } from './shapes';

/** Puts points between the vertices of a ring: after vertex k those given for it. */
function insertAfter(points: Ring, vertex: number, ...extra: readonly number[]): Ring {
  return Float64Array.from([...points.slice(0, 2 * vertex + 2), ...extra, ...points.slice(2 * vertex + 2)]);
}

describe('input that is no region', () => {
  const junk = fc.oneof(fc.integer({ min: -4, max: 4 }), fc.constantFrom(NaN, Infinity, 1e-9, 1e300, -1e-300));
  const rings = fc.array(fc.tuple(junk, junk), { maxLength: 14 }).map((points) => Float64Array.from(points.flat()));

  it('never throws and gives finite measures', () => {
    const polygons = fc.array(fc.record({ outer: rings, holes: fc.array(rings, { maxLength: 3 }) }), { maxLength: 4 });
    fc.assert(
      fc.property(polygons, fc.constantFrom(0.5, 1, 1.5, 3, 100), (region, width) => {
        for (const part of findThinParts(region, width, { leastReach: 0, tolerance: 0 })) {
          const measures = [part.width, part.length, part.reach, part.from.x, part.to.y];
          for (const value of measures) expect(value).not.toBeNaN();
        }
      }),
      { numRuns: 3000 },
    );
  });

  it('has no thin parts when it is empty or the width is no positive number', () => {
    expect(findThinParts([], 1)).toEqual([]);
    expect(findThinParts([polygon(ring())], 1)).toEqual([]);
    expect(findThinParts([polygon(ring(0, 0, 5, 5, 0, 0, 5, 5))], 1)).toEqual([]);
    const strip = [polygon(rectangle(0, 0, 9, 0.5))];
    for (const width of [0, -1, NaN, Infinity]) expect(findThinParts(strip, width)).toEqual([]);
  });
});

describe('what has no area changes nothing', () => {
  const plain = dumbbell(10, 5, 0.6);
  const found = findThinParts([polygon(plain)], 0.8);

  it.each([
    ['repeated points', insertAfter(plain, 3, 15, 4.7, 15, 4.7, 15, 4.7 + 1e-9)],
    ['a repeated first point', Float64Array.from([...plain, plain[0]!, plain[1]!])],
    ['a spike outwards', insertAfter(plain, 0, 5, 0, 5, -8, 5, 0)],
    ['a slit inwards', insertAfter(plain, 0, 5, 0, 5, 8, 5, 0)],
    ['a spike at the seam', Float64Array.from([...plain, 0, 0, -7, 0])],
    ['steps of a nanometre', insertAfter(plain, 0, 3, 0, 3, 1e-9, 4, 1e-9, 4, -1e-9, 5, 0)],
    ['points on its edges', insertAfter(plain, 2, 11, 4.7, 12, 4.7, 12.5, 4.7)],
  ])('%s', (_name, outer) => {
    const parts = findThinParts([polygon(outer)], 0.8);
    expect(parts).toHaveLength(1);
    expect(parts[0]!.width).toBeCloseTo(found[0]!.width, 6);
    expect(parts[0]!.length).toBeCloseTo(found[0]!.length, 5);
    expect(parts[0]!.holds!.area).toBeCloseTo(found[0]!.holds!.area, 5);
  });
});

describe('contact', () => {
  it('of a hole with the border, or of two holes at their corners, is a neck without width', () => {
    const square = rectangle(0, 0, 20, 20);
    const atBorder = findThinParts([polygon(square, reversed(ring(10, 0, 14, 6, 6, 6)))], 0.8);
    expect(atBorder.map(({ kind, width }) => [kind, width])).toEqual([['neck', 0]]);
    const corners = [reversed(rectangle(4, 4, 10, 10)), reversed(rectangle(10, 10, 16, 16))];
    const between = findThinParts([polygon(square, ...corners)], 0.8);
    expect(between.map(({ kind, width }) => [kind, width])).toEqual([['neck', 0]]);
  });

  it('of polygons with each other is no matter', () => {
    const squares = [rectangle(0, 0, 10, 10), rectangle(10, 10, 20, 20), rectangle(10, 0, 20, 10)];
    expect(
      findThinParts(
        squares.map((square) => polygon(square)),
        0.8,
      ),
    ).toEqual([]);
  });
});

describe('size', () => {
  it('of ten metres keeps the widths of tenths of a millimetre', () => {
    const holes = [0, 1, 2].map((at) => reversed(circle(9000 + 21 * at + 0.5 * at, 9500, 10.5)));
    const parts = findThinParts([polygon(rectangle(0, 0, 10_000, 10_000), ...holes)], 0.8);
    expect(parts.map(({ kind }) => kind)).toEqual(['neck', 'neck']);
    parts.forEach(({ width }) => expect(Math.abs(width - 0.5)).toBeLessThan(0.01));
  });

  it('of a width beyond everything makes all thin as a whole', () => {
    const parts = findThinParts([polygon(comb(50, 3, 0.5, 20)), polygon(circle(500, 0, 30))], 1e6);
    expect(parts.map(({ kind }) => kind)).toEqual(['whole', 'whole']);
    expect(parts[1]!.width).toBeCloseTo(60, 2);
  });

  it('of a hundred thousand edges in one wavy ring is no trouble', () => {
    const points: number[] = [];
    for (let at = 0; at < 100_000; at += 1) {
      const angle = (2 * Math.PI * at) / 100_000;
      const radius = 300 + 4 * Math.sin(200 * angle);
      points.push(radius * Math.cos(angle), radius * Math.sin(angle));
    }
    expect(findThinParts([polygon(Float64Array.from(points))], 0.8)).toEqual([]);
    // Between the 200 crests the ring's outside is deep and narrow: the sheet round it has 200 tongues wider than 2 mm.
    const sheet = polygon(rectangle(-400, -400, 400, 400), reversed(Float64Array.from(points)));
    expect(findThinParts([sheet], 0.8)).toEqual([]);
  });
});

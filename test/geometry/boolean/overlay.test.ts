import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import { reverseRing, signedArea } from '../../../src/geometry/base/ring';
import { overlayRings } from '../../../src/geometry/boolean/overlay';
import { gridRing, looseRing } from '../arbitraries';
import { slabArea } from '../slab-area';

const nonzero = (turns: number): boolean => turns !== 0;
const evenodd = (turns: number): boolean => turns % 2 !== 0;

/** Grid points a hair apart: one unit either way about few places. */
const jitteredRing = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: -1, max: 1 })), { minLength: 6, maxLength: 24 })
  .map((values) =>
    Float64Array.from(values.slice(0, values.length - (values.length % 2)).map(([step, hair]) => step * 10_000 + hair)),
  );
const coarseRing = gridRing.map((ring) => ring.map((value) => value * 10_000));
const denseRing = gridRing.map((ring) => ring.map((value) => (value % 4) * 10_000));
const farRing = looseRing.map((ring) => ring.map((value) => Math.round(value * 1e6)));
const rings = fc.array(fc.oneof(coarseRing, denseRing, jitteredRing), { minLength: 1, maxLength: 4 });

function total(result: readonly Ring[] | undefined): number {
  expect(result).toBeDefined();
  return (result ?? []).reduce((sum, ring) => sum + signedArea(ring), 0);
}

function perimeterBound(shapes: readonly Ring[]): number {
  return 4 + shapes.reduce((sum, ring) => sum + ring.length * Math.max(...ring.map(Math.abs)), 0);
}

describe('overlayRings', () => {
  it('has the area that slabs have, for both fill rules, whatever coincides', () => {
    fc.assert(
      fc.property(rings, (shapes) => {
        const slack = perimeterBound(shapes);
        expect(Math.abs(total(overlayRings(shapes, [], nonzero)) - slabArea(shapes, 'nonzero'))).toBeLessThan(slack);
        expect(Math.abs(total(overlayRings(shapes, [], evenodd)) - slabArea(shapes, 'evenodd'))).toBeLessThan(slack);
      }),
      { numRuns: 1500 },
    );
  });

  // A polygon on which a widely used clipping library gives 23.016 for 23.683.
  it('loses nothing where many edges pass through one vertex', () => {
    const ring = Float64Array.of(5, 7, 8, 7, 6, 7, 1, 1, 7, 0, 7, 6, 8, 4, 1, 5, 7, 6, 8, 0, 7, 4).map(
      (value) => value * 10_000,
    );
    expect(total(overlayRings([ring], [], nonzero)) / 1e8).toBeCloseTo(23.683324193, 3);
    expect(total(overlayRings([ring], [], evenodd)) / 1e8).toBeCloseTo(23.388899106, 3);
  });

  it('comes to rest on coordinates of ten metres', () => {
    fc.assert(
      fc.property(fc.array(farRing, { minLength: 1, maxLength: 5 }), (shapes) => {
        const area = total(overlayRings(shapes, [], evenodd));
        expect(Math.abs(area - slabArea(shapes, 'evenodd'))).toBeLessThan(perimeterBound(shapes));
      }),
      { numRuns: 200 },
    );
  });

  it('gives rings that meet in points only, and parts them there', () => {
    fc.assert(
      fc.property(rings, (shapes) => {
        const once = overlayRings(shapes, [], nonzero) ?? [];
        const again = overlayRings(once, [], nonzero) ?? [];
        expect(total(again)).toBe(total(once));
        expect(again.length).toBe(once.length);
      }),
      { numRuns: 300 },
    );
  });

  it('does not mind order, course or start of the rings', () => {
    fc.assert(
      fc.property(rings, (shapes) => {
        const turned = shapes.map((ring) => Float64Array.of(...ring.subarray(2), ...ring.subarray(0, 2))).reverse();
        const slack = perimeterBound(shapes);
        const differs = (other: readonly Ring[], filled: (turns: number) => boolean): number => {
          return Math.abs(total(overlayRings(other, [], filled)) - total(overlayRings(shapes, [], filled)));
        };
        expect(differs(turned, nonzero)).toBeLessThan(slack);
        expect(differs(shapes.map(reverseRing), evenodd)).toBeLessThan(slack);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps the two sets of rings apart', () => {
    fc.assert(
      fc.property(rings, rings, (a, b) => {
        const area = (filled: (first: number, second: number) => boolean): number => total(overlayRings(a, b, filled));
        const common = area((first, second) => first !== 0 && second !== 0);
        const either = area((first, second) => first !== 0 || second !== 0);
        const [onlyA, onlyB] = [
          area((first, second) => first !== 0 && second === 0),
          area((first, second) => first === 0 && second !== 0),
        ];
        expect(onlyA + common + onlyB).toBe(either);
      }),
      { numRuns: 300 },
    );
  });

  it('makes of a ring alone what it makes of it beside another far away', () => {
    const far = Float64Array.of(9e7, 9e7, 9e7 + 5, 9e7, 9e7, 9e7 + 5);
    const convex = fc.tuple(fc.integer({ min: 3, max: 40 }), fc.boolean()).map(([corners, reversed]) => {
      const points = Array.from({ length: corners }, (_, i) => (2 * Math.PI * i) / corners).map((angle) => [
        Math.round(1e5 * Math.cos(angle)),
        Math.round(2e5 * Math.sin(angle)),
      ]);
      return Float64Array.from((reversed ? points.reverse() : points).flat());
    });
    fc.assert(
      fc.property(fc.oneof(convex, coarseRing, jitteredRing), (ring) => {
        const alone = overlayRings([ring], [], (turns) => nonzero(turns));
        const beside = overlayRings([ring, far], [], (turns) => nonzero(turns));
        expect(alone).toEqual(beside?.slice(0, -1));
      }),
      { numRuns: 500 },
    );
  });

  it('drops points on straight edges', () => {
    const square = Float64Array.of(5, 0, 10, 0, 10, 5, 10, 10, 5, 10, 0, 10, 0, 5, 0, 0);
    expect(overlayRings([square], [], nonzero)?.[0]?.length).toBe(8);
    expect(overlayRings([], [], nonzero)).toEqual([]);
    expect(overlayRings([Float64Array.of(0, 0, 9, 9)], [], nonzero)).toEqual([]);
  });
});

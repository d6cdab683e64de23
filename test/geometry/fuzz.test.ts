/** Whatever comes in: no exception, nothing that is not a number. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Curve, Point } from '../../src/geometry/base/curve-types';
import type { Region, Ring } from '../../src/geometry/base/polygon-types';
import { ringsOf } from '../../src/geometry/base/ring';
import {
  areaOf,
  clipToBox,
  complementInBox,
  difference,
  intersection,
  offset,
  perimeterOf,
  regionFromRings,
  splitAtPinchPoints,
  union,
} from '../../src/geometry/boolean/index';
import { flattenSubpath } from '../../src/geometry/curve/flatten';
import {
  boundsOf,
  curvatureAt,
  intersectWithLine,
  lengthOf,
  nearestOn,
  pointAt,
  signedAreaOf,
  splitCurve,
  tangentAt,
} from '../../src/geometry/curve/index';
import { inscribedDisc } from '../../src/geometry/polygon/inscribed-circle';
import { arcFrom } from './arbitraries';

/** Few values, so that they coincide; hairs of 1e-9; ten metres; the signed zero. */
const value = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: -4, max: 4 }) },
  { weight: 3, arbitrary: fc.constantFrom(1e-9, -1e-9, 1e-4, 5e-5, 1 + 1e-9, 2 - 1e-4, -0) },
  { weight: 2, arbitrary: fc.constantFrom(10_000, -10_000, 9999.9999) },
  { weight: 1, arbitrary: fc.double({ min: -10, max: 10, noNaN: true }) },
);
const place: fc.Arbitrary<Point> = fc.record({ x: value, y: value });

/** Walks that turn back on themselves, stand still, and repeat their own edges. */
const degenerateRing: fc.Arbitrary<Ring> = fc
  .tuple(fc.array(place, { maxLength: 10 }), fc.constantFrom('plain', 'spiked', 'doubled', 'again', 'back'))
  .map(([points, way]) => {
    const shaped = {
      plain: points,
      spiked: points.flatMap((point, index) => [point, points[(index + 2) % points.length] ?? point, point]),
      doubled: points.flatMap((point) => [point, point]),
      again: [...points, ...points],
      back: [...points, ...points.slice().reverse()],
    }[way];
    return Float64Array.from((shaped ?? points).flatMap(({ x, y }) => [x, y]));
  });
const rings = fc.array(degenerateRing, { maxLength: 5 });
const rule = fc.constantFrom('nonzero' as const, 'evenodd' as const);

function expectNumbers(region: Region): void {
  expect(region.flatMap(ringsOf).every((ring) => ring.every(Number.isFinite))).toBe(true);
  expect(areaOf(region)).toBeGreaterThanOrEqual(0);
  expect(perimeterOf(region)).toBeGreaterThanOrEqual(0);
}

describe('regions of degenerate rings', () => {
  it('are regions', () => {
    fc.assert(
      fc.property(rings, rings, rule, (first, second, fillRule) => {
        const [a, b] = [regionFromRings(first, fillRule), regionFromRings(second, fillRule)];
        const frame = { minX: -3, minY: -3, maxX: 3, maxY: 5 };
        const results = [
          a,
          union([a, b]),
          difference(a, b),
          intersection(a, b),
          clipToBox(a, frame),
          complementInBox(a, frame),
        ];
        for (const result of [...results, splitAtPinchPoints(complementInBox(a, frame))]) expectNumbers(result);
      }),
      { numRuns: 500 },
    );
  });

  it('have offsets and inscribed discs', () => {
    fc.assert(
      fc.property(rings, rule, fc.constantFrom(-1, -1e-4, 1e-4, 0.3), (shapes, fillRule, delta) => {
        const region = regionFromRings(shapes, fillRule);
        for (const join of ['round', 'miter', 'bevel', 'square'] as const) expectNumbers(offset(region, delta, join));
        for (const polygon of region.slice(0, 3)) {
          const disc = inscribedDisc(polygon, 0.01);
          expect(disc.radius).toBeGreaterThanOrEqual(0);
          expect(Number.isFinite(disc.centre.x + disc.centre.y)).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('come from coordinates that are not numbers as well', () => {
    const wild = fc.array(fc.double(), { maxLength: 12 }).map((values) => Float64Array.from(values));
    fc.assert(
      fc.property(fc.array(wild, { maxLength: 4 }), rule, (shapes, fillRule) => {
        expectNumbers(regionFromRings(shapes, fillRule));
      }),
      { numRuns: 300 },
    );
  });
});

const curve: fc.Arbitrary<Curve> = fc.oneof(
  fc.record({ kind: fc.constant('line' as const), start: place, end: place }),
  fc.record({ kind: fc.constant('quadratic' as const), start: place, control: place, end: place }),
  fc.record({ kind: fc.constant('cubic' as const), start: place, control1: place, control2: place, end: place }),
  fc
    .tuple(place, place, place, value, value)
    .map(([centre, u, v, from, sweep]) => arcFrom(centre, u, v, from, Math.max(-9, Math.min(9, sweep)))),
);

describe('degenerate curves', () => {
  it('have measures', () => {
    fc.assert(
      fc.property(curve, place, place, fc.constantFrom(0, 1e-12, 0.5, 1), (shape, a, b, t) => {
        const [head, tail] = splitCurve(shape, t);
        for (const part of [shape, head, tail]) {
          const { minX, minY, maxX, maxY } = boundsOf(part);
          const [point, tangent, nearest] = [pointAt(part, t), tangentAt(part, t), nearestOn(part, a)];
          const numbers = [minX, minY, maxX, maxY, point.x, point.y, tangent.x, tangent.y, nearest.distance, nearest.t];
          expect([...numbers, lengthOf(part), signedAreaOf(part)].every(Number.isFinite)).toBe(true);
          expect(curvatureAt(part, t)).not.toBeNaN();
          expect(intersectWithLine(part, a, b).every((at) => at >= 0 && at <= 1)).toBe(true);
          expect(flattenSubpath([part], 0.005).every(Number.isFinite)).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });
});

/** Random curves, rings and maps for property tests; millimetres. */
import fc from 'fast-check';
import type { Arc, Cubic, Curve, Line, Matrix, Point, Quadratic } from '../../src/geometry/base/curve-types';
import { multiply, rotation, scaling, translation } from '../../src/geometry/base/matrix';
import type { Ring } from '../../src/geometry/base/polygon-types';
import { pointAtAngle } from '../../src/geometry/curve/evaluate';

/** Also plain numbers, so that coordinates coincide and align often. */
export const coordinate = fc.oneof(
  fc.double({ min: -200, max: 200, noNaN: true, noDefaultInfinity: true }),
  fc.integer({ min: -5, max: 5 }).map((value) => 10 * value),
);

export const point: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate });

export const line: fc.Arbitrary<Line> = fc.record({ kind: fc.constant('line' as const), start: point, end: point });

export const quadratic: fc.Arbitrary<Quadratic> = fc.record({
  kind: fc.constant('quadratic' as const),
  start: point,
  control: point,
  end: point,
});

export const cubic: fc.Arbitrary<Cubic> = fc.record({
  kind: fc.constant('cubic' as const),
  start: point,
  control1: point,
  control2: point,
  end: point,
});

export function arcFrom(centre: Point, axisU: Point, axisV: Point, from: number, sweep: number): Arc {
  const shape = { kind: 'arc' as const, centre, axisU, axisV, from, sweep, start: centre, end: centre };
  return { ...shape, start: pointAtAngle(shape, from), end: pointAtAngle(shape, from + sweep) };
}

/** Axes of any skewness, sweeps up to a full turn either way. */
export const arc: fc.Arbitrary<Arc> = fc
  .record({
    centre: point,
    axisU: point,
    axisV: point,
    from: fc.double({ min: -7, max: 7, noNaN: true }),
    sweep: fc.double({ min: -2 * Math.PI, max: 2 * Math.PI, noNaN: true }),
  })
  .map(({ centre, axisU, axisV, from, sweep }) => arcFrom(centre, axisU, axisV, from, sweep));

export const curve: fc.Arbitrary<Curve> = fc.oneof(line, quadratic, cubic, arc);

export const parameter = fc.double({ min: 0, max: 1, noNaN: true });

/** Turn, even scale, mirror and shift: keeps shapes alike. `factor` is the scale. */
export const similarity: fc.Arbitrary<{ matrix: Matrix; factor: number; mirrored: boolean }> = fc
  .record({
    angle: fc.double({ min: -4, max: 4, noNaN: true }),
    factor: fc.double({ min: 0.1, max: 10, noNaN: true }),
    mirrored: fc.boolean(),
    shift: point,
  })
  .map(({ angle, factor, mirrored, shift }) => {
    const linear = multiply(rotation(angle), scaling(mirrored ? -factor : factor, factor));
    return { matrix: multiply(translation(shift.x, shift.y), linear), factor, mirrored };
  });

export const affine: fc.Arbitrary<Matrix> = fc.record({
  a: fc.double({ min: -3, max: 3, noNaN: true }),
  b: fc.double({ min: -3, max: 3, noNaN: true }),
  c: fc.double({ min: -3, max: 3, noNaN: true }),
  d: fc.double({ min: -3, max: 3, noNaN: true }),
  e: coordinate,
  f: coordinate,
});

/** Rings of few, often coinciding and aligned grid points: crossings, touching places and shared edges abound. */
export const gridRing: fc.Arbitrary<Ring> = fc
  .array(fc.integer({ min: 0, max: 8 }), { minLength: 6, maxLength: 24 })
  .map((values) => Float64Array.from(values.slice(0, values.length - (values.length % 2))));

/** Rings of points in general position. */
export const looseRing: fc.Arbitrary<Ring> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 1_000_000 }), fc.integer({ min: 0, max: 1_000_000 })), {
    minLength: 3,
    maxLength: 14,
  })
  .map((points) => Float64Array.from(points.flat().map((value) => value / 1e4)));

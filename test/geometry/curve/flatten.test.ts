import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Curve, Point } from '../../../src/geometry/base/curve-types';
import { signedArea } from '../../../src/geometry/base/ring';
import { distance } from '../../../src/geometry/base/vector';
import { pointAt } from '../../../src/geometry/curve/evaluate';
import { flattenCurve, flattenSubpath } from '../../../src/geometry/curve/flatten';
import { reverseCurve } from '../../../src/geometry/curve/transform';
import { arcFrom, curve } from '../arbitraries';

const tolerances = fc.constantFrom(0.001, 0.005, 0.1, 3);

function chain(shape: Curve, tolerance: number): Point[] {
  const into: number[] = [shape.start.x, shape.start.y];
  flattenCurve(shape, tolerance, into);
  return Array.from({ length: into.length / 2 }, (_, index) => ({
    x: into[2 * index] ?? 0,
    y: into[2 * index + 1] ?? 0,
  }));
}

function distanceToChord(place: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((place.x - a.x) * dx + (place.y - a.y) * dy) / square)) : 0;
  return Math.hypot(a.x + t * dx - place.x, a.y + t * dy - place.y);
}

describe('flattenCurve', () => {
  it('keeps every point of the curve within the tolerance of its chord', () => {
    fc.assert(
      fc.property(curve, tolerances, (shape, tolerance) => {
        const points = chain(shape, tolerance);
        const chords = points.length - 1;
        points.slice(1).forEach((end, index) => {
          const start = points[index] ?? end;
          for (const inner of [0.25, 0.5, 0.75]) {
            const place = pointAt(shape, (index + inner) / chords);
            expect(distanceToChord(place, start, end)).toBeLessThan(tolerance * (1 + 1e-6) + 1e-10);
          }
        });
      }),
      { numRuns: 150 },
    );
  });

  it('puts its points on the curve and ends at its end', () => {
    fc.assert(
      fc.property(curve, tolerances, (shape, tolerance) => {
        const points = chain(shape, tolerance);
        points.forEach((place, index) => {
          expect(distance(place, pointAt(shape, index / (points.length - 1)))).toBeLessThan(1e-9);
        });
        expect(points.at(-1)).toEqual(shape.end);
      }),
      { numRuns: 150 },
    );
  });

  it('gives the same points for the reversed curve', () => {
    fc.assert(
      fc.property(curve, tolerances, (shape, tolerance) => {
        const there = chain(shape, tolerance);
        const back = chain(reverseCurve(shape), tolerance).reverse();
        expect(back.length).toBe(there.length);
        back.forEach((place, index) => {
          const twin = there[index] ?? place;
          expect(distance(place, twin)).toBeLessThan(shape.kind === 'arc' ? 1e-10 : Number.MIN_VALUE);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('is sparing: a circle takes no more chords than the sagitta asks for', () => {
    const circle = arcFrom({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 0, y: 10 }, 0, 2 * Math.PI);
    const needed = Math.ceil(Math.PI / Math.acos(1 - 0.005 / 10));
    expect(chain(circle, 0.005).length - 1).toBe(needed);
  });

  it('stays bounded for absurd coordinates', () => {
    const far: Curve = {
      kind: 'quadratic',
      start: { x: 0, y: 0 },
      control: { x: 1e300, y: 1e300 },
      end: { x: 1, y: 1 },
    };
    expect(chain(far, 0.005).length).toBeLessThan(70_000);
    const broken: Curve = { ...far, control: { x: Number.NaN, y: 0 } };
    expect(chain(broken, 0.005).length).toBe(2);
  });
});

describe('flattenSubpath', () => {
  const square: Curve[] = [
    { kind: 'line', start: { x: 0, y: 0 }, end: { x: 10, y: 0 } },
    { kind: 'line', start: { x: 10, y: 0 }, end: { x: 10, y: 10 } },
    { kind: 'line', start: { x: 10, y: 10 }, end: { x: 10, y: 10 } },
    { kind: 'line', start: { x: 10, y: 10 }, end: { x: 0, y: 10 } },
    { kind: 'line', start: { x: 0, y: 10 }, end: { x: 0, y: 0 } },
  ];

  it('drops repeated points and the closing one', () => {
    expect([...flattenSubpath(square, 0.005)]).toEqual([0, 0, 10, 0, 10, 10, 0, 10]);
    expect([...flattenSubpath(square.slice(0, 4), 0.005)]).toEqual([0, 0, 10, 0, 10, 10, 0, 10]);
    expect(flattenSubpath([], 0.005).length).toBe(0);
  });

  it('joins curves that do not meet by a straight line', () => {
    expect([
      ...flattenSubpath(
        [square[0], square[3]].flatMap((side) => side ?? []),
        0.005,
      ),
    ]).toEqual([0, 0, 10, 0, 10, 10, 0, 10]);
  });

  it('leaves out points that are not finite', () => {
    const broken: Curve[] = [...square, { kind: 'line', start: { x: 0, y: 0 }, end: { x: Number.NaN, y: 3 } }];
    expect([...flattenSubpath(broken, 0.005)]).toEqual([0, 0, 10, 0, 10, 10, 0, 10]);
  });

  it('has the area of a circle to the accuracy that the tolerance allows', () => {
    const half = [0, Math.PI].map((from) => arcFrom({ x: 0, y: 0 }, { x: 50, y: 0 }, { x: 0, y: 50 }, from, Math.PI));
    const lost = Math.PI * 2500 - signedArea(flattenSubpath(half, 0.005));
    expect(lost).toBeGreaterThan(0);
    expect(lost).toBeLessThan(0.005 * 2 * Math.PI * 50);
  });
});

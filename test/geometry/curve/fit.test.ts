import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import { fitRing } from '../../../src/geometry/curve/fit';
import { nearestOn } from '../../../src/geometry/curve/index';

const TOLERANCE = 0.01;

const disc = (radius: number, points: number): Ring =>
  Float64Array.from(
    Array.from({ length: points }, (_, i) => (2 * Math.PI * i) / points).flatMap((a) => [
      radius * Math.cos(a),
      radius * Math.sin(a),
    ]),
  );

function farthest(ring: Ring): number {
  const curves = fitRing(ring, TOLERANCE);
  let most = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const point = { x: ring[i] ?? 0, y: ring[i + 1] ?? 0 };
    most = Math.max(most, Math.min(...curves.map((curve) => nearestOn(curve, point).distance)));
  }
  return most;
}

describe('fitting curves to a ring', () => {
  it('passes all points within the tolerance, and closes', () => {
    const radii = fc.array(fc.double({ min: 5, max: 20, noNaN: true }), { minLength: 3, maxLength: 40 });
    fc.assert(
      fc.property(radii, (values) => {
        const ring = Float64Array.from(
          values.flatMap((radius, i) => {
            const angle = (2 * Math.PI * i) / values.length;
            return [radius * Math.cos(angle), radius * Math.sin(angle)];
          }),
        );
        const curves = fitRing(ring, TOLERANCE);
        curves.forEach((curve, i) => expect(curve.end).toEqual(curves[(i + 1) % curves.length]?.start));
        expect(farthest(ring)).toBeLessThan(TOLERANCE);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps corners and straight sides as they are', () => {
    const square = Float64Array.of(0, 0, 40, 0, 40, 30, 0, 30);
    expect(fitRing(square, TOLERANCE).map(({ kind }) => kind)).toEqual(['line', 'line', 'line', 'line']);
  });

  it('needs few curves for a circle', () => {
    expect(fitRing(disc(20, 240), TOLERANCE).length).toBeLessThan(20);
    expect(farthest(disc(20, 240))).toBeLessThan(TOLERANCE);
  });
});

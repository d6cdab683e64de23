import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import { fitChain, fitRing } from '../../../src/geometry/curve/fit';
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

  it('keeps straight edges between round corners, and rounds those by few curves', () => {
    const [wide, high, radius] = [40, 20, 5];
    const centres = [
      [wide - radius, high - radius],
      [radius, high - radius],
      [radius, radius],
      [wide - radius, radius],
    ] as const;
    const ring = Float64Array.from(
      centres.flatMap(([x, y], corner) =>
        Array.from({ length: 31 }, (_, i) => ((corner + i / 30) * Math.PI) / 2).flatMap((angle) => [
          x + radius * Math.cos(angle),
          y + radius * Math.sin(angle),
        ]),
      ),
    );
    const curves = fitRing(ring, TOLERANCE);
    const lines = curves.filter(({ kind }) => kind === 'line');
    // Along the tangent a line may run on into the corner, as far as the tolerance allows.
    const lengths = lines.map(({ start, end }) => Math.hypot(end.x - start.x, end.y - start.y)).sort((a, b) => a - b);
    expect(lengths).toHaveLength(4);
    [10, 10, 30, 30].forEach((length, i) => expect(Math.abs((lengths[i] ?? 0) - length)).toBeLessThan(1));
    expect(curves.length).toBeLessThanOrEqual(4 + 4 * 3);
    expect(farthest(ring)).toBeLessThan(TOLERANCE);
  });

  it('needs few curves for a circle', () => {
    expect(fitRing(disc(20, 240), TOLERANCE).length).toBeLessThan(20);
    expect(farthest(disc(20, 240))).toBeLessThan(TOLERANCE);
  });
});

describe('fitting curves to a chain', () => {
  const wavy = (height: number) => Array.from({ length: 41 }, (_, i) => ({ x: i / 2, y: height * Math.sin(i) }));

  it('is one line where it strays from that by less than the tolerance', () => {
    const points = wavy(0.4 * TOLERANCE);
    expect(fitChain(points, TOLERANCE)).toEqual([{ kind: 'line', start: points[0], end: points.at(-1) }]);
  });

  it('passes all points within the tolerance, from the first to the last', () => {
    const points = wavy(0.5);
    const curves = fitChain(points, TOLERANCE);
    expect([curves[0]?.start, curves.at(-1)?.end]).toEqual([points[0], points.at(-1)]);
    for (const point of points) {
      expect(Math.min(...curves.map((curve) => nearestOn(curve, point).distance))).toBeLessThan(TOLERANCE);
    }
  });
});

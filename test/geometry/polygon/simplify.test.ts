import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import { simplifyRing } from '../../../src/geometry/polygon/simplify';

const circle = (count: number, radius: number) =>
  Float64Array.from(
    { length: 2 * count },
    (_, i) => radius * (i % 2 === 0 ? Math.cos : Math.sin)((2 * Math.PI * (i >> 1)) / count),
  );

/** How far the points of one ring lie from the other ring's edges, at most. */
function farthest(points: Ring, ring: Ring): number {
  let most = 0;
  for (let p = 0; p < points.length; p += 2) {
    let least = Infinity;
    for (let e = 0; e < ring.length; e += 2) {
      const [x, y] = [ring[e]!, ring[e + 1]!];
      const [dx, dy] = [ring[(e + 2) % ring.length]! - x, ring[(e + 3) % ring.length]! - y];
      const along = (points[p]! - x) * dx + (points[p + 1]! - y) * dy;
      const t = Math.max(0, Math.min(1, along / (dx * dx + dy * dy || 1)));
      least = Math.min(least, Math.hypot(points[p]! - x - t * dx, points[p + 1]! - y - t * dy));
    }
    most = Math.max(most, least);
  }
  return most;
}

describe('simplifyRing', () => {
  it('keeps within the tolerance of every point', () => {
    const rings = fc
      .array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 6, maxLength: 60 })
      .map((numbers) => Float64Array.from(numbers.slice(0, numbers.length & ~1)));
    fc.assert(
      fc.property(rings, fc.double({ min: 0.001, max: 1, noNaN: true }), (ring, tolerance) => {
        const simple = simplifyRing(ring, tolerance);
        if (simple.length > 0) expect(farthest(ring, simple)).toBeLessThanOrEqual(tolerance * 1.0001);
      }),
    );
  });

  it('leaves a circle the points it needs, and corners and needles theirs', () => {
    const simple = simplifyRing(circle(2000, 10), 0.02);
    expect(simple.length / 2).toBeGreaterThan(30);
    expect(simple.length / 2).toBeLessThan(150);
    const needle = Float64Array.of(0, 0, 10, 0, 10, 5, 40, 5.001, 10, 5.002, 10, 10, 0, 10);
    expect([...simplifyRing(needle, 0.01)]).toContain(40);
    expect(simplifyRing(Float64Array.of(0, 0, 1, 0), 0.1)).toHaveLength(0);
  });
});

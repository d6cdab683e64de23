import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intervalWithin, nearestApproach, type Segment } from '../../../src/geometry/spatial/segment-distance';

const coordinate = fc.oneof(fc.integer({ min: -4, max: 4 }), fc.double({ min: -5, max: 5, noNaN: true }));
const segment: fc.Arbitrary<Segment> = fc.record({ ax: coordinate, ay: coordinate, bx: coordinate, by: coordinate });

const WHOLE = { from: 0, to: 1 };
const STEPS = 400;

/** From a place of the first to the second, by the textbook's projection. */
function distanceAt({ ax, ay, bx, by }: Segment, t: number, other: Segment): number {
  const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)];
  const [dx, dy] = [other.bx - other.ax, other.by - other.ay];
  const square = dx * dx + dy * dy;
  const u = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - other.ax) * dx + (y - other.ay) * dy) / square));
  return Math.hypot(other.ax + u * dx - x, other.ay + u * dy - y);
}

const samples = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);

describe('two segments', () => {
  it('are as near as the nearest of many places, and nearer by no more than a step', () => {
    fc.assert(
      fc.property(segment, segment, (one, other) => {
        const { distance, t, u } = nearestApproach(one, WHOLE, other);
        const seen = Math.min(...samples.map((at) => distanceAt(one, at, other)));
        const step = Math.hypot(one.bx - one.ax, one.by - one.ay) / STEPS;
        expect(distance).toBeLessThanOrEqual(seen + 1e-6);
        expect(distance).toBeGreaterThanOrEqual(seen - step - 1e-9);
        const [x, y] = [one.ax + t * (one.bx - one.ax), one.ay + t * (one.by - one.ay)];
        expect(
          Math.hypot(other.ax + u * (other.bx - other.ax) - x, other.ay + u * (other.by - other.ay) - y),
        ).toBeCloseTo(distance, 6);
      }),
    );
  });

  it('are within a distance along one stretch, which is all there is', () => {
    fc.assert(
      fc.property(segment, segment, fc.double({ min: 0.1, max: 3, noNaN: true }), (one, other, distance) => {
        const stretch = intervalWithin(one, other, distance);
        for (const t of samples) {
          const away = distanceAt(one, t, other) - distance;
          const inside = stretch !== undefined && t >= stretch.from && t <= stretch.to;
          if (Math.abs(away) > 1e-6) expect(inside).toBe(away < 0);
        }
      }),
    );
  });

  it('give the middle of a stretch along which they are as near', () => {
    const [one, other] = [
      { ax: 0, ay: 0, bx: 10, by: 0 },
      { ax: -5, ay: 1, bx: 15, by: 1 },
    ];
    expect(nearestApproach(one, WHOLE, other)).toMatchObject({ distance: 1, t: 0.5, u: 0.5 });
    expect(nearestApproach(one, { from: 0, to: 0.5 }, other)).toMatchObject({ t: 0.25 });
  });
});

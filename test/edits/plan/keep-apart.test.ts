import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossesTaken, type TakenGround } from '../../../src/edits/plan/keep-apart';
import { nearestApproach, type Segment } from '../../../src/geometry/spatial/segment-distance';

const WHOLE = { from: 0, to: 1 };

function outlineOf(corners: readonly (readonly [number, number])[]): Segment[] {
  return corners.map(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length] ?? [ax, ay];
    return { ax, ay, bx, by };
  });
}

function takenBy(corners: readonly (readonly [number, number])[], distance: number): TakenGround {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const box = { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
  return { places: [{ edges: outlineOf(corners), box }], distance };
}

const wayOf = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]) => ({
  from: { x: ax, y: ay },
  to: { x: bx, y: by },
  length: Math.hypot(bx - ax, by - ay),
  target: 0,
});

const SQUARE = [
  [10, 10],
  [12, 10],
  [12, 12],
  [10, 12],
] as const;

describe('crossesTaken', () => {
  it('is said of a way through what is taken, or nearer to it than the distance', () => {
    const taken = takenBy(SQUARE, 1);
    expect(crossesTaken(wayOf([0, 11], [20, 11]), taken)).toBe(true);
    expect(crossesTaken(wayOf([0, 11], [9.5, 11]), taken)).toBe(true);
    expect(crossesTaken(wayOf([0, 11], [8.9, 11]), taken)).toBe(false);
    // The boxes are near, the lines are not.
    expect(crossesTaken(wayOf([8.2, 9.2], [9.2, 8.2]), taken)).toBe(false);
  });

  it('agrees with the distance of all pairs of edges', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }));
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 3, maxLength: 9 }),
        place,
        place,
        fc.integer(),
        (corners, a, b, seed) => {
          const distance = 0.5 + (Math.abs(seed) % 8);
          const way = { ax: a[0], ay: a[1], bx: b[0], by: b[1] };
          const nearest = Math.min(...outlineOf(corners).map((edge) => nearestApproach(way, WHOLE, edge).distance));
          expect(crossesTaken(wayOf(a, b), takenBy(corners, distance))).toBe(nearest < distance);
        },
      ),
      { numRuns: 500 },
    );
  });
});

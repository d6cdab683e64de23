/** The closed forms against plain sampling: distances from discs' centres to obstacles, place by place. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildOutline, type Outline } from '../../../src/geometry/thickness/boundary-arrays';
import {
  type BlockedInterval,
  blockedInCone,
  blockedOnEdge,
  boundaryPointAt,
  sizeOf,
  squareToEdge,
  touchEdge,
} from '../../../src/geometry/thickness/tangent-disc';
import { polygon, ring } from './shapes';

const coordinate = fc.oneof(fc.double({ min: -3, max: 3, noNaN: true }), fc.integer({ min: -3, max: 3 }));
const point = fc.tuple(coordinate, coordinate);
const radius = fc.double({ min: 0.2, max: 3, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

/**
 * Three vertices that turn to the right at the second, so that edge 0, cone 1 and edge 1 are there; edge 3 is the
 * obstacle.
 */
function outlineOf(...[a, b, c, d]: readonly (readonly [number, number])[]): Outline | undefined {
  if (!a || !b || !c || !d) return undefined;
  const outline = buildOutline([polygon(ring(...a, 0, 0, ...b), ring(...c, ...d, 50, 50))]);
  return outline.count === 6 && outline.length[3]! > 0.01 ? outline : undefined;
}

function isWithin(outline: Outline, element: number, parameter: number, reach: number, radius: number): boolean {
  const place = boundaryPointAt(outline, element, parameter, { x: 0, y: 0, normalX: 0, normalY: 0 });
  const [x, y] = [place.x + radius * place.normalX, place.y + radius * place.normalY];
  return Math.sqrt(squareToEdge(outline, 3, x, y)) < reach;
}

describe('stretches blocked by an obstacle', () => {
  const outlines = fc.tuple(point, point, point, point).map((points) => outlineOf(...points));

  it('on an edge hold exactly the places whose discs it reaches into', () => {
    const blocked: BlockedInterval = { from: 0, to: 0 };
    fc.assert(
      fc.property(outlines, radius, share, (outline, r, at) => {
        if (!outline) return;
        const parameter = at * sizeOf(outline, 1);
        const found = blockedOnEdge(outline, 0, 3, r, blocked) && blocked.from < parameter && parameter < blocked.to;
        if (isWithin(outline, 1, parameter, r - 1e-6, r)) expect(found).toBe(true);
        if (!isWithin(outline, 1, parameter, r + 1e-9, r)) expect(found).toBe(false);
      }),
      { numRuns: 3000 },
    );
  });

  it('in a cone hold exactly the turns whose discs it reaches into', () => {
    const blocked: BlockedInterval = { from: 0, to: 0 };
    let [inside, outside] = [0, 0];
    fc.assert(
      fc.property(outlines, radius, share, (outline, r, at) => {
        if (!outline || outline.cone[1] === 0) return;
        const turn = at * sizeOf(outline, 2);
        const any = blockedInCone(outline, 1, 3, r, blocked);
        const found =
          any &&
          [-1, 0, 1].some((k) => {
            const shifted = turn + 2 * Math.PI * k;
            return blocked.from < shifted && shifted < blocked.to;
          });
        // Contact with the vertex itself is tested apart.
        if (squareToEdge(outline, 3, outline.x[1]!, outline.y[1]!) < 1e-6) return;
        if (isWithin(outline, 2, turn, r - 1e-6, r)) {
          expect(found).toBe(true);
          inside += 1;
        }
        if (!isWithin(outline, 2, turn, r + 1e-9, r)) {
          expect(found).toBe(false);
          outside += 1;
        }
      }),
      { numRuns: 15_000 },
    );
    expect(Math.min(inside, outside)).toBeGreaterThan(200);
  });

  it('in a cone that the obstacle touches are those on its side', () => {
    const outline = outlineOf([-2, -1], [2, -1], [0, 0], [0, 5])!;
    const blocked: BlockedInterval = { from: 0, to: 0 };
    expect(outline.cone[1]).toBeGreaterThan(0);
    expect(blockedInCone(outline, 1, 3, 0.4, blocked)).toBe(true);
    expect(blocked.from).toBeLessThan(0);
    expect(blocked.to).toBeGreaterThan(outline.cone[1]!);
  });
});

describe('the disc that touches an obstacle', () => {
  it('has it at its rim and not within', () => {
    fc.assert(
      fc.property(fc.tuple(point, point, point, point), share, (points, at) => {
        const outline = outlineOf(...points);
        if (!outline) return;
        const place = boundaryPointAt(outline, 1, at * sizeOf(outline, 1), { x: 0, y: 0, normalX: 0, normalY: 0 });
        if (squareToEdge(outline, 3, place.x, place.y) < 1e-6) return;
        const touch = { radius: 1e4, edge: -1, at: 0 };
        if (!touchEdge(outline, place, 3, touch)) {
          const ends = [3, 4].map((end) => {
            const [dx, dy] = [outline.x[end]! - place.x, outline.y[end]! - place.y];
            return dx * place.normalX + dy * place.normalY;
          });
          expect(Math.max(...ends)).toBeLessThan(1e-2);
          return;
        }
        const [x, y] = [place.x + touch.radius * place.normalX, place.y + touch.radius * place.normalY];
        expect(Math.sqrt(squareToEdge(outline, 3, x, y)) / touch.radius).toBeCloseTo(1, 6);
        const [tx, ty] = [outline.x[3]! + touch.at * outline.alongX[3]!, outline.y[3]! + touch.at * outline.alongY[3]!];
        expect(Math.hypot(tx - x, ty - y) / touch.radius).toBeCloseTo(1, 6);
      }),
      { numRuns: 2000 },
    );
  });
});

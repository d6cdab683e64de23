import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import { distanceToEdge, pointsOf, reverseRing, ringOfBox } from '../../../src/geometry/base/ring';
import {
  areaOf,
  complementInBox,
  difference,
  regionFromRings,
  splitAtPinchPoints,
  splitAtPinchPointsAgain,
} from '../../../src/geometry/boolean/index';

function square(minX: number, minY: number, size: number): Ring {
  return ringOfBox({ minX, minY, maxX: minX + size, maxY: minY + size });
}

/** One polygon, as a hand-made pinched ring. */
function pieces(...rings: Ring[]): number {
  const [outer, ...holes] = rings;
  return outer ? splitAtPinchPoints([{ outer, holes }]).length : 0;
}

describe('splitAtPinchPoints', () => {
  it('parts what touches vertex on vertex', () => {
    expect(pieces(Float64Array.of(0, 0, 5, 0, 5, 5, 10, 5, 10, 10, 5, 10, 5, 5, 0, 5))).toBe(2);
  });

  it('parts what touches vertex on edge', () => {
    expect(pieces(Float64Array.of(0, 0, 10, 0, 10, 5, 5, 5, 9, 9, 1, 9, 5, 5, 0, 5))).toBe(2);
  });

  it('parts a slit of no width, and one of two grid units', () => {
    expect(pieces(Float64Array.of(0, 0, 5, 0, 5, 2, 9, 2, 9, 0, 14, 0, 14, 5, 9, 5, 9, 2, 5, 2, 5, 5, 0, 5))).toBe(2);
    const slit = 2e-4;
    const bell = Float64Array.of(
      0,
      0,
      5,
      0,
      5,
      2,
      9,
      2,
      9,
      0,
      14,
      0,
      14,
      5,
      9,
      5,
      9,
      2 + slit,
      5,
      2 + slit,
      5,
      5,
      0,
      5,
    );
    expect(pieces(bell)).toBe(2);
  });

  it('keeps a bridge of a micrometre', () => {
    const width = 1e-3;
    const bell = Float64Array.of(
      0,
      0,
      5,
      0,
      5,
      2,
      9,
      2,
      9,
      0,
      14,
      0,
      14,
      5,
      9,
      5,
      9,
      2 + width,
      5,
      2 + width,
      5,
      5,
      0,
      5,
    );
    expect(pieces(bell)).toBe(1);
  });

  it('takes a piece out of its hole where it touches the hole in points', () => {
    const hole = reverseRing(Float64Array.of(2, 2, 12, 2, 12, 12, 2, 12));
    expect(splitAtPinchPoints([{ outer: square(0, 0, 14), holes: [hole] }]).length).toBe(1);
    const loop = Float64Array.of(2, 2, 2, 12, 12, 12, 12, 7, 7, 10, 5, 7, 7, 4, 12, 7, 12, 2);
    expect(pieces(square(0, 0, 14), loop)).toBe(2);
  });

  it('passes clean polygons on untouched', () => {
    const clean = regionFromRings([square(0, 0, 10), reverseRing(square(3, 3, 4)), square(20, 0, 5)], 'nonzero');
    splitAtPinchPoints(clean).forEach((polygon, index) => expect(polygon).toBe(clean[index]));
  });

  it('finds pinches at any angle', () => {
    const angle = fc.double({ min: 0, max: Math.PI, noNaN: true });
    fc.assert(
      fc.property(angle, fc.double({ min: 0.05, max: 1.4, noNaN: true }), (turn, spread) => {
        const arm = (direction: number): [number, number] => [20 * Math.cos(direction), 20 * Math.sin(direction)];
        const ring = Float64Array.of(
          0,
          0,
          ...arm(turn),
          ...arm(turn + spread),
          0,
          0,
          ...arm(turn + Math.PI),
          ...arm(turn + Math.PI + spread),
        );
        expect(pieces(ring)).toBe(2);
      }),
    );
  });

  it('finds the same rings in contact as when every vertex is held against every edge', () => {
    const step = fc.integer({ min: 0, max: 60 });
    const ring = fc
      .array(fc.tuple(step, step), { minLength: 3, maxLength: 40 })
      .map((points) => Float64Array.from(points.flat()));
    fc.assert(
      fc.property(fc.array(ring, { minLength: 1, maxLength: 4 }), ([outer = new Float64Array(), ...holes]) => {
        expect(splitAtPinchPointsAgain([{ outer, holes }]).touching).toEqual(touchingAmong([outer, ...holes]));
      }),
      { numRuns: 300 },
    );
  });

  it('finds among long edges aslant the one contact', () => {
    const teeth = Array.from({ length: 400 }, (_, i) => [i + (i % 2) * 1000, i - (i % 2) * 1000]).flat();
    const closing = (x: number, y: number) =>
      Float64Array.of(...teeth, 401, 401, 401, 402, -5, 402, -5, y, x, y, -5, y - 1);
    for (let at = 20; at < 400; at += 20) {
      for (const [ring, touching] of [
        [closing(at - 1, at), 0],
        [closing(at, at), 1],
      ] as const) {
        expect(touchingAmong([ring]).size).toBe(touching);
        expect(splitAtPinchPointsAgain([{ outer: ring, holes: [] }]).touching.size).toBe(touching);
      }
    }
  });

  it('changes the area by no more than a tenth of a micrometre along the outline', () => {
    const ring = Float64Array.of(0, 0, 5, 0, 5, 5, 10, 5, 10, 10, 5, 10, 5, 5, 0, 5);
    expect(areaOf(splitAtPinchPoints([{ outer: ring, holes: [] }]))).toBeGreaterThan(50 - 40 * 1.01e-4);
  });

  it('gives the same pieces whether the sheet was turned inside out or cut by a difference', () => {
    const grid = fc.array(fc.boolean(), { minLength: 36, maxLength: 36 });
    fc.assert(
      fc.property(grid, (cells) => {
        const rings = cells.flatMap((open, cell) =>
          open ? [square(1 + (cell % 6), 1 + Math.floor(cell / 6), 1)] : [],
        );
        const openings = regionFromRings(rings, 'nonzero');
        const frame = { minX: 0, minY: 0, maxX: 8, maxY: 8 };
        const inside = splitAtPinchPoints(complementInBox(openings, frame));
        const real = difference([{ outer: ringOfBox(frame), holes: [] }], openings);
        expect(inside.length).toBe(real.length);
        expect(inside.length).toBe(componentsOf(cells));
        expect(areaOf(inside)).toBeCloseTo(areaOf(real), 1);
      }),
      { numRuns: 150 },
    );
  });
});

/** Rings with a vertex within two grid units of an edge that it does not belong to, and those of the edges. */
function touchingAmong(rings: readonly Ring[]): Set<Ring> {
  const touching = new Set<Ring>();
  for (const [one, other] of rings.flatMap((a) => rings.map((b) => [a, b] as const))) {
    const corners = pointsOf(other);
    const isMet = pointsOf(one).some(({ x, y }, vertex) =>
      corners.some((from, edge) => {
        const next = (edge + 1) % corners.length;
        if (one === other && (vertex === edge || vertex === next)) return false;
        const to = corners[next] ?? from;
        return distanceToEdge(x, y, from.x, from.y, to.x, to.y) <= 2e-4;
      }),
    );
    if (isMet) touching.add(one).add(other);
  }
  return touching;
}

/** Closed cells joined over edges, by flood fill on the board with its border of closed cells. */
function componentsOf(cells: readonly boolean[]): number {
  const closed = (x: number, y: number): boolean =>
    x < 1 || y < 1 || x > 6 || y > 6 || cells[(y - 1) * 6 + x - 1] === false;
  const seen = new Set<number>();
  let components = 0;
  for (let start = 0; start < 64; start += 1) {
    if (seen.has(start) || !closed(start % 8, Math.floor(start / 8))) continue;
    components += 1;
    const waiting = [start];
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
      const [x, y] = [at % 8, Math.floor(at / 8)];
      if (x < 0 || y < 0 || seen.has(at) || !closed(x, y)) continue;
      seen.add(at);
      if (x > 0) waiting.push(at - 1);
      if (x < 7) waiting.push(at + 1);
      if (y > 0) waiting.push(at - 8);
      if (y < 7) waiting.push(at + 8);
    }
  }
  return components;
}

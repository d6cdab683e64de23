/** What necks hold, against the pieces that polygon algebra makes of the polygon cut along the neck. */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/base/curve-types';
import type { Polygon, Ring } from '../../../src/geometry/base/polygon-types';
import { areaOf, regionContains } from '../../../src/geometry/boolean/index';
import { findThinParts } from '../../../src/geometry/thickness/index';
import { cutAlongNecks } from './erosion';
import { randomRegion } from './random-regions';
import { polygon, rectangle, reversed, ring } from './shapes';

function smallerPiece(whole: Polygon, pieces: readonly Polygon[]): Polygon {
  expect(pieces.length).toBeGreaterThan(1);
  expect(areaOf(pieces) / areaOf([whole])).toBeCloseTo(1, 2);
  return pieces.reduce((a, b) => (areaOf([b]) < areaOf([a]) ? b : a));
}

describe('what a neck holds', () => {
  it('is the smaller piece when it is cut, and nothing when the polygon stays whole', () => {
    let [held, free] = [0, 0];
    for (let seed = 300; seed < 380; seed += 1) {
      for (const whole of randomRegion(seed)) {
        for (const neck of findThinParts([whole], 2.1).filter(({ kind }) => kind === 'neck')) {
          const pieces = cutAlongNecks(whole, [neck]);
          if (!neck.holds) {
            expect(pieces).toHaveLength(1);
            free += 1;
            continue;
          }
          const smaller = smallerPiece(whole, pieces);
          expect(Math.abs(neck.holds.area - areaOf([smaller]))).toBeLessThan(0.01);
          expect(regionContains([smaller], neck.holds.at)).toBe(true);
          held += 1;
        }
      }
    }
    expect(held).toBeGreaterThan(40);
    expect(free).toBeGreaterThan(5);
  });

  it('leaves out the holes in it', () => {
    const outer = ring(0, 0, 10, 0, 10, 4.7, 15, 4.7, 15, 0, 35, 0, 35, 10, 15, 10, 15, 5.3, 10, 5.3, 10, 10, 0, 10);
    const region = [polygon(outer, reversed(rectangle(2, 2, 5, 5)), reversed(rectangle(20, 2, 25, 5)))];
    const [neck] = findThinParts(region, 0.8);
    expect(neck!.holds!.area).toBeGreaterThan(91 - 1e-9);
    expect(neck!.holds!.area).toBeLessThan(91 + 5 * 0.6 + 1e-9);
    expect(isIn(neck!.holds!.at, rectangle(0, 0, 10, 10))).toBe(true);
  });

  it('of a tongue in a hole is the tongue', () => {
    // An opening round a square flap that hangs by a neck 0.5 mm wide on the opening's upper side.
    const flap = [15.25, 30, 15.25, 25, 25, 25, 25, 5, 5, 5, 5, 25, 14.75, 25, 14.75, 30];
    const hole = ring(0, 0, 30, 0, 30, 30, ...flap, 0, 30);
    const parts = findThinParts([polygon(rectangle(-50, -50, 80, 80), reversed(hole))], 0.8);
    expect(parts.map(({ kind }) => kind)).toEqual(['neck']);
    expect(parts[0]!.holds!.area).toBeGreaterThan(400 - 1e-9);
    expect(parts[0]!.holds!.area).toBeLessThan(402.5 + 1e-9);
    expect(isIn(parts[0]!.holds!.at, rectangle(5, 5, 25, 25))).toBe(true);
  });
});

function isIn(point: Point, outer: Ring): boolean {
  return regionContains([polygon(outer)], point);
}

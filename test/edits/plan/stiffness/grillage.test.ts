import { describe, expect, it } from 'vitest';
import type { Body } from '../../../../src/edits/plan/search/body';
import { type Beam, gainsOf, grillageOf, liftOfPlate } from '../../../../src/edits/plan/stiffness/grillage';

/** N/mm² and N·mm. */
const BENDING = { load: 25e-6, stiffness: 6.75 };
const STATICS = { bending: BENDING, kerf: 0 };
const [SIZE, LENGTH, WIDTH] = [20, 10, 1];

/** A square plate. */
function plate(x: number, y = 0): Body {
  const half = SIZE / 2;
  const hull = [
    { x: x - half, y: y - half },
    { x: x + half, y: y - half },
    { x: x + half, y: y + half },
    { x: x - half, y: y + half },
  ];
  return { hull, middle: { x, y }, mass: { x, y }, area: SIZE ** 2, size: SIZE * Math.SQRT2, breadth: SIZE };
}

/** Level, from one x to another; 0 is the frame. */
function beam(island: number, target: number, from: number, to: number, width = WIDTH): Beam {
  return { island, target, from: { x: from, y: 0 }, to: { x: to, y: 0 }, width };
}

const BOTH_SIDES = [beam(1, 0, -10, -20), beam(1, 0, 10, 20)];

/** Of one end that is lifted without a slope: both ends clamped, the root giving as half a width does (Euler–Bernoulli). */
function spring(width = WIDTH): number {
  return (12 * BENDING.stiffness * width) / (LENGTH + width) ** 3;
}

describe('plates on beams', () => {
  it('lift by their load over the stiffness of two clamped beams', () => {
    const lift = liftOfPlate(grillageOf(new Map([[1, plate(0)]]), BOTH_SIDES, STATICS), 1).lift;
    expect(lift).toBeCloseTo((BENDING.load * SIZE ** 2) / (2 * spring()), 9);
  });

  it('lift with what they hang on', () => {
    const bodies = new Map([1, 2, 3].map((number, i) => [number, plate(30 * (i - 1))]));
    const row = [beam(1, 0, -40, -50), beam(1, 2, -20, -10), beam(2, 3, 10, 20), beam(3, 0, 40, 50)];
    const grillage = grillageOf(bodies, row, STATICS);
    const [outer, middle, other] = [1, 2, 3].map((number) => liftOfPlate(grillage, number).lift);
    expect(middle).toBeGreaterThan(outer ?? Infinity);
    expect(other).toBeCloseTo(outer ?? 0, 9);
  });

  it('gain by one more beam what they lift less when all is worked out anew', () => {
    const bodies = new Map([[1, plate(0)]]);
    const before = grillageOf(bodies, [beam(1, 0, -10, -20)], STATICS);
    const worst = liftOfPlate(before, 1);
    const after = grillageOf(bodies, BOTH_SIDES, STATICS);
    const [, second] = BOTH_SIDES as [Beam, Beam];
    const corner = plate(0).hull.map(({ x, y }) => {
      const [lift = 0, slopeX = 0, slopeY = 0] = after.moved;
      return { row: [1, x, y], lift: Math.abs(lift + slopeX * x + slopeY * y) };
    });
    const there = corner.find(({ row }) => row.every((value, k) => value === worst.row[k]));
    expect(gainsOf(before, [worst], second)[0]).toBeCloseTo(worst.lift - (there?.lift ?? 0), 9);
  });

  it('gain by a wider beam what they lift less when all is worked out anew', () => {
    const bodies = new Map([[1, plate(0)]]);
    const before = grillageOf(bodies, BOTH_SIDES, STATICS);
    const [first, second] = BOTH_SIDES as [Beam, Beam];
    const wide = { ...first, width: 2 };
    const after = liftOfPlate(grillageOf(bodies, [wide, second], STATICS), 1).lift;
    const worst = liftOfPlate(before, 1);
    // The plate tilts: each of its corners is looked at by itself.
    const lifts = plate(0).hull.map(({ x, y }) => {
      const place = { ...worst, row: [1, x, y] as const };
      return worst.lift - (gainsOf(before, [place], wide, first)[0] ?? 0);
    });
    expect(Math.max(...lifts)).toBeCloseTo(after, 9);
  });

  it('gain by a beam in another place, to another plate, what they lift less when all is worked out anew', () => {
    const bodies = new Map([1, 2].map((number, i) => [number, plate(30 * i)]));
    const kept = [...BOTH_SIDES.slice(0, 1), beam(1, 2, 10, 20)];
    const [old, moved] = [beam(2, 0, 40, 50), { ...beam(1, 0, 10, 20), from: { x: 0, y: 10 }, to: { x: 0, y: 20 } }];
    const before = grillageOf(bodies, [...kept, old], STATICS);
    const after = grillageOf(bodies, [...kept, moved], STATICS);
    const lifts = [1, 2].map((number) => liftOfPlate(before, number));
    const now = lifts.map(({ number, row }) => {
      const at = after.place.get(number) ?? Number.NaN;
      return Math.abs(row.reduce((sum, share, k) => sum + share * (after.moved[at + k] ?? 0), 0));
    });
    const gains = gainsOf(before, lifts, moved, old);
    lifts.forEach(({ lift }, i) => {
      expect(gains[i]).toBeCloseTo(lift - (now[i] ?? 0), 9);
    });
  });
});

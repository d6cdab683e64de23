/**
 * Loose parts whose lift is known in closed form: cantilevers, as in W. C. Young, Roark's Formulas for Stress and Strain,
 * and S. Timoshenko, Strength of Materials (both from memory).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply, multiply, rotation, scaling, translation } from '../../../src/geometry/base/matrix';
import { pointsOf, ringOfPoints } from '../../../src/geometry/base/ring';
import { liftOf } from '../../../src/sheet/lift/index';

const BENDING = { load: 20e-6, stiffness: 6.75 };
const { load: q, stiffness: S } = BENDING;

const ring = (...corners: [number, number][]) => ringOfPoints(corners.map(([x, y]) => ({ x, y })));
const lift = (outline: ReturnType<typeof ring>, ...holes: ReturnType<typeof ring>[]) =>
  liftOf({ outline, holes }, BENDING)?.lift ?? Number.NaN;

/** From the root on the left to the end, as wide at either as said. */
const wedge = (length: number, root: number, end: number) =>
  ring([0, -root / 2], [length, -end / 2], [length, end / 2], [0, root / 2]);

/** A stalk of `length` by `width` with a plate of a × b at its end. */
const paddle = (length: number, width: number, a: number, b: number) =>
  ring(
    [0, -width / 2],
    [length, -width / 2],
    [length, -b / 2],
    [length + a, -b / 2],
    [length + a, b / 2],
    [length, b / 2],
    [length, width / 2],
    [0, width / 2],
  );

describe('the lift of a loose part', () => {
  it.each([0.5, 1, 2, 5])('of a strip %f mm wide is q L⁴ / 8 S_b, whatever its width', (width) => {
    for (const length of [15, 30, 60])
      expect(lift(wedge(length, width, width)) / ((q * length ** 4) / 8 / S)).toBeCloseTo(1, 2);
  });

  it('of a wedge that ends in a point is q L⁴ / 24 S_b: load and width both fall evenly to nothing', () => {
    // At x from the end the moment is q b x³ / 6 L and the stiffness S_b b x / L: the curvature is q x² / 6 S_b.
    const length = 30;
    expect(lift(wedge(length, 3, 0.001)) / ((q * length ** 4) / (24 * S))).toBeCloseTo(1, 1);
  });

  it('of a stalk with a small heavy head is F L³ / 3 S_b w and what the head turns beside: a cantilever with an end mass', () => {
    const [length, width, a, b] = [40, 1, 2, 30];
    const [force, arm] = [q * a * b, a / 2];
    const bend = S * width;
    const own = (q * width * length ** 4) / 8 / bend;
    const atEnd = (force * length ** 3) / 3 / bend + (force * arm * length ** 2) / 2 / bend + own;
    const turn =
      (force * length ** 2) / 2 / bend + (force * arm * length) / bend + (q * width * length ** 3) / 6 / bend;
    expect(lift(paddle(length, width, a, b)) / (atEnd + a * turn)).toBeCloseTo(1, 1);
  });

  it('of a stalk whose head lies aside grows by how the stalk twists', () => {
    const straight = lift(paddle(20, 2, 3, 16));
    const aside = lift(ring([0, -1], [23, -1], [23, 15], [20, 15], [20, 1], [0, 1]));
    expect(aside).toBeGreaterThan(1.1 * straight);
  });

  it('does not count load on holes, and counts what is left beside them', () => {
    const head = paddle(10, 2, 20, 20);
    const rim = ring([12, -8], [12, 8], [28, 8], [28, -8]);
    const share = (20 * 20 - 16 * 16) / (20 * 20);
    expect(lift(head, rim)).toBeLessThan(lift(head));
    expect(lift(head, rim)).toBeGreaterThan(share * lift(head));
  });

  it('is inverse to the width of the root where the head is much wider', () => {
    expect(lift(paddle(15, 1, 15, 15)) / lift(paddle(15, 2, 15, 15))).toBeCloseTo(2, 0);
  });

  it('is the same turned and mirrored', () => {
    const hook = ring([0, -1], [22, -1], [22, 14], [9, 14], [9, 12], [20, 12], [20, 1], [0, 1]);
    const expected = lift(hook);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 7, noNaN: true }), fc.boolean(), (angle, mirrored) => {
        const pose = multiply(translation(30, 40), multiply(rotation(angle), scaling(1, mirrored ? -1 : 1)));
        const points = pointsOf(hook).map((point) => apply(pose, point));
        expect(lift(ringOfPoints(mirrored ? points.reverse() : points)) / expected).toBeCloseTo(1, 2);
      }),
      { numRuns: 50 },
    );
  });

  it('is told where it is greatest, and not of outlines that cross themselves', () => {
    const at = liftOf({ outline: paddle(12, 1, 4, 20), holes: [] }, BENDING)?.at;
    expect(at?.x).toBeCloseTo(16, 3);
    expect(liftOf({ outline: ring([0, 0], [10, 10], [10, 0], [0, 10]), holes: [] }, BENDING)).toBeUndefined();
  });
});

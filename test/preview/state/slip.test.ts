import { expect, test } from 'vitest';
import { apply } from '../../../src/geometry/base/matrix';
import { IN_REGISTER, isSlipped, roundedSlip, slipMatrix } from '../../../src/preview/state/slip';

const sheet = { minX: -10, minY: -10, maxX: 110, maxY: 70 };

test('a slip shifts every place alike; its turn is about the middle of the sheet, clockwise', () => {
  expect(apply(slipMatrix({ x: 2, y: -1, turn: 0 }, sheet), { x: 7, y: 7 })).toEqual({ x: 9, y: 6 });
  const turned = apply(slipMatrix({ x: 0, y: 0, turn: 90 }, sheet), { x: 60, y: 30 });
  expect(turned.x).toBeCloseTo(50, 9);
  expect(turned.y).toBeCloseTo(40, 9);
  const middle = apply(slipMatrix({ x: 3, y: 4, turn: 33 }, sheet), { x: 50, y: 30 });
  expect(middle.x).toBeCloseTo(53, 9);
  expect(middle.y).toBeCloseTo(34, 9);
});

test('slips are kept to the hundredth, without minus nought', () => {
  expect(roundedSlip({ x: 0.1 + 0.2, y: -0.001, turn: 1.006 })).toEqual({ x: 0.3, y: 0, turn: 1.01 });
  expect(isSlipped(roundedSlip({ x: 0.004, y: -0.004, turn: 0 }))).toBe(false);
  expect(isSlipped(IN_REGISTER)).toBe(false);
});

/** What is near to a bridge on the picture, in pixels. */
import { expect, it as test } from 'vitest';
import { IDENTITY } from '../../../src/geometry/base/matrix';
import { distanceTo, handlesOf } from '../../../src/preview/canvas/bridge-handles';

/** 0.8 mm wide and 2.4 mm long, upright; drawn four pixels to the mm. */
const bridge = { centre: { x: 10, y: 5 }, along: { x: 0, y: 1 }, width: 0.8, length: 2.4 };
const view = { scale: 4, x: 100, y: 0 };

test('on the bridge there is no distance, beside it there is', () => {
  expect(distanceTo(bridge, { x: 140, y: 20 }, IDENTITY, view)).toBe(0);
  expect(distanceTo(bridge, { x: 140 + 1.6 + 7, y: 20 }, IDENTITY, view)).toBeCloseTo(7, 10);
  expect(distanceTo(bridge, { x: 140 + 1.6 + 3, y: 20 + 4.8 + 4 }, IDENTITY, view)).toBeCloseTo(5, 10);
});

test('handles stand beside both sides, as far in pixels however small the bridge is drawn', () => {
  for (const scale of [1, 4, 40]) {
    const [a, b] = handlesOf(bridge, IDENTITY, { scale, x: 0, y: 0 });
    expect(Math.abs(a.x - b.x)).toBeCloseTo(26 + 0.8 * scale, 10);
    expect(a.y).toBeCloseTo(5 * scale, 10);
  }
});

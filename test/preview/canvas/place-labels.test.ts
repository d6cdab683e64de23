import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeLabels } from '../../../src/preview/canvas/place-labels';

const distance = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);

test('a lone label stands to the upper right', () => {
  const [label] = placeLabels([{ x: 100, y: 100 }]);
  expect(label?.x).toBeGreaterThan(100);
  expect(label?.y).toBeLessThan(100);
});

test('findings without a place have no label, and the others keep their order', () => {
  const labels = placeLabels([undefined, { x: 0, y: 0 }, undefined]);
  expect(labels.map((label) => label !== undefined)).toEqual([false, true, false]);
});

test('labels of a few places, even all in one, hide neither each other nor the places', () => {
  const pixel = fc.integer({ min: 0, max: 400 });
  fc.assert(
    fc.property(fc.array(fc.record({ x: pixel, y: pixel }), { maxLength: 6 }), (given) => {
      const labels = placeLabels(given).flatMap((label) => (label ? [label] : []));
      labels.forEach((label, i) => {
        for (const other of labels.slice(i + 1)) expect(distance(label, other)).toBeGreaterThan(20);
        for (const place of given) expect(distance(label, place)).toBeGreaterThan(20);
      });
    }),
  );
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CLUSTER_ROOM, clustersOf, middleOf } from '../../../src/preview/canvas/clusters';

const pixel = fc.integer({ min: 0, max: 600 });
const marks = fc.array(fc.record({ at: fc.record({ x: pixel, y: pixel }), selected: fc.constant(false) }), {
  maxLength: 200,
});
const distance = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);

test('each mark is in one cluster, near the one that stands for it; those that stand for clusters are apart', () => {
  fc.assert(
    fc.property(marks, (given) => {
      const clusters = clustersOf(given);
      expect(clusters.flat()).toHaveLength(given.length);
      expect(new Set(clusters.flat()).size).toBe(given.length);
      const heads = clusters.map(([head]) => head!.at);
      for (const [head, ...others] of clusters) {
        for (const { at } of others) expect(distance(at, head!.at)).toBeLessThan(CLUSTER_ROOM);
      }
      heads.forEach((head, i) => {
        for (const other of heads.slice(i + 1)) expect(distance(head, other)).toBeGreaterThanOrEqual(CLUSTER_ROOM);
      });
    }),
  );
});

test('the chosen one stands by itself', () => {
  const at = { x: 5, y: 5 };
  const [first, second, third] = [false, true, false].map((selected) => ({ at, selected }));
  expect(clustersOf([first!, second!, third!])).toEqual([[first, third], [second]]);
});

test('nearer, clusters come apart', () => {
  const at = (scale: number) => [0, 10, 20, 30].map((x) => ({ at: { x: x * scale, y: 0 }, selected: false }));
  expect([1, 2, 4].map((scale) => clustersOf(at(scale)).length)).toEqual([1, 2, 4]);
  expect(middleOf(at(1))).toEqual({ x: 15, y: 0 });
});

/** Bridges in drawings whose every line is too thin to paint: that is a fault of the drawing, and bridges are not to pay for it. */
import { expect, it as test } from 'vitest';
import { bridgeIslands, check } from '../../../../src/engine/index';
import type { Point } from '../../../../src/geometry/base/curve-types';
import { distance } from '../../../../src/geometry/base/vector';

const SIDE = 100;

/** The star polygon {n/k} in a line of 0.1 mm, a tip upwards. */
function star(n: number, k: number): string {
  const tips = Array.from({ length: n }, (_, i) => {
    const turn = (2 * Math.PI * ((i * k) % n)) / n;
    return `${(SIDE / 2 + 40 * Math.sin(turn)).toFixed(3)} ${(SIDE / 2 - 40 * Math.cos(turn)).toFixed(3)}`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100" data-tombolo-reading="openings">
<g id="Star"><path d="M${tips.join('L')}Z" fill="none" stroke="#000" stroke-width="0.1"/></g></svg>`;
}

const mirrored = ({ x, y }: Point): Point => ({ x: SIDE - x, y });
const isNear = (a: Point, b: Point): boolean => distance(a, b) < 0.3;

test.each([
  [5, 2],
  [7, 2],
  [7, 3],
])('the star {%i/%i} is bridged whole, and alike on both sides', (n, k) => {
  const { text, plan, refusals } = bridgeIslands(check(star(n, k)));
  expect(refusals).toEqual([]);
  expect(check(text).sheets[0]?.pieces.filter(({ island }) => island)).toEqual([]);
  const hasImage = ({ from, to }: { from: Point; to: Point }): boolean => {
    const [a, b] = [mirrored(from), mirrored(to)];
    return plan.some(
      (other) => (isNear(other.from, a) && isNear(other.to, b)) || (isNear(other.from, b) && isNear(other.to, a)),
    );
  };
  expect(plan.filter((bridge) => !hasImage(bridge))).toEqual([]);
});

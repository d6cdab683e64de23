/** Islands of a layer that is so large that few proofs are made of it. */
import { expect, it as test } from 'vitest';
import { bridgeIslands, check } from '../../../../src/engine/index';

/** Edges of one dot. */
const EDGES = 100;

const dot = (x: number, y: number): string => {
  const points = Array.from({ length: EDGES }, (_, i) => {
    const turn = (2 * Math.PI * i) / EDGES;
    return `${(x + 0.8 * Math.cos(turn)).toFixed(3)} ${(y + 0.8 * Math.sin(turn)).toFixed(3)}`;
  });
  return `M${points.join('L')}Z`;
};

/** A bar that reaches near the sheet with one end alone, 35 mm from it with the other, and so many dots below it. */
function bar(dots: number): string {
  const below = Array.from({ length: dots }, (_, i) => dot(4 + 3 * (i % 40), 84 + 3 * Math.floor(i / 40))).join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="128mm" height="120mm" viewBox="0 0 128 120" data-tombolo-reading="openings">
<path fill-rule="evenodd" d="M5 5H123V80H5ZM8 42H90V44H8Z"/><path d="${below}"/></svg>`;
}

test.each([1, 280])('a bar that no bridge keeps from lifting is bridged and told of, beside %i dots', (dots) => {
  const { bridges, refusals, brings } = bridgeIslands(check(bar(dots)));
  expect({ bridges, refusals }).toEqual({ bridges: 1, refusals: [] });
  expect(brings.map((each) => each.check)).toContain('loose-tongue');
});

/**
 * The lift of loose parts beside an independent finite-element plate, and beside an elastica for large bends. What either is,
 * stands with it.
 */
import { describe, expect, it, test } from 'vitest';
import { liftOf } from '../../src/sheet/lift/index';
import { LOOSE_SHAPES } from './loose-shapes';
import { largestDeflection } from './plate';

/** 0.3 mm card, and what presses on it. */
const BENDING = { load: 22e-6, stiffness: 6.75 };
const POISSON = 0.3;

describe('a loose part lifts as a plate does that is clamped at its root, within a tenth', () => {
  expect(LOOSE_SHAPES).toHaveLength(50);
  it.each(LOOSE_SHAPES.map((shape) => [shape.name, shape] as const))('%s', (_, { outline, holes, ...plate }) => {
    const ours = liftOf({ outline, holes }, BENDING)?.lift ?? Number.NaN;
    const theirs = largestDeflection({ ...plate, ...BENDING, poisson: POISSON });
    expect(Math.abs(ours / theirs - 1)).toBeLessThan(0.1);
  });
});

/**
 * The plate itself, beside the largest deflections of square plates in S. Timoshenko and S. Woinowsky-Krieger, Theory of
 * Plates and Shells, 1959 (from memory): 0.00126 q a⁴ / D where all edges are clamped.
 */
test('the plate of the comparison is one', () => {
  const side = Array.from({ length: 21 }, (_, i) => i / 2);
  const onEdge = (value: number) => Math.abs(value * (value - 10)) < 1e-9;
  const plate = { x: side, y: side, isSolid: () => true, isClamped: (x: number, y: number) => onEdge(x) || onEdge(y) };
  const stiffness = 1 - POISSON ** 2;
  expect(largestDeflection({ ...plate, load: 1, stiffness, poisson: POISSON })).toBeCloseTo(0.00126 * 10 ** 4, 0);
});

/** By shooting: θ″ = −k (1 − s) cos θ, in lengths, with k = q L³ / S_b; the load keeps its direction. */
function droopOfElastica(k: number): number {
  const endBend = (start: number): { bend: number; droop: number } => {
    const [steps] = [2000];
    let [turn, bend, droop] = [0, start, 0];
    for (let i = 0; i < steps; i += 1) {
      const h = 1 / steps;
      const slope = (s: number, angle: number) => -k * (1 - s) * Math.cos(angle);
      const middle = turn + (h / 2) * bend;
      const bent = bend + h * slope((i + 0.5) / steps, middle);
      droop += h * Math.sin(middle);
      turn += (h / 2) * (bend + bent);
      bend = bent;
    }
    return { bend, droop };
  };
  let [low, high] = [0, k];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (endBend(middle).bend > 0) high = middle;
    else low = middle;
  }
  return endBend((low + high) / 2).droop;
}

describe('large bends', () => {
  it.each([
    [0.5, 0.0623, 0.003],
    [1, 0.1235, 0.012],
    [2, 0.2385, 0.048],
    [4, 0.4252, 0.176],
  ])('at k = %f a strip lifts by %f of its length, and the linear formula is too large by %f', (k, lift, excess) => {
    const exact = droopOfElastica(k);
    expect(exact).toBeCloseTo(lift, 3);
    expect(k / 8 / exact - 1).toBeCloseTo(excess, 2);
  });

  it('up to a tenth of the length the formula is right within a hundredth', () => {
    expect(0.8 / 8 / droopOfElastica(0.8) - 1).toBeLessThan(0.01);
  });
});

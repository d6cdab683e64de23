/** Bridges in a made stack whose later layers cover known places. */
import { beforeAll, describe, expect, it } from 'vitest';
import { polygonOf, stripAlong } from '../../src/edits/strip/strip';
import { bridgeIslands, check } from '../../src/engine/index';
import { areaOf, intersection, union } from '../../src/geometry/boolean/index';
import { applyEdits } from '../../src/text/text';

const stack = (...layers: string[]) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="120mm" viewBox="0 0 120 120">${layers
    .map((inside, i) => `<g id="layer-${i}">${inside}</g>`)
    .join('\n')}</svg>`;

/** A frame of paint 10 mm wide about an island of 16 × 16 mm. */
const ring = (x: number, y: number) =>
  `<path fill-rule="evenodd" d="M${x} ${y}h36v36h-36zM${x + 10} ${y + 10}h16v16h-16z"/>`;
const rect = (x: number, y: number, width: number, height: number) =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}"/>`;

/**
 * Rings in the first layer; later ones cover the top and bottom of one, two corners of another, nothing of the third.
 */
const rings = ring(10, 10) + ring(70, 10) + ring(10, 70);
const covers = [rect(8, 8, 40, 14) + rect(8, 34, 40, 14), rect(68, 8, 16, 16) + rect(92, 32, 16, 16)];
const svg = stack(rings, ...covers);

describe('bridges under later paint', () => {
  const report = check(svg);
  let bridges: ReturnType<typeof bridgeIslands>;
  beforeAll(() => {
    bridges = bridgeIslands(report, { layer: 'layer-0' });
  });
  const of = (x: number, y: number) =>
    bridges.plan.filter(({ from }) => from.x > x && from.x < x + 36 && from.y > y && from.y < y + 36);

  it('are put wherever one fits there', () => {
    expect(bridges.refusals).toEqual([]);
    expect(of(10, 10).length).toBeGreaterThanOrEqual(2);
    for (const { hiddenShare } of [...of(10, 10), ...of(70, 10)]) expect(hiddenShare).toBeGreaterThan(0.99);
    for (const { hiddenShare } of of(10, 70)) expect(hiddenShare).toBe(0);
  });

  it('show what an independent overlay says', () => {
    const later = union(report.sheets.slice(1).map(({ openings }) => openings));
    for (const { from, to, width, length, hiddenShare } of bridges.plan) {
      const strip = [polygonOf(stripAlong(from, to, width, 0))];
      expect(hiddenShare).toBeCloseTo(areaOf(intersection(strip, later)) / (width * length), 6);
    }
  });

  it('hold, and lie opposite each other all the same', () => {
    const after = check(applyEdits(svg, bridges.edits));
    expect(after.sheets[0]!.pieces.filter(({ island }) => island)).toEqual([]);
    expect(new Set(of(10, 10).map(({ from }) => Math.sign(from.y - 28)))).toEqual(new Set([-1, 1]));
  });
});

describe('what shows of a bridge', () => {
  // The cover ends in the middle of the wall, or leaves a quarter of it: closed form.
  it.each([
    [5, 0.5],
    [2.5, 0.75],
    [10, 0],
  ])('with %d of its 10 mm covered is %d of it', (covered, shown) => {
    const half = stack(
      ring(42, 42),
      rect(42, 42, 36, covered) +
        rect(42, 78 - covered, 36, covered) +
        rect(42, 42, covered, 36) +
        rect(78 - covered, 42, covered, 36),
    );
    const { plan } = bridgeIslands(check(half), { layer: 'layer-0' });
    expect(plan).toHaveLength(2);
    for (const { hiddenShare = 0 } of plan) expect(1 - hiddenShare).toBeCloseTo(shown, 2);
  });

  it('does not count what earlier layers paint, nor the material of later ones', () => {
    const between = stack(rect(40, 40, 40, 40), ring(42, 42), rect(2, 2, 10, 10));
    const { plan } = bridgeIslands(check(between), { layer: 'layer-1' });
    expect(plan.map(({ hiddenShare }) => hiddenShare)).toEqual([0, 0]);
  });
});

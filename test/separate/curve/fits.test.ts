import { describe, expect, it } from 'vitest';
import { flattenCurve } from '../../../src/geometry/curve/flatten';
import { crossingOf } from '../../../src/separate/curve/crossing';
import type { Curves } from '../../../src/separate/curve/fit-arc';
import { type FitRule, Fits } from '../../../src/separate/curve/fits';
import { type Arc, planarMap } from '../../../src/separate/map/planar-map';
import { hardLabels } from '../../../src/separate/raster';
import { blots } from '../pictures';

let made = 0;

function arcOf(points: readonly (readonly [number, number])[]): Arc {
  made += 1;
  return {
    edges: Int32Array.of(made),
    points: Float64Array.from(points.flat()),
    left: 0,
    right: 1,
    from: 2 * made,
    to: 2 * made + 1,
    fromSide: 0,
    toSide: 2,
  };
}

const RULE: FitRule = { tolerance: 1, corners: undefined };

const wave = (x: number): number => 40 * Math.sin(x / 60) + 6 * Math.sin(x / 17);
const upTo = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

function flat(curves: Curves): Float64Array {
  const points = curves[0] ? [curves[0].start.x, curves[0].start.y] : [];
  for (const curve of curves) flattenCurve(curve, 0.1, points);
  return Float64Array.from(points);
}

describe('borders that cross when they are fitted', () => {
  it('are drawn better where they cross, and nowhere else', () => {
    const long = arcOf(upTo(700).map((x) => [x, wave(x)]));
    // So close beside the first one that curves within a pixel of both cross.
    const beside = arcOf(upTo(30).map((i) => [330 + i, wave(330 + i) + 0.02]));
    const before = new Fits().curvesOf(long, RULE);
    const fits = new Fits();
    expect(fits.part([long, beside], () => RULE)).toBe(true);
    const after = fits.curvesOf(long, RULE);
    expect(crossingOf([flat(after), flat(fits.curvesOf(beside, RULE))]).size).toBe(0);
    const isKept = (each: (typeof before)[number]) =>
      after.some((other) => JSON.stringify(other) === JSON.stringify(each));
    const touched = before.filter((each) => !isKept(each));
    expect(touched.length).toBeGreaterThan(0);
    for (const { start, end } of touched) expect(start.x < 362 && end.x > 328).toBe(true);
  });

  it.each([1, 2, 3])('cross nowhere in the end (%d)', (seed) => {
    const { arcs } = planarMap(hardLabels(blots(80, 70, 5, 90, seed)));
    const rule = { tolerance: 1, corners: { reach: 4.5, skip: 0.8, angle: 35, residual: 0.22, farthest: 4 } };
    const fits = new Fits();
    fits.part(arcs, () => rule);
    expect(crossingOf(arcs.map((arc) => flat(fits.curvesOf(arc, rule)))).size).toBe(0);
    expect(fits.part(arcs, () => rule)).toBe(false);
  });
});

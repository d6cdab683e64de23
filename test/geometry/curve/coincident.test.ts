/** Pairs of lines that are one line, written in different ways. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Arc, Cubic, Curve, Point } from '../../../src/geometry/base/curve-types';
import { multiply, rotation, translation } from '../../../src/geometry/base/matrix';
import { findSharedIntervals } from '../../../src/geometry/curve/coincident';
import {
  lengthOf,
  pointAt,
  reverseCurve,
  splitCurve,
  subCurve,
  transformCurve,
} from '../../../src/geometry/curve/index';
import type { SharedInterval } from '../../../src/geometry/curve/shared-intervals';

const line = (x0: number, y0: number, x1: number, y1: number): Curve => ({
  kind: 'line',
  start: { x: x0, y: y0 },
  end: { x: x1, y: y1 },
});

const polygon = (...points: [number, number][]): Curve[] =>
  points.map(([x, y], i) => line(x, y, ...(points[(i + 1) % points.length] as [number, number])));

function arc(centre: Point, radius: number, from: number, sweep: number): Arc {
  const at = (angle: number) => ({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
  return {
    kind: 'arc',
    centre,
    axisU: { x: radius, y: 0 },
    axisV: { x: 0, y: radius },
    from,
    sweep,
    start: at(from),
    end: at(from + sweep),
  };
}

/** The usual cubic for an arc of at most a quarter turn: handles of 4/3·tan(sweep/4). */
function asCubic({ centre, axisU, axisV, from, sweep, start, end }: Arc): Cubic {
  const handle = (4 / 3) * Math.tan(sweep / 4);
  const along = (angle: number): Point => ({
    x: -axisU.x * Math.sin(angle) + axisV.x * Math.cos(angle),
    y: -axisU.y * Math.sin(angle) + axisV.y * Math.cos(angle),
  });
  const [a, b] = [along(from), along(from + sweep)];
  expect(centre).toBeDefined();
  return {
    kind: 'cubic',
    start,
    end,
    control1: { x: start.x + handle * a.x, y: start.y + handle * a.y },
    control2: { x: end.x - handle * b.x, y: end.y - handle * b.y },
  };
}

const circle = (radius: number, from = 0, turns = 1, parts = 4): Arc[] =>
  Array.from({ length: parts }, (_, i) =>
    arc({ x: 0, y: 0 }, radius, from + (turns * 2 * Math.PI * i) / parts, (turns * 2 * Math.PI) / parts),
  );

const lengths = (...chains: Curve[][]): number[] => findSharedIntervals(chains, 0.5).map(({ length }) => length);

/** The ends of the stretch, on the first chain. */
function ends({ first, pieces }: SharedInterval, chains: readonly (readonly Curve[])[]): [Point, Point] {
  const at = (piece: (typeof pieces)[number] | undefined, t: 'from' | 'to') =>
    pointAt(chains[first]?.[piece?.curve ?? 0] as Curve, piece?.[t] ?? 0);
  return [at(pieces[0], 'from'), at(pieces.at(-1), 'to')];
}

describe('findSharedIntervals', () => {
  it('finds the part that two lines have in common, and which way each runs', () => {
    const chains = [[line(0, 0, 10, 0)], [line(14, 0, 4, 0)]];
    const [found, ...more] = findSharedIntervals(chains, 0.5);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ first: 0, second: 1, reversed: true });
    expect(found?.length).toBeCloseTo(6, 9);
    expect(ends(found as SharedInterval, chains)).toEqual([
      { x: 4, y: 0 },
      { x: 10, y: 0 },
    ]);
  });

  it('finds the border of two neighbouring rectangles, and of one in the corner of another', () => {
    const left = polygon([0, 0], [20, 0], [20, 30], [0, 30]);
    expect(lengths(left, polygon([20, 5], [40, 5], [40, 25], [20, 25]))).toEqual([20]);
    expect(lengths(left, polygon([0, 0], [8, 0], [8, 6], [0, 6]))).toEqual([expect.closeTo(14, 9)]);
    expect(lengths(left, polygon([20, 30], [40, 30], [40, 50], [20, 50]))).toEqual([]);
  });

  it.each<[string, Curve[]]>([
    ['again', circle(10)],
    ['backwards', circle(10).reverse().map(reverseCurve)],
    ['from elsewhere', circle(10, 1)],
    ['in two halves', circle(10, 0.3, 1, 2)],
    ['in one turn', circle(10, 0.7, 1, 1)],
    ['as cubics', circle(10).map(asCubic)],
    ['as other cubics', circle(10, 0.5).map(asCubic)],
    ['in many pieces', circle(10, 0, 1, 9)],
    ['as reversed cubics', circle(10).map(asCubic).reverse().map(reverseCurve)],
  ])('finds a circle that is drawn %s', (_, other) => {
    const found = lengths(circle(10), other);
    expect(found).toHaveLength(1);
    expect(Math.abs((found[0] ?? 0) - 20 * Math.PI)).toBeLessThan(0.02);
  });

  it('finds a large arc that is written as a cubic: 27 µm off at its worst', () => {
    expect(
      lengths([arc({ x: 0, y: 0 }, 100, 0, Math.PI / 2)], [asCubic(arc({ x: 0, y: 0 }, 100, 0, Math.PI / 2))])[0],
    ).toBeCloseTo(50 * Math.PI, 1);
  });

  it('finds any part of any cubic, split, reversed and rounded to 1 µm, within 0.02 mm', () => {
    const coordinate = fc.integer({ min: 0, max: 600 }).map((value) => value / 10);
    const point = fc.record({ x: coordinate, y: coordinate });
    const share = fc.integer({ min: 0, max: 100 }).map((value) => value / 100);
    fc.assert(
      fc.property(
        fc.tuple(point, point, point, point),
        share,
        share,
        share,
        fc.boolean(),
        (points, s, t, cut, turned) => {
          const [start, control1, control2, end] = points;
          const whole: Cubic = { kind: 'cubic', start, control1, control2, end };
          const [from, to] = [Math.min(s, t), Math.max(s, t)];
          const part = subCurve(whole, from, to);
          fc.pre(lengthOf(part) > 3 && !comesBack(whole));
          const split = splitCurve(part, cut)
            .filter((piece) => lengthOf(piece) > 0.1)
            .map(rounded);
          const other = turned ? split.map(reverseCurve).reverse() : split;
          const chains = [[whole], other];
          const found = findSharedIntervals(chains, 0.5);
          const expected = split.reduce((sum, piece) => sum + lengthOf(piece), 0);
          expect(Math.abs(found.reduce((sum, { length }) => sum + length, 0) - expected)).toBeLessThan(0.02);
          for (const { reversed } of found) expect(reversed).toBe(turned);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('finds the same when all is moved and turned', () => {
    const pair = [
      circle(10),
      polygon([10, 0], [30, 0], [30, 20], [10, 20]),
      [line(30, 4, 30, 14), line(30, 14, 50, 14)],
    ];
    const matrix = multiply(translation(31, -7), rotation(0.7));
    const before = findSharedIntervals(pair, 0.5);
    const after = findSharedIntervals(
      pair.map((chain) => chain.map((curve) => transformCurve(curve, matrix))),
      0.5,
    );
    expect(before.map(({ length }) => length)).toEqual([10]);
    expect(after[0]?.length).toBeCloseTo(10, 6);
  });

  it('finds a chain that turns back on itself, and a slit in an outline', () => {
    expect(lengths([line(0, 0, 10, 0), line(10, 0, 3, 0)])).toEqual([7]);
    const keyhole = [
      line(0, 10, 0, 0),
      line(0, 0, 20, 0),
      line(20, 0, 20, 20),
      line(20, 20, 0, 20),
      line(0, 20, 0, 10),
      line(0, 10, 6, 10),
      line(6, 10, 6, 14),
      line(6, 14, 14, 14),
      line(14, 14, 14, 6),
      line(14, 6, 6, 6),
      line(6, 6, 6, 10),
      line(6, 10, 0, 10),
    ];
    expect(lengths(keyhole)).toEqual([6]);
  });

  it('gives each copy of a line once', () => {
    const copy = circle(10);
    const found = findSharedIntervals([copy, copy, copy, copy], 0.5);
    expect(found.map(({ first, second }) => [first, second])).toEqual([
      [0, 1],
      [0, 2],
      [0, 3],
    ]);
  });

  it('lets crossings, corners, touching circles and near lines be', () => {
    const other = circle(10).map((curve) => transformCurve(curve, translation(20, 0)));
    expect(lengths(circle(10), other)).toEqual([]);
    expect(lengths(circle(10), [line(-20, 10, 20, 10)])).toEqual([]);
    expect(lengths([line(0, 0, 10, 0)], [line(0, 1, 10, -1)])).toEqual([]);
    expect(lengths([line(0, 0, 10, 0)], [line(0, 0.02, 10, 0.02)])).toEqual([]);
    expect(lengths([line(0, 0, 10, 0)], [line(10, 0, 20, 0)], [line(5, 0, 5, 9)])).toEqual([]);
    expect(lengths([], [line(3, 3, 3, 3)], [line(3, 3, 3, 3)])).toEqual([]);
  });
});

function rounded(curve: Curve): Curve {
  const near = ({ x, y }: Point): Point => ({ x: Math.round(x * 1000) / 1000, y: Math.round(y * 1000) / 1000 });
  if (curve.kind !== 'cubic') return curve;
  const { start, control1, control2, end } = curve;
  return { kind: 'cubic', start: near(start), control1: near(control1), control2: near(control2), end: near(end) };
}

/** Whether a cubic passes near a place of its own again, where "which part" has two answers. */
function comesBack(curve: Curve): boolean {
  const points = Array.from({ length: 201 }, (_, i) => pointAt(curve, i / 200));
  const way = [0];
  for (let i = 1; i <= 200; i += 1) way.push((way[i - 1] ?? 0) + apart(points[i - 1] as Point, points[i] as Point));
  return points.some((a, i) => points.some((b, j) => (way[j] ?? 0) - (way[i] ?? 0) > 3 && apart(a, b) < 1));
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

describe('findSharedStretches, again', () => {
  const side = fc.integer({ min: 0, max: 4 });
  const rectangle = fc
    .tuple(side, side, fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 }))
    .map(([x, y, width, height]) => polygon([x, y], [x + width, y], [x + width, y + height], [x, y + height]));
  const edit = fc.record({
    at: fc.nat(),
    remove: fc.integer({ min: 0, max: 1 }),
    by: fc.array(rectangle, { maxLength: 2 }),
  });

  it('gives the same for chains that were searched before, in other company, as for new ones', () => {
    const runs = fc.tuple(fc.array(rectangle, { maxLength: 8 }), fc.array(edit, { minLength: 1, maxLength: 4 }));
    fc.assert(
      fc.property(runs, ([start, edits]) => {
        let chains = start;
        for (const { at, remove, by } of edits) {
          findSharedIntervals(chains, 0.5);
          chains = chains.toSpliced(at % (chains.length + 1), remove, ...by);
          expect(findSharedIntervals(chains, 0.5)).toEqual(findSharedIntervals(structuredClone(chains), 0.5));
        }
      }),
      { numRuns: 200, seed: 11 },
    );
  });
});

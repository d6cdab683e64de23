import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/base/polygon-types';
import { regionFromRings } from '../../src/geometry/boolean/index';
import { type MeasuredSeams, type Seams, safeSlips } from '../../src/stack/index';
import { FRAME, randomStack } from '../outside/random-stack';
import { measuredSeamsOf, seamsOf } from '../sheet/seams-of';

const BIG = { minX: -40, minY: -40, maxX: 60, maxY: 60 };
const SLIP = 0.5;

type Move = (x: number, y: number) => readonly [number, number];

const moved = (region: Region, move: Move, mirrored: boolean): Region =>
  regionFromRings(
    region.flatMap(({ outer, holes }) =>
      [outer, ...holes].map((ring) => {
        const points = Array.from({ length: ring.length / 2 }, (_, i) => move(ring[2 * i] ?? 0, ring[2 * i + 1] ?? 0));
        return Float64Array.from((mirrored ? points.reverse() : points).flat());
      }),
    ),
    'nonzero',
  );

interface Found {
  readonly what: string;
  readonly width: number;
}

/** All that is found, without what lies so near to a limit that rounding may tip it. */
function foundIn({ overlaps, gaps, hiddenOpenings: buried }: Seams): Found[] {
  const clear = ({ width }: Found): boolean => width < SLIP - 0.01 && Math.abs(width - 0.01) > 0.002;
  const all = [
    ...overlaps.map(({ earlier, later, width }) => ({ what: `overlap ${earlier} ${later}`, width })),
    ...gaps.map(({ earlier, later, width }) => ({ what: `gap ${earlier} ${later}`, width })),
    ...buried.map(({ layer }) => ({ what: `buried ${layer}`, width: 0 })),
  ];
  return all.filter(clear).sort((a, b) => a.what.localeCompare(b.what) || a.width - b.width);
}

const turn = (degrees: number): Move => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return (x, y) => [10 + c * (x - 10) - s * (y - 10), 10 + s * (x - 10) + c * (y - 10)];
};

describe('seams', () => {
  it.each<[string, Move, boolean]>([
    ['turned by 90°', turn(90), false],
    ['turned by 33°', turn(33), false],
    ['mirrored', (x, y) => [20 - x, y], true],
    ['shifted', (x, y) => [x + 13.37, y - 7.77], false],
  ])('are the same when all sheets are %s', (_, move, mirrored) => {
    fc.assert(
      fc.property(randomStack, (layers) => {
        const there = seamsOf(
          layers.map((layer) => moved(layer, move, mirrored)),
          BIG,
          SLIP,
        );
        const [found, before] = [foundIn(there), foundIn(seamsOf(layers, BIG, SLIP))];
        expect(found.map(({ what }) => what)).toEqual(before.map(({ what }) => what));
        found.forEach(({ width }, i) => expect(Math.abs(width - (before[i]?.width ?? 0))).toBeLessThan(0.003));
      }),
      { numRuns: 25, seed: 5, endOnFailure: true },
    );
  });

  it('are the same after an edit as when measured anew', () => {
    fc.assert(
      fc.property(randomStack, randomStack, fc.nat(), (layers, others, which) => {
        const before = measuredSeamsOf(layers, FRAME, SLIP);
        const edited = layers.map((layer, i) => (i === which % layers.length ? (others[0] ?? layer) : layer));
        expect(seamsOf(edited, FRAME, SLIP, before)).toEqual(seamsOf(edited, FRAME, SLIP));
      }),
      { numRuns: 25, endOnFailure: true },
    );
  });

  it('do not depend on the cells in which they are measured', () => {
    const cells = { x: 0, y: 0, size: 65_000, margin: 16_000, columns: 4, rows: 4 };
    const divided: MeasuredSeams = {
      seams: { slip: SLIP, overlaps: [], gaps: [], hiddenOpenings: [] },
      memory: {
        cut: [],
        joined: [],
        hidden: { layers: [], firsts: [], found: [] },
        tiles: { slip: SLIP, cells, layers: [], seams: [] },
        ground: undefined,
      },
    };
    let crossing = 0;
    fc.assert(
      fc.property(randomStack, (layers) => {
        const whole = seamsOf(layers, FRAME, SLIP);
        const { seams: parts, memory } = measuredSeamsOf(layers, FRAME, SLIP, divided);
        expect(memory.tiles?.cells.columns).toBe(4);
        const [found, before] = [foundIn(parts), foundIn(whole)];
        expect(found.map(({ what }) => what)).toEqual(before.map(({ what }) => what));
        found.forEach(({ width }, i) => expect(Math.abs(width - (before[i]?.width ?? 0))).toBeLessThan(0.001));
        const lengths = ({ overlaps }: Seams) => overlaps.reduce((sum, { length }) => sum + length, 0);
        expect(Math.abs(lengths(parts) - lengths(whole))).toBeLessThan(0.02);
        if (lengths(whole) > 7) crossing += 1;
      }),
      { numRuns: 40, seed: 3, endOnFailure: true },
    );
    expect(crossing).toBeGreaterThan(5);
  });

  it('keep what was measured where nothing has changed', () => {
    const square = (x: number, side: number) =>
      regionFromRings([Float64Array.of(x, 2, x + side, 2, x + side, 9, x, 9)], 'nonzero');
    const layers = [square(2, 5), square(6.8, 5)];
    const before = measuredSeamsOf(layers, FRAME, SLIP);
    const { overlaps } = before.seams;
    expect(seamsOf(layers, FRAME, SLIP, before).overlaps).toBe(overlaps);
    expect(seamsOf([layers[0] as Region, square(6.8, 6)], FRAME, SLIP, before).overlaps).not.toBe(overlaps);
    expect(seamsOf(layers, FRAME, 0.3, before).slip).toBe(0.3);
  });

  it('give the safe slip of each pair', () => {
    const box = (x0: number, x1: number) => regionFromRings([Float64Array.of(x0, 2, x1, 2, x1, 18, x0, 18)], 'nonzero');
    const seams = seamsOf([box(2, 8.3), box(8, 14.1), box(14, 22)], FRAME, SLIP);
    expect(safeSlips(seams)).toEqual([
      { earlier: 0, later: 1, safe: expect.closeTo(0.3, 4) },
      { earlier: 1, later: 2, safe: expect.closeTo(0.1, 4) },
    ]);
    expect(seams.overlaps.map(({ length, runsOut }) => [Math.round(length), runsOut])).toEqual([
      [14, true],
      [14, true],
    ]);
  });

  it('of one sheet, of none, and without a slip are none', () => {
    const one = regionFromRings([Float64Array.of(2, 2, 9, 2, 9, 9)], 'nonzero');
    for (const seams of [
      seamsOf([], FRAME, SLIP),
      seamsOf([one], FRAME, SLIP),
      seamsOf([one, one], FRAME, 0),
      seamsOf([one, []], FRAME, SLIP),
    ]) {
      expect([seams.overlaps, seams.gaps]).toEqual([[], []]);
    }
  });
});

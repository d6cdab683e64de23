import { describe, expect, it } from 'vitest';
import { cleanedUp } from '../../../src/separate/clean/clean-up';
import { withoutNecks } from '../../../src/separate/clean/mend-necks';
import { necksOf } from '../../../src/separate/clean/necks';
import { partNumbers } from '../../../src/separate/clean/part-numbers';
import { clearedSheets } from '../../../src/separate/clean/sheets';
import type { LabelMap } from '../../../src/separate/raster';
import { blots } from '../pictures';

const RADIUS = 4.5;
const all = (): boolean => true;

/** 1 where a rule says so. */
function drawn(width: number, height: number, isIn: (x: number, y: number) => boolean): LabelMap {
  const labels = Uint8Array.from({ length: width * height }, (_, at) =>
    Number(isIn(at % width, Math.floor(at / width))),
  );
  return { width, height, labels };
}

/** Two blocks with a strip of stated thickness between them, of 1 in 0. */
const dumbbell = (thick: number): LabelMap =>
  drawn(
    90,
    60,
    (x, y) => y >= 15 && y < 45 && x >= 12 && x < 78 && (x < 34 || x >= 56 || Math.abs(y - 29.5) < thick / 2),
  );

const partsOf = ({ labels, ...grid }: LabelMap, label: number): number =>
  new Set(
    partNumbers(
      grid,
      labels.map((each) => Number(each === label)),
      -1,
    ).filter((number) => number >= 0),
  ).size;

describe('necks', () => {
  it('are found where they are narrowest, and not where a disc passes', () => {
    const necks = necksOf(dumbbell(4), (set) => set === 1, RADIUS);
    expect(necks).toHaveLength(1);
    expect(necks[0]!.waist % 90).toBeGreaterThanOrEqual(33);
    expect(necks[0]!.waist % 90).toBeLessThanOrEqual(56);
    expect(2 * necks[0]!.depth).toBe(4);
    expect(necksOf(dumbbell(10), all, RADIUS)).toEqual([]);
  });

  it('are found between two tips that face each other, where discs on either side overlap', () => {
    const tips = drawn(80, 60, (x, y) => Math.abs(x - 40) < (Math.abs(y - 30) - 3) * 1.2);
    const necks = necksOf(tips, (set) => set === 0, RADIUS);
    expect(necks.map(({ waist }) => [waist % 80, Math.floor(waist / 80)])).toEqual([[expect.closeTo(40, -1), 30]]);
  });

  it('are found in a ring that is wide all round but once', () => {
    const ring = drawn(100, 100, (x, y) => {
      const far = Math.hypot(x - 50, y - 50);
      return far < 40 && far > 22 && (x < 50 || Math.abs(y - 50) > 5 || far < 26);
    });
    expect(necksOf(ring, (set) => set === 1, RADIUS)).toHaveLength(1);
  });

  it('are widened where they are nearly wide enough, and cut where they are not', () => {
    for (const [thick, parts] of [
      [6, 1],
      [2, 2],
    ] as const) {
      const map = dumbbell(thick);
      const mended = { ...map, labels: withoutNecks(map, { of: map, isWanted: all }, RADIUS)! };
      expect(necksOf(mended, (set) => set === 1, RADIUS)).toEqual([]);
      expect(partsOf(mended, 1)).toBe(parts);
    }
    const wide = dumbbell(12);
    expect(withoutNecks(wide, { of: wide, isWanted: all }, RADIUS)).toBeUndefined();
  });
});

describe('sheets', () => {
  const rule = { width: 2 * RADIUS, keepsCorners: false };
  const earlier = (map: LabelMap, rank: number): LabelMap => ({
    ...map,
    labels: map.labels.map((label) => Number(label < rank)),
  });

  it('hold where two earlier colours meet between tips of a later one', () => {
    const map = drawn(90, 60, (x) => x >= 45);
    for (let at = 0; at < map.labels.length; at += 1) {
      const [x, y] = [at % 90, Math.floor(at / 90)];
      if (Math.abs(x - 45) < (Math.abs(y - 30) - 3) * 1.5) map.labels[at] = 2;
    }
    const isSheet = (set: number): boolean => set === 1;
    expect(necksOf(earlier(map, 2), isSheet, RADIUS)).toHaveLength(1);
    const cleared = clearedSheets(map, [0, 1, 2], rule);
    expect(necksOf(earlier(cleared, 2), isSheet, RADIUS)).toEqual([]);
    expect(cleared.labels[30 * 90 + 20]).toBe(0);
    expect(cleared.labels[30 * 90 + 70]).toBe(1);
  });

  it.each([1, 2, 3, 4])('of blots lose most of their necks (%d)', (seed) => {
    const clean = cleanedUp(blots(160, 120, 5, 90, seed), { ...rule, rounds: 3 })!;
    const order = [0, 1, 2, 3, 4];
    const count = (map: LabelMap): number =>
      necksOf(map, all, RADIUS).length +
      order.reduce((sum, rank) => sum + necksOf(earlier(map, rank), (set) => set === 1, RADIUS).length, 0);
    const before = count(clean);
    expect(before).toBeGreaterThan(8);
    expect(count(clearedSheets(clean, order, rule))).toBeLessThan(before / 4);
  });

  it('that hold are left as they are', () => {
    const map = drawn(90, 60, (x) => x >= 45);
    expect(clearedSheets(map, [0, 1], rule)).toBe(map);
  });
});

describe('numbers of parts', () => {
  it('are those of flooding, corners included', () => {
    for (const seed of [1, 2, 3]) {
      const { labels, ...grid } = blots(40, 30, 2, 60, seed);
      const numbers = partNumbers(grid, labels, -1);
      const flooded = new Map<number, number>();
      for (let start = 0; start < labels.length; start += 1) {
        if (labels[start] === 0) expect(numbers[start]).toBe(-1);
        if (labels[start] === 0 || flooded.has(start)) continue;
        flooded.set(start, numbers[start]!);
        for (const [at] of flooded) {
          for (let v = -1; v <= 1; v += 1) {
            for (let u = -1; u <= 1; u += 1) {
              const x = (at % 40) + u;
              const other = at + 40 * v + u;
              if (x < 0 || x >= 40 || labels[other] !== 1 || flooded.has(other)) continue;
              expect(numbers[other]).toBe(numbers[at]);
              flooded.set(other, numbers[other]!);
            }
          }
        }
      }
      // Parts that do not touch have numbers of their own.
      expect(new Set(flooded.values()).size).toBe(partsOf({ ...grid, labels }, 1));
    }
  });
});

import { describe, expect, it } from 'vitest';
import type { Bitmap } from '../../../src/separate/bits/bitmap';
import { LabelSets } from '../../../src/separate/bits/label-sets';
import { partsOf } from '../../../src/separate/bits/parts';
import { cleanedUp } from '../../../src/separate/clean/clean-up';
import { withoutNecks } from '../../../src/separate/clean/mend-necks';
import { type Neck, necksOf } from '../../../src/separate/clean/necks';
import { clearedSheets } from '../../../src/separate/clean/sheets';
import type { LabelMap } from '../../../src/separate/raster';
import { blots } from '../pictures';

const RADIUS = 4.5;

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

const setOf = (map: LabelMap, label: number): Bitmap => new LabelSets(map).of(label);

const necksOfAll = (map: LabelMap): Neck[] => {
  const sets = new LabelSets(map);
  return sets.labels.flatMap((label) => necksOf(sets.of(label), RADIUS));
};

describe('necks', () => {
  it('are found where they are narrowest, and not where a disc passes', () => {
    const necks = necksOf(setOf(dumbbell(4), 1), RADIUS);
    expect(necks).toHaveLength(1);
    expect(necks[0]!.waist % 90).toBeGreaterThanOrEqual(33);
    expect(necks[0]!.waist % 90).toBeLessThanOrEqual(56);
    expect(2 * necks[0]!.depth).toBe(4);
    expect(necksOfAll(dumbbell(10))).toEqual([]);
  });

  it('are found between two tips that face each other, where discs on either side overlap', () => {
    const tips = drawn(80, 60, (x, y) => Math.abs(x - 40) < (Math.abs(y - 30) - 3) * 1.2);
    const necks = necksOf(setOf(tips, 0), RADIUS);
    expect(necks.map(({ waist }) => [waist % 80, Math.floor(waist / 80)])).toEqual([[expect.closeTo(40, -1), 30]]);
  });

  it('are found in a ring that is wide all round but once', () => {
    const ring = drawn(100, 100, (x, y) => {
      const far = Math.hypot(x - 50, y - 50);
      return far < 40 && far > 22 && (x < 50 || Math.abs(y - 50) > 5 || far < 26);
    });
    expect(necksOf(setOf(ring, 1), RADIUS)).toHaveLength(1);
  });

  it('are widened where they are nearly wide enough, and cut where they are not', () => {
    for (const [thick, parts] of [
      [6, 1],
      [2, 2],
    ] as const) {
      const map = dumbbell(thick);
      const areOne = (one: number, other: number): boolean => map.labels[one] === map.labels[other];
      const mended = { ...map, labels: withoutNecks(map, necksOfAll(map), areOne, RADIUS) };
      expect(necksOf(setOf(mended, 1), RADIUS)).toEqual([]);
      expect(partsOf(setOf(mended, 1)).list).toHaveLength(parts);
    }
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
    expect(necksOf(setOf(earlier(map, 2), 1), RADIUS)).toHaveLength(1);
    const cleared = clearedSheets(map, [0, 1, 2], rule);
    expect(necksOf(setOf(earlier(cleared, 2), 1), RADIUS)).toEqual([]);
    expect(cleared.labels[30 * 90 + 20]).toBe(0);
    expect(cleared.labels[30 * 90 + 70]).toBe(1);
  });

  it.each([1, 2, 3, 4])('of blots lose most of their necks (%d)', (seed) => {
    const clean = cleanedUp(blots(160, 120, 5, 90, seed), { ...rule, rounds: 3 })!;
    const order = [0, 1, 2, 3, 4];
    const count = (map: LabelMap): number =>
      necksOfAll(map).length +
      order.reduce((sum, rank) => sum + necksOf(setOf(earlier(map, rank), 1), RADIUS).length, 0);
    const before = count(clean);
    expect(before).toBeGreaterThan(8);
    expect(count(clearedSheets(clean, order, rule))).toBeLessThan(before / 4);
  });

  it('that hold are left as they are', () => {
    const map = drawn(90, 60, (x) => x >= 45);
    expect(clearedSheets(map, [0, 1], rule)).toBe(map);
  });
});

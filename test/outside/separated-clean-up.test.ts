/**
 * The clean-up of areas beside openings of mathematical morphology: J. Serra, "Image Analysis and Mathematical Morphology",
 * 1982; by discs of clipper-lib 6.4.2, offset in and out, as a second way. All in pixels.
 */
import { expect, it as test } from 'vitest';
import { cleanedUp } from '../../src/separate/clean/clean-up';
import type { LabelMap } from '../../src/separate/raster';
import { blots } from '../separate/pictures';
import { areaOf, grown, type Point, type Rings, united, without } from './clipper';

/** The least width, and what pixels may make of it at both sides. */
const WIDTH = 9;
const UNSURE = 2;

/** Square pixels: steps of offsets on a grid leave as much. */
const NOTHING = 0.01;

/** A pixel has one colour, and may lose it where discs only touch a corner of it. */
const PART_OF_PIXEL = 0.5;

const SEEDS = [1, 2];

for (const keepsCorners of [true, false]) {
  const clean = (map: LabelMap): LabelMap => cleanedUp(map, { width: WIDTH, keepsCorners }) ?? map;
  const kind = keepsCorners ? 'drawing' : 'photo';

  test.each(SEEDS)(`what discs of the least width cover in a ${kind} keeps its colour (%d)`, (seed) => {
    const before = blots(120, 100, 4, 60, seed);
    const after = cleanedUp(before, { width: WIDTH, keepsCorners, rounds: 1 }) ?? before;
    for (const label of new Set(before.labels)) {
      const wide = opened(areaOfLabel(before, label), WIDTH + UNSURE);
      expect(areaOf(wide)).toBeGreaterThan(100);
      expect(areaOf(without(wide, areaOfLabel(after, label)))).toBeLessThan(PART_OF_PIXEL);
    }
  });

  // Where three areas meet at least one has a corner of 120° or less, which no disc reaches: opening takes tips.
  test.each(SEEDS)(`what no disc covers in a clean ${kind} are tips no longer than the discs are wide (%d)`, (seed) => {
    const before = blots(120, 100, 4, 60, seed);
    expect(beyondDiscs(before)).toBeGreaterThan(100);
    expect(beyondDiscs(clean(before))).toBeLessThan(NOTHING);
  });
}

/** Of all areas what lies farther from the discs within them than these are wide. */
function beyondDiscs(map: LabelMap): number {
  return [...new Set(map.labels)].reduce((sum, label) => {
    const area = areaOfLabel(map, label);
    return sum + areaOf(without(area, grown(opened(area, WIDTH - UNSURE), WIDTH)));
  }, 0);
}

/** What discs cover that lie within. */
function opened(area: Rings, across: number): Rings {
  return grown(grown(area, -across / 2), across / 2);
}

function areaOfLabel({ width, height, labels }: LabelMap, label: number): Rings {
  const rows: Point[][] = [];
  for (let y = 0; y < height; y += 1) {
    for (let x = 0, end = 0; x < width; x = end) {
      end = x + 1;
      if (labels[y * width + x] !== label) continue;
      while (end < width && labels[y * width + end] === label) end += 1;
      rows.push([
        [x, y],
        [end, y],
        [end, y + 1],
        [x, y + 1],
      ]);
    }
  }
  return united(rows);
}

/** Sets of pixels a word at a time, beside the same things pixel by pixel. */
import { describe, expect, it as test } from 'vitest';
import { Bitmap } from '../../../src/separate/bits/bitmap';
import { DiscShape } from '../../../src/separate/bits/disc-shape';
import { LabelSets } from '../../../src/separate/bits/label-sets';
import { NearestPixel } from '../../../src/separate/bits/nearest-pixel';
import { overlayOf } from '../../../src/separate/bits/overlay-of-parts';
import { partsOf } from '../../../src/separate/bits/parts';
import { forRunsInRow } from '../../../src/separate/bits/runs';
import { coresIn, coresOf } from '../../../src/separate/clean/cores';
import { NearestOther } from '../../../src/separate/clean/nearest-other';
import { blots, seeded } from '../pictures';

/** Rows that end within a word, at its end and behind it; discs that are wider than a word. */
const GRIDS = [
  [37, 29],
  [64, 20],
  [5, 40],
  [33, 3],
  [100, 7],
] as const;

const RADII = [0, 0.7, 1, 2.5, 4.49, 6, 33.2, 65];

describe.each(GRIDS)('in a grid of %d by %d pixels', (width, height) => {
  const map = blots(width, height, 3, 12, 4);
  const sets = new LabelSets(map);
  const pixels = [...map.labels.keys()];
  const random = seeded(width);
  const sparse = pixels.filter(() => random() < 0.04);
  const squared = (one: number, other: number): number =>
    ((one % width) - (other % width)) ** 2 + (Math.floor(one / width) - Math.floor(other / width)) ** 2;
  const beside = (at: number): number[] => pixels.filter((pixel) => squared(at, pixel) === 1);
  const isIn = (at: number): boolean => map.labels[at] === 1;
  const blot = pixels.filter(isIn);

  test('labels are told apart, and sets put together', () => {
    expect(sets.labels).toEqual([...new Set(map.labels)].sort());
    for (const label of [0, 1, 2, 7]) {
      expect(sets.of(label).pixels()).toEqual(pixels.filter((at) => map.labels[at] === label));
    }
    const [one, other] = [sets.of(1), Bitmap.ofPixels(map, sparse)];
    const has = (at: number): boolean => sparse.includes(at);
    expect(other.pixels()).toEqual(sparse);
    expect(one.and(other).pixels()).toEqual(sparse.filter(isIn));
    expect(one.or(other).pixels()).toEqual(pixels.filter((at) => isIn(at) || has(at)));
    expect(one.without(other).pixels()).toEqual(blot.filter((at) => !has(at)));
    expect(one.complement().pixels()).toEqual(pixels.filter((at) => !isIn(at)));
    expect(sets.where((label) => label !== 1).pixels()).toEqual(one.complement().pixels());
    expect(pixels.filter((at) => one.has(at))).toEqual(blot);
    expect(new Bitmap(map).isEmpty).toBe(true);
    expect([one.equals(sets.of(1).or(new Bitmap(map))), one.isEmpty, one.equals(other)]).toEqual([true, false, false]);
  });

  test('the edge is what has another pixel beside it; with the frame, also what has none', () => {
    const isEdge = (at: number): boolean => beside(at).some((pixel) => !isIn(pixel));
    expect(sets.of(1).edge(false).pixels()).toEqual(blot.filter(isEdge));
    expect(sets.of(1).edge(true).pixels()).toEqual(blot.filter((at) => isEdge(at) || beside(at).length < 4));
  });

  test.each(RADII)('a disc of %d grows a set by all that lies near it, and shrinks it to what has room', (radius) => {
    const near = (all: readonly number[]) => (at: number) => all.some((pixel) => squared(at, pixel) <= radius * radius);
    const disc = new DiscShape(radius);
    for (const list of [blot, sparse, [0]]) {
      expect(disc.dilated(Bitmap.ofPixels(map, list)).pixels()).toEqual(pixels.filter(near(list)));
    }
    const isNearOther = near(pixels.filter((at) => !isIn(at)));
    const room = blot.filter((at) => !isNearOther(at));
    expect(disc.eroded(sets.of(1)).pixels()).toEqual(room);
    const isCovered = near(room);
    expect(disc.uncovered(sets.of(1)).pixels()).toEqual(blot.filter((at) => !isCovered(at)));
  });

  test('runs are what lies side by side', () => {
    for (const set of [sets.of(1), Bitmap.ofPixels(map, sparse), new Bitmap(map).complement()]) {
      const found: number[] = [];
      for (let y = 0; y < height; y += 1) {
        forRunsInRow(set, y, (start, stop) => {
          expect(start % width === 0 || !set.has(start - 1)).toBe(true);
          for (let at = start; at < stop; at += 1) found.push(at);
        });
      }
      expect(found).toEqual(set.pixels());
    }
  });

  test.each(RADII)('the nearest pixel of a set within %d is found', (radius) => {
    const nearest = new NearestPixel(Bitmap.ofPixels(map, sparse), radius);
    for (const at of pixels) {
      const least = Math.min(...sparse.map((pixel) => squared(at, pixel)));
      const first = sparse.find((pixel) => squared(at, pixel) === least);
      expect(nearest.to(at)).toBe(first !== undefined && least <= radius * radius ? first : -1);
    }
  });

  test('parts are those of flooding, corners included', () => {
    const set = sets.of(1);
    const numbers = new Map<number, number>();
    const parts = partsOf(set);
    parts.list.forEach(({ starts, stops }, number) => {
      starts.forEach((start, run) => {
        for (let at = start; at < stops[run]!; at += 1) numbers.set(at, number);
      });
    });
    expect([...numbers.keys()].sort((one, other) => one - other)).toEqual(blot);
    let flooded = 0;
    const seen = new Set<number>();
    for (const start of blot) {
      if (seen.has(start)) continue;
      flooded += 1;
      const open = [start];
      seen.add(start);
      for (const at of open) {
        expect(numbers.get(at)).toBe(numbers.get(start));
        for (const other of blot) {
          if (squared(at, other) > 2 || seen.has(other)) continue;
          seen.add(other);
          open.push(other);
        }
      }
    }
    expect(parts.list).toHaveLength(flooded);
    for (const at of blot) expect(parts.numberAt(at)).toBe(numbers.get(at));
  });

  test.each([0.7, 2.5, 6])('discs of %d round parts are told from those round several', (radius) => {
    const parts = partsOf(Bitmap.ofPixels(map, sparse)).list;
    const { some, several } = overlayOf(map, parts, new DiscShape(radius));
    const reached = parts.map(({ starts, stops }) => {
      const own = starts.flatMap((start, run) => Array.from({ length: stops[run]! - start }, (_, i) => start + i));
      return new Set(pixels.filter((at) => own.some((pixel) => squared(at, pixel) <= radius * radius)));
    });
    const times = (at: number): number => reached.filter((part) => part.has(at)).length;
    expect(some.pixels()).toEqual(pixels.filter((at) => times(at) > 0));
    expect(several.pixels()).toEqual(pixels.filter((at) => times(at) > 1));
  });

  test.each([1, 2.25, 4])('cores are what a disc of %d has room round', (radius) => {
    const isRim = (at: number): boolean => {
      const others = beside(at);
      return others.length < 4 || others.some((pixel) => map.labels[pixel] !== map.labels[at]);
    };
    const rim = pixels.filter(isRim);
    const reach = (radius - 0.5 - 1e-6) ** 2;
    const cores = pixels.filter((at) => rim.every((pixel) => squared(pixel, at) > reach));
    expect(coresOf(map, radius).pixels()).toEqual(cores);
    expect(coresIn(sets.of(1), radius).pixels()).toEqual(cores.filter(isIn));
  });

  test('the nearest pixel beyond a set is found, or the frame', () => {
    const nearest = new NearestOther(map, (pixel) => !isIn(pixel), 4);
    const others = pixels.filter((pixel) => !isIn(pixel));
    for (const at of blot) {
      const [x, y] = [at % width, Math.floor(at / width)];
      const frame = Math.min(x + 1, width - x, y + 1, height - y);
      const least = Math.sqrt(Math.min(...others.map((pixel) => squared(at, pixel))));
      const { distance, pixel } = nearest.of(at);
      expect(distance).toBe(Math.min(4, frame, least));
      if (pixel !== undefined) expect(Math.sqrt(squared(at, pixel))).toBe(least);
      else expect(Math.min(4, frame)).toBe(distance);
    }
  });
});

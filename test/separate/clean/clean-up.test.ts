import { describe, expect, it } from 'vitest';
import { Bitmap } from '../../../src/separate/bits/bitmap';
import { LabelSets } from '../../../src/separate/bits/label-sets';
import { cleanedUp } from '../../../src/separate/clean/clean-up';
import { coresOf } from '../../../src/separate/clean/cores';
import { distancesTo } from '../../../src/separate/clean/distance';
import type { LabelMap } from '../../../src/separate/raster';
import { blots, seeded } from '../pictures';

describe('distances', () => {
  it('are those of brute force', () => {
    const random = seeded(3);
    const grid = { width: 64, height: 64 };
    for (const share of [0.002, 0.05, 0.5]) {
      const sites = Uint8Array.from({ length: 64 * 64 }, () => Number(random() < share));
      sites[777] = 1;
      const pixels = [...sites.keys()].filter((at) => sites[at] === 1);
      const { squared, nearest } = distancesTo(Bitmap.ofPixels(grid, pixels));
      for (let at = 0; at < sites.length; at += 1) {
        const least = nearestSquared(sites, at, 64);
        expect(squared[at]).toBe(least);
        expect(sites[nearest[at]!]).toBe(1);
        expect(between(nearest[at]!, at, 64)).toBe(least);
      }
    }
  });

  it('are infinite where there is no site', () => {
    const { squared, nearest } = distancesTo(new Bitmap({ width: 4, height: 3 }));
    expect(squared).toEqual(new Float32Array(12).fill(Infinity));
    expect(nearest).toEqual(new Int32Array(12).fill(-1));
  });
});

function nearestSquared(sites: Uint8Array, at: number, width: number): number {
  return sites.reduce(
    (least, site, other) => (site === 1 ? Math.min(least, between(other, at, width)) : least),
    Infinity,
  );
}

const between = (a: number, b: number, width: number): number =>
  ((a % width) - (b % width)) ** 2 + (Math.floor(a / width) - Math.floor(b / width)) ** 2;

describe('clean-up', () => {
  const width = 9;

  it('finds the pixels round which a disc of one label lies', () => {
    const map = blots(70, 60, 3, 14, 5);
    const core = coresOf(map, width / 2);
    const radius = width / 2 - 0.5;
    map.labels.forEach((_, at) => expect(core.has(at)).toBe(isDeep(map, at, radius)));
  });

  it('leaves only tips: none reaches farther beyond the discs of its label than they are wide', () => {
    const radius = (width - 2) / 2;
    for (const seed of [1, 2, 3]) {
      const clean = cleanedUp(blots(90, 80, 4, 60, seed), { width, keepsCorners: false })!;
      const core = coresOf(clean, radius);
      for (const label of new Set(clean.labels)) {
        const { squared } = distancesTo(core.and(new LabelSets(clean).of(label)));
        clean.labels.forEach((each, at) => {
          if (each === label) expect(Math.sqrt(squared[at]!)).toBeLessThanOrEqual(radius + width);
        });
      }
    }
  });

  it('gives a line to its neighbour, and leaves what is wide enough to the pixel', () => {
    const map = stripes([20, 3, 20], 43);
    const clean = cleanedUp(map, { width, keepsCorners: false })!;
    expect(new Set(clean.labels)).toEqual(new Set([0, 2]));
    const wide = stripes([20, 12, 20], 52);
    expect(cleanedUp(wide, { width, keepsCorners: true })!.labels).toEqual(wide.labels);
  });

  it('counts the frame as an edge: what it cuts off is not wide enough', () => {
    const map = stripes([4, 40], 44);
    expect(new Set(cleanedUp(map, { width, keepsCorners: false })!.labels)).toEqual(new Set([1]));
  });

  it('gives what lies far from all that is wide enough to the nearest', () => {
    // A block of 1, and stripes of 2 and 3 that are too thin, farther and farther from it.
    const labels = Uint8Array.from({ length: 300 * 40 }, (_, at) =>
      at % 300 < 20 ? 1 : 2 + ((at % 300) % 6 > 2 ? 1 : 0),
    );
    const clean = cleanedUp({ width: 300, height: 40, labels }, { width, keepsCorners: false, rounds: 1 })!;
    expect(new Set(clean.labels)).toEqual(new Set([1]));
  });

  it('keeps the corners of a drawing, and rounds those of a photo', () => {
    const side = 60;
    const labels = Uint8Array.from({ length: side * side }, (_, at) =>
      Number(at % side >= 15 && at % side < 45 && at >= 15 * side && at < 45 * side),
    );
    const map = { width: side, height: side, labels };
    expect(cleanedUp(map, { width, keepsCorners: true })!.labels).toEqual(labels);
    expect(cleanedUp(map, { width, keepsCorners: false })!.labels[15 * side + 15]).toBe(0);
  });
});

/** Upright stripes of the labels 0, 1, 2, … with stated widths. */
function stripes(widths: readonly number[], side: number): LabelMap {
  const row = widths.flatMap((width, label) => Array.from({ length: width }, () => label));
  return {
    width: row.length,
    height: side,
    labels: Uint8Array.from({ length: side * row.length }, (_, at) => row[at % row.length]!),
  };
}

function isDeep({ width, height, labels }: LabelMap, at: number, radius: number): boolean {
  const [x, y] = [at % width, Math.floor(at / width)];
  for (let v = -1; v <= height; v += 1) {
    for (let u = -1; u <= width; u += 1) {
      const outside = u < 0 || v < 0 || u >= width || v >= height;
      const isRim = !outside && isBeside(labels, width, height, u, v);
      if (isRim && (u - x) ** 2 + (v - y) ** 2 < radius * radius) return false;
    }
  }
  return true;
}

function isBeside(labels: Uint8Array, width: number, height: number, x: number, y: number): boolean {
  const label = labels[y * width + x];
  return [
    [x - 1, y],
    [x + 1, y],
    [x, y - 1],
    [x, y + 1],
  ].some(([u, v]) => u! < 0 || v! < 0 || u! >= width || v! >= height || labels[v! * width + u!] !== label);
}

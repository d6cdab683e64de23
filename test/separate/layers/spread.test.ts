import { describe, expect, it } from 'vitest';
import { LabelSets } from '../../../src/separate/bits/label-sets';
import type { Grid } from '../../../src/separate/labels/box-blur';
import { Ranks } from '../../../src/separate/layers/ranks';
import { discAcross, spreadLayers, UNDER_LATER } from '../../../src/separate/layers/spread';
import type { LabelMap } from '../../../src/separate/raster';
import { blots } from '../pictures';

const ORDER = [0, 1, 2, 3];
const SIZES = { slip: 5, bridge: 8, opening: 6 };

/** The pixels of 1 that no disc of so many pixels across within them covers. */
const thinOf = ({ width, height }: Grid, labels: Uint8Array, pixels: number): number[] =>
  discAcross(pixels).uncovered(new LabelSets({ width, height, labels }).of(1)).pixels();

describe('what is thin', () => {
  it('is what no disc within the set covers, by trying all', () => {
    const { labels, ...grid } = blots(50, 40, 2, 60, 4);
    for (const radius of [2, 2.3, 3.5]) {
      const reach = radius + 0.5 - 1e-6;
      const offsets: [number, number][] = [];
      for (let v = -5; v <= 5; v += 1)
        for (let u = -5; u <= 5; u += 1) if (u * u + v * v <= reach * reach) offsets.push([u, v]);
      const around = (at: number): number[] =>
        offsets.flatMap(([u, v]) => {
          const [x, y] = [(at % 50) + u, Math.floor(at / 50) + v];
          return x < 0 || y < 0 || x >= 50 || y >= 40 ? [] : [y * 50 + x];
        });
      const covered = new Set<number>();
      for (let at = 0; at < labels.length; at += 1) {
        const disc = around(at);
        if (disc.every((pixel) => labels[pixel] === 1)) for (const pixel of disc) covered.add(pixel);
      }
      const expected = [...labels.keys()].filter((at) => labels[at] === 1 && !covered.has(at));
      expect(thinOf(grid, labels, 2 * radius)).toEqual(expected);
    }
  });

  it('is nothing of a ring of any thickness round what is wide', () => {
    const side = 40;
    for (const ring of [1, 2, 3, 4]) {
      const labels = Uint8Array.from({ length: side * side }, (_, at) =>
        Number(Math.hypot((at % side) - 20, Math.floor(at / side) - 20) < 8 + ring),
      );
      expect(thinOf({ width: side, height: side }, labels, 5.004).length).toBeLessThan(20);
    }
  });
});

describe('spread colours', () => {
  it.each([1, 2, 3])(
    'reach under later ones alone, away from earlier ones, and leave no thin sheet there (%d)',
    (seed) => {
      const map = blots(120, 90, 4, 40, seed);
      const ranks = new Ranks(ORDER);
      for (const { label, rank, under } of spreadLayers(map, ranks, SIZES)) {
        const regions = map.labels.slice();
        for (const at of under) regions[at] = UNDER_LATER;
        const sheet = Uint8Array.from(regions, (region) => Number(region !== label && region !== UNDER_LATER));
        const thin = new Set(thinOf(map, sheet, SIZES.bridge));
        const ranksWithin = (at: number, reach: number): number[] => {
          const found: number[] = [];
          for (let y = Math.floor(at / map.width) - reach; y <= Math.floor(at / map.width) + reach; y += 1) {
            for (let x = (at % map.width) - reach; x <= (at % map.width) + reach; x += 1) {
              if (x >= 0 && y >= 0 && x < map.width && y < map.height) found.push(ranks.at(map, y * map.width + x));
            }
          }
          return found;
        };
        regions.forEach((region, at) => {
          if (region !== UNDER_LATER) expect(region).toBe(map.labels[at]);
          else {
            expect(ranks.at(map, at)).toBeGreaterThan(rank);
            expect(Math.min(...ranksWithin(at, 1))).toBeGreaterThanOrEqual(rank);
          }
          // What earlier colours show, and what lies beside it, must stay; the colour's own area as well.
          if (thin.has(at)) expect(Math.min(...ranksWithin(at, 1))).toBeLessThan(rank);
        });
      }
    },
  );

  it('reach under a strip of later colour from both sides, each as far as it can', () => {
    const width = 60;
    const map: LabelMap = {
      width,
      height: 30,
      labels: Uint8Array.from({ length: width * 30 }, (_, at) => (at % width < 25 ? 0 : at % width < 33 ? 2 : 1)),
    };
    const under = [...spreadLayers(map, new Ranks([0, 1, 2]), SIZES)].map(({ under: pixels }) =>
      pixels.filter((at) => Math.floor(at / width) === 15).map((at) => at % width),
    );
    expect(under[0]).toEqual(expect.arrayContaining([25, 26, 27, 28, 29]));
    expect(under[1]).toEqual(expect.arrayContaining([28, 29, 30, 31, 32]));
    expect(under[1]).not.toContain(25);
  });
});

/**
 * Thin parts of random curved regions, looked for in two further ways that share no code with the search: by polygon
 * offset (clipper2-ts) and by a distance transform on pixels.
 */
import { describe, expect, it } from 'vitest';
import { findThinParts } from '../../src/geometry/thickness/index';
import type { ThinPart } from '../../src/geometry/thickness/types';
import { compareWays, describeTally, emptyTally } from '../geometry/thickness/compare';
import { judgeByErosion } from '../geometry/thickness/erosion';
import { randomRegion } from '../geometry/thickness/random-regions';
import { judgeByPixels } from '../geometry/thickness/raster-judge';
import { dumbbell, polygon } from '../geometry/thickness/shapes';
import { cases } from '../thorough';

describe('random curved regions', () => {
  it('have the same thin parts by boundary, by offset and by pixels', { timeout: 300_000 }, () => {
    const tally = emptyTally();
    for (let seed = 1; seed <= cases(100, 25); seed += 1) {
      compareWays(tally, `seed ${seed}`, randomRegion(seed), 0.8, seed % 3 === 0 ? 12 : 0);
      compareWays(tally, `seed ${seed}`, randomRegion(seed), 2.1, seed % 3 === 0 ? 24 : 0);
    }
    console.log(describeTally(tally));
    expect(tally.necks).toBeGreaterThan(cases(150, 35));
    expect(tally.tips).toBeGreaterThan(cases(50, 12));
    expect(tally.unclear).toBeLessThan(0.05 * (tally.polygons + tally.necks));
    expect(tally.differences.length, tally.differences.join('\n')).toBeLessThan(0.01 * (tally.necks + tally.tips));
  });
});

describe('the other ways', () => {
  const region = polygon(dumbbell(10, 5, 0.6));
  const [neck] = findThinParts([region], 0.8);
  const cornerCut: ThinPart = { ...neck!, from: { x: 0.3, y: 0 }, to: { x: 0, y: 0.3 } };

  it('agree with a neck that is there', () => {
    expect(judgeByErosion(region, [neck!], 0.8, 0.006).wrong).toEqual([]);
    expect(judgeByPixels(region, [neck!], 0.8, 0.05)).toMatchObject({ missed: [], invented: [], unclear: 0 });
  });

  it('notice a neck that is missed', () => {
    expect(judgeByErosion(region, [], 0.8, 0.006).wrong).toHaveLength(1);
    expect(judgeByPixels(region, [], 0.8, 0.05).missed.length).toBeGreaterThan(0);
  });

  it('notice a neck that is none', () => {
    expect(judgeByErosion(region, [neck!, cornerCut], 0.8, 0.006).wrong).toHaveLength(1);
    expect(judgeByPixels(region, [neck!, cornerCut], 0.8, 0.05).invented).toHaveLength(1);
  });
});

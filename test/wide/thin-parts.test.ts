/**
 * Thin parts of 200 random regions, and of the openings and the material of 200 icons (@mdi/svg, Apache-2.0) at 48 mm,
 * looked for in two further ways: by polygon offset (clipper2-ts) and by a distance transform. Prints where they
 * differ.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/drawing/index';
import type { Region } from '../../src/geometry/base/polygon-types';
import { complementInBox, regionFromRings, splitAtPinchPoints, union } from '../../src/geometry/boolean/index';
import { flattenSubpath } from '../../src/geometry/curve/flatten';
import { parseMarkup } from '../../src/markup/parse';
import { compareWays, describeTally, emptyTally } from '../geometry/thickness/compare';
import { randomRegion } from '../geometry/thickness/random-regions';

const ICONS = path.join(path.dirname(createRequire(import.meta.url).resolve('@mdi/svg/package.json')), 'svg');
const SIZE = 48;

function openingsOf(file: string): Region {
  const drawing = readDrawing(parseMarkup(readFileSync(path.join(ICONS, file), 'utf8')), { width: SIZE, height: SIZE });
  return union(
    drawing.shapes.map(({ subpaths, fillRule }) => {
      return regionFromRings(
        subpaths.map(({ curves }) => flattenSubpath(curves, 0.0025)),
        fillRule,
      );
    }),
  );
}

describe('thin parts by boundary, by offset and by pixels', () => {
  it('of random regions', () => {
    const tally = emptyTally();
    for (let seed = 1000; seed < 1200; seed += 1) {
      compareWays(tally, `seed ${seed}`, randomRegion(seed), 0.8, 12);
      compareWays(tally, `seed ${seed}`, randomRegion(seed), 2.1, 24);
    }
    console.log([describeTally(tally), ...tally.differences].join('\n'));
    expect(tally.differences.length).toBeLessThan(0.01 * (tally.necks + tally.tips));
  });

  it('of icons', () => {
    const tally = emptyTally();
    const files = readdirSync(ICONS).filter((file) => file.endsWith('.svg'));
    const step = Math.floor(files.length / 200);
    for (let at = 0; at < 200; at += 1) {
      const file = files[at * step]!;
      const openings = splitAtPinchPoints(openingsOf(file));
      compareWays(tally, `${file}, openings`, openings, 2.1, 16);
      const sheet = { minX: -2, minY: -2, maxX: SIZE + 2, maxY: SIZE + 2 };
      const material = splitAtPinchPoints(complementInBox(openings, sheet));
      compareWays(tally, `${file}, material`, material, 2.1, 16);
    }
    console.log([describeTally(tally), ...tally.differences].join('\n'));
    expect(tally.necks).toBeGreaterThan(100);
    expect(tally.differences.length).toBeLessThan(0.01 * (tally.necks + tally.tips));
  });
});

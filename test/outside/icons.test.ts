/**
 * Filled icons of an open set (@mdi/svg, Apache-2.0) against a general renderer: painted area and fallen pieces.
 * Pieces that are too small for the pixels to tell are left out on both sides, and counted.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { check } from '../../src/engine/check/check-file';
import { cases } from '../thorough';
import { bareSheetPieces, paintedPixels, rasterise } from './raster';

const FOLDER = path.resolve(__dirname, '../../node_modules/@mdi/svg/svg');
const PIXELS = 512;
/** A piece of fewer pixels, or one nowhere clear of paint, is beyond what the pixels can tell. */
const TOO_SMALL = 24;

/** Every so many-th file, so that all of the alphabet is in. */
const files = readdirSync(FOLDER).filter((_, i) => i % cases(22, 110) === 0);

test(`agrees with the renderer on ${files.length} icons`, () => {
  let limited = 0;
  const disagreements: string[] = [];
  for (const file of files) {
    const svg = readFileSync(path.join(FOLDER, file), 'utf8');
    const raster = rasterise(svg, PIXELS);
    const mmPerPixel = (24 * 25.4) / 96 / PIXELS;
    const report = check(svg);
    const sheet = report.sheets[0];
    const total = report.drawing.width * report.drawing.height;
    const material = sheet?.pieces.reduce((sum, piece) => sum + piece.area, 0) ?? total;
    const painted = paintedPixels(raster) * mmPerPixel ** 2;
    if (Math.abs(total - material - painted) > 0.005 * painted + 10 * mmPerPixel ** 2) {
      disagreements.push(`${file}: area ${(total - material).toFixed(4)}, renderer ${painted.toFixed(4)}`);
      continue;
    }
    const seen = bareSheetPieces(raster);
    const large = seen.filter((piece) => piece.pixels >= TOO_SMALL).length;
    const ours = (sheet?.pieces ?? []).filter((piece) => piece.area >= TOO_SMALL * mmPerPixel ** 2).length;
    if (large === ours) continue;
    const doubtful =
      seen.some((piece) => piece.pixels < 3 * TOO_SMALL) ||
      (sheet?.pieces ?? []).some((piece) => piece.area < 3 * TOO_SMALL * mmPerPixel ** 2);
    if (doubtful) limited += 1;
    else disagreements.push(`${file}: ${ours} pieces, renderer ${large}`);
  }
  console.log(`${files.length} icons, ${limited} pixel-limited, ${disagreements.length} in disagreement`);
  for (const line of disagreements) console.log(line);
  expect(files.length).toBeGreaterThanOrEqual(cases(300, 60));
  expect(disagreements.length).toBeLessThanOrEqual(cases(3, 1));
  expect(limited / files.length).toBeLessThan(0.05);
}, 300_000);

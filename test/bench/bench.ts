/**
 * `npm run bench`: how long a full check takes, beside reading alone, a check after an edit, the same check by pixels and by
 * offsets, all in one run on the same seeded sheets. Ratios hold from machine to machine; times do not.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { check, type Report } from '../../src/engine';
import { DEFAULT_CONFIG } from '../../src/sheet/config';
import { limitsOf } from '../../src/sheet/limits';
import { parseMarkup } from '../../src/markup/parse';
import { readDrawing } from '../../src/drawing/read-drawing';
import type { Largest } from './largest';
import { compareBridging } from './bridges';
import { growth, segmentsIn, time } from './measure';
import { openWithClipper2, openWithJsts } from './offset-ways';
import { checkByRaster, LARGEST_SIDE, PIXELS_PER_MM } from './raster-way';
import { blobSheet, tracedSheet, withMovedPoint } from './seeded';

const SIZES = [1_000, 10_000, 100_000];

interface Row {
  readonly segments: number;
  readonly kilobytes: number;
  readonly parse: number;
  readonly read: number;
  readonly full: number;
  readonly edit: number;
  readonly raster: number | undefined;
}

function measure(size: number): Row {
  const svg = blobSheet(size);
  const report = check(svg);
  const widthMm = report.drawing.width;
  return {
    segments: segmentsIn(report),
    kilobytes: svg.length / 1024,
    parse: time(() => parseMarkup(svg)),
    read: time(() => readDrawing(parseMarkup(svg))),
    full: time(() => check(svg)),
    edit: timeEdits(svg, report),
    raster: widthMm * PIXELS_PER_MM <= LARGEST_SIDE ? time(() => checkByRaster(svg, widthMm)) : undefined,
  };
}

/** A coordinate in the middle of the text changes again and again, as when a number is typed. */
function timeEdits(svg: string, first: Report): number {
  let report = first;
  let turn = 0;
  return time(() => {
    turn += 1;
    report = check(withMovedPoint(svg, 0.01 * (turn % 7)), {}, report);
  });
}

function print(rows: readonly Row[]): void {
  console.log('segments      kB   XML ms  read ms  check ms   edit ms  raster ms  check/read  check/raster  edit/check');
  for (const row of rows) {
    const cells = [
      row.segments.toFixed(0).padStart(8), row.kilobytes.toFixed(0).padStart(8), row.parse.toFixed(1).padStart(9),
      row.read.toFixed(1).padStart(9), row.full.toFixed(1).padStart(10), row.edit.toFixed(1).padStart(10),
      (row.raster?.toFixed(0) ?? '-').padStart(11), (row.full / row.read).toFixed(2).padStart(12),
      (row.raster ? (row.full / row.raster).toFixed(3) : '-').padStart(14), (row.edit / row.full).toFixed(3).padStart(12),
    ];
    console.log(cells.join(''));
  }
}

/** Beside offsetting in and out, in polygon libraries, at the same limits. */
async function compareOffsets(what: string, svg: string): Promise<void> {
  const report = check(svg);
  const { bridge, opening } = limitsOf(DEFAULT_CONFIG);
  const parts = report.sheets.flatMap(({ material, openings }) => [
    { region: material, least: bridge }, { region: openings, least: opening },
  ]);
  const full = time(() => check(svg));
  const ways = [
    ['clipper2-wasm', () => openWithClipper2(parts, false)],
    ['clipper2-wasm, simplified between', () => openWithClipper2(parts, true)],
    ['jsts', () => openWithJsts(parts)],
  ] as const;
  for (const [name, run] of ways) {
    const { offsets, difference, failure } = await run();
    const ms = difference.toFixed(0);
    const thinParts = failure ? `no difference after ${ms} ms: ${failure}` : `difference ${ms} ms`;
    console.log(`${(segmentsIn(report) / 1000).toFixed(0)}k segments of ${what}, check ${full.toFixed(0)} ms; ` +
      `in and out with ${name} ${offsets.toFixed(0)} ms, check/offsets ${(full / offsets).toFixed(3)}; ` +
      `${thinParts}, check/all ${(full / (offsets + difference)).toFixed(3)}`);
  }
}

/** In a process of its own. */
function printLargest(): void {
  const file = fileURLToPath(new URL('largest.mjs', import.meta.url));
  const { small, large, peakMegabytes } = JSON.parse(execFileSync(process.execPath, [file], { encoding: 'utf8' })) as Largest;
  const exponent = growth(
    { size: small.segments, time: small.milliseconds }, { size: large.segments, time: large.milliseconds });
  console.log(`check of ${large.segments.toFixed(0)} segments: ${(large.milliseconds / 1000).toFixed(1)} s, ` +
    `peak memory ${peakMegabytes.toFixed(0)} MB; growth exponent from ${small.segments.toFixed(0)}: ${exponent.toFixed(2)}`);
}

print(SIZES.map(measure));
printLargest();
await compareOffsets('shapes as traced', tracedSheet(100_000));
await compareOffsets('smooth shapes', blobSheet(100_000));
compareBridging(100_000);

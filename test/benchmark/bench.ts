/**
 * `npm run bench`: how long a full check takes, beside reading alone, a check after an edit and the same check by
 * pixels, all in one run on the same seeded sheets. Ratios hold from machine to machine; times do not.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { readDrawing } from '../../src/drawing/index';
import { check, type Report } from '../../src/engine/index';
import { parseMarkup } from '../../src/markup/parse';
import { growth, segmentsIn, time } from './measure';
import { checkByRaster, MAX_SIDE, PIXELS_PER_MM } from './raster-way';
import { blobSheet, withMovedPoint } from './seeded';

const SIZES = [1_000, 10_000, 100_000];
const MAX_SEGMENTS = 1_000_000;

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
    raster: widthMm * PIXELS_PER_MM <= MAX_SIDE ? time(() => checkByRaster(svg, widthMm)) : undefined,
  };
}

/**
 * A coordinate in the middle of the text changes again and again, as when a number is typed; never to what it was, for
 * the engine would know that.
 */
function timeEdits(svg: string, first: Report): number {
  let report = first;
  let turn = 0;
  return time(() => {
    turn += 1;
    report = check(withMovedPoint(svg, 0.001 * turn), {}, report);
  });
}

function print(rows: readonly Row[]): void {
  console.log(
    'segments      kB   XML ms  read ms  check ms   edit ms  raster ms  check/read  check/raster  edit/check',
  );
  for (const row of rows) {
    const cells = [
      row.segments.toFixed(0).padStart(8),
      row.kilobytes.toFixed(0).padStart(8),
      row.parse.toFixed(1).padStart(9),
      row.read.toFixed(1).padStart(9),
      row.full.toFixed(1).padStart(10),
      row.edit.toFixed(1).padStart(10),
      (row.raster?.toFixed(0) ?? '-').padStart(11),
      (row.full / row.read).toFixed(2).padStart(12),
      (row.raster ? (row.full / row.raster).toFixed(3) : '-').padStart(14),
      (row.edit / row.full).toFixed(3).padStart(12),
    ];
    console.log(cells.join(''));
  }
}

/** As warm as the small ones; its memory in a process of its own. */
function printLargest(small: Row | undefined): void {
  const svg = blobSheet(MAX_SEGMENTS);
  const start = performance.now();
  const segments = segmentsIn(check(svg, { budget: Infinity }));
  const took = performance.now() - start;
  const exponent = small && growth({ size: small.segments, time: small.full }, { size: segments, time: took });
  const file = fileURLToPath(new URL('largest.mjs', import.meta.url));
  const peak = Number(execFileSync(process.execPath, [file, String(MAX_SEGMENTS)], { encoding: 'utf8' }));
  console.log(
    `check of ${segments} segments: ${(took / 1000).toFixed(1)} s, growth exponent from ${small?.segments}: ` +
      `${exponent?.toFixed(2)}; peak memory ${peak.toFixed(0)} MB`,
  );
}

const rows = SIZES.map(measure);
print(rows);
printLargest(rows[1]);

/**
 * `npm run bench`: how long a full check takes, beside reading alone and beside the same check by pixels, all in one run
 * on the same seeded sheets. Ratios hold from machine to machine; times do not.
 */
import { Tokenizer } from 'htmlparser2';
import { check } from '../../src/engine';
import { parseMarkup } from '../../src/markup/parse';
import { readDrawing } from '../../src/drawing/read-drawing';
import { checkByRaster, LARGEST_SIDE, PIXELS_PER_MM } from './raster-way';
import { blobSheet } from './seeded';

const SIZES = [1_000, 10_000, 100_000];

/** How many segments of the seeded sheet a megabyte of text holds, about. */
const SEGMENTS_PER_MEGABYTE = 270_000;

interface Row {
  readonly segments: number;
  readonly kilobytes: number;
  readonly parse: number;
  readonly read: number;
  readonly full: number;
  readonly raster: number | undefined;
}

/** The median of a few runs, in ms; fewer for slow ones. */
function time(run: () => unknown): number {
  const laps: number[] = [];
  const begin = performance.now();
  while (laps.length < 3 || (laps.length < 15 && performance.now() - begin < 1500)) {
    const start = performance.now();
    run();
    laps.push(performance.now() - start);
  }
  return laps.sort((a, b) => a - b)[laps.length >> 1] as number;
}

function measure(size: number): Row {
  const svg = blobSheet(size);
  const report = check(svg);
  const rings = report.sheets.flatMap((sheet) => sheet.openings).flatMap(({ outer, holes }) => [outer, ...holes]);
  const widthMm = report.drawing.width;
  return {
    segments: rings.reduce((sum, ring) => sum + ring.length / 2, 0),
    kilobytes: svg.length / 1024,
    parse: time(() => parseMarkup(svg)),
    read: time(() => readDrawing(parseMarkup(svg))),
    full: time(() => check(svg)),
    raster: widthMm * PIXELS_PER_MM <= LARGEST_SIDE ? time(() => checkByRaster(svg, widthMm)) : undefined,
  };
}

function print(rows: readonly Row[]): void {
  console.log('segments      kB   XML ms  read ms  check ms  raster ms  check/read  check/raster');
  for (const row of rows) {
    const cells = [
      row.segments.toFixed(0).padStart(8), row.kilobytes.toFixed(0).padStart(8), row.parse.toFixed(1).padStart(9),
      row.read.toFixed(1).padStart(9), row.full.toFixed(1).padStart(10), (row.raster?.toFixed(0) ?? '-').padStart(11),
      (row.full / row.read).toFixed(2).padStart(12), (row.raster ? (row.full / row.raster).toFixed(3) : '-').padStart(14),
    ];
    console.log(cells.join(''));
  }
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) return;
  const exponent = Math.log(last.full / first.full) / Math.log(last.segments / first.segments);
  console.log(`growth exponent of the check from ${first.segments} to ${last.segments} segments: ${exponent.toFixed(2)}`);
}

/** Reading a large file beside the XML tokenizer alone, which does nothing with what it finds. */
function compareReading(megabytes: number): void {
  const svg = blobSheet(megabytes * SEGMENTS_PER_MEGABYTE);
  const alone = time(() => tokenize(svg));
  const parse = time(() => parseMarkup(svg));
  const read = time(() => readDrawing(parseMarkup(svg)));
  const size = (svg.length / 1e6).toFixed(1);
  console.log(`reading ${size} MB: tokenizer alone ${alone.toFixed(0)} ms, tree ${parse.toFixed(0)} ms, ` +
    `drawing ${read.toFixed(0)} ms, drawing/tokenizer ${(read / alone).toFixed(2)}`);
}

function tokenize(text: string): void {
  const ignore = () => {};
  const tokenizer = new Tokenizer({ xmlMode: true, decodeEntities: false }, {
    onattribdata: ignore, onattribentity: ignore, onattribend: ignore, onattribname: ignore, oncdata: ignore,
    onclosetag: ignore, oncomment: ignore, ondeclaration: ignore, onend: ignore, onopentagend: ignore,
    onopentagname: ignore, onprocessinginstruction: ignore, onselfclosingtag: ignore, ontext: ignore, ontextentity: ignore,
  });
  tokenizer.write(text);
  tokenizer.end();
}

print(SIZES.map(measure));
compareReading(10);

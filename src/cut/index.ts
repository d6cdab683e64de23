/** The sheets of a print, ready to be cut: from a report's layers to contours in order, and to files. */
import type { Report } from '../report/report';
import type { Sheet } from '../sheet/types';
import { cutSheet } from './cut-sheet';
import { jobHtml } from './job/html';
import { jobOf } from './job/job';
import { jobPdf } from './job/pdf';
import { type Bed, berthsFor, sheetsOnBeds } from './layout/beds';
import { mismatchAfter, type Repeat, repeatHoles } from './layout/repeat';
import { cutTiles, type TileSize } from './layout/tiles';
import { type LoosePiece, loosePieces } from './loose-pieces';
import { CUT_MARK, SVG_MARK } from './own-file';
import type { RoundHole } from './round-holes';
import type { CutOptions, CutSheet } from './types';
import { cutDxf } from './write/dxf';
import type { DxfVersion } from './write/dxf-file';
import { cutPdf } from './write/pdf';
import { cutSvg } from './write/svg';

export { cuttingCautions } from './cautions';
export { type ErrorsLeft, errorsLeft } from './errors-left';
export type { Job, JobLayer } from './job/job';
export { type Bed, mirrored } from './layout/beds';
export type { Repeat } from './layout/repeat';
export type { TileSize } from './layout/tiles';
export { isCutFile } from './own-file';
export { type PlannedCut, planOf } from './plan';
export { motionOf, sheetTime } from './sheet-time';
export { STRIP_WIDTHS, testStrip } from './test-strip';
export type { ContourKind, CutContour, CutOptions, CutSheet } from './types';
export { jobOf };

export const CUT_FORMATS = ['svg', 'pdf', 'dxf'] as const;
export type CutFormat = (typeof CUT_FORMATS)[number];

/**
 * All sheets of the report's stack, first painted first; of the whole project where the report is of one of its files.
 * @param layer take the layers of this name alone; they keep their numbers
 */
export function cutStack(report: Report, options: CutOptions = {}, layer?: string): CutSheet[] {
  return eachSheet(report, layer, (sheet, place, loose) => [
    cutSheet(sheet, place, options, report.settings.config, loose),
  ]);
}

/** Tiles of the sheets that are larger, each as a sheet of its own: "Heron 1-2" is in the first row and second column. */
export function cutStackInTiles(report: Report, size: TileSize, options: CutOptions = {}, layer?: string): CutSheet[] {
  return eachSheet(report, layer, (sheet, place, loose) =>
    cutTiles(sheet, place, size, options, report.settings.config, loose),
  );
}

function eachSheet(
  report: Report,
  layer: string | undefined,
  cut: (sheet: Sheet, place: { number: number; count: number }, loose: readonly LoosePiece[]) => CutSheet[],
): CutSheet[] {
  const { layers } = report.stack;
  const { kept } = loosePieces(report);
  return layers.flatMap(({ sheet }, i) => {
    if (layer !== undefined && sheet.layer.name !== layer) return [];
    const own = kept.filter((each) => each.layer === i);
    return cut(sheet, { number: i + 1, count: layers.length }, own);
  });
}

/** How the stack is sprayed again and again along a wall. */
export interface RepeatPlan {
  /** For each sheet the same, as `CutOptions` takes them. */
  readonly holes: readonly RoundHole[];
  /** Where the pattern does not go on from one print to the next: one sentence each. */
  readonly notes: readonly string[];
}

/**
 * Register holes for a repeat, and where it does not close.
 * @returns undefined where there is no room for the holes
 */
export function repeatPlan({ stack, settings }: Report, repeat: Repeat): RepeatPlan | undefined {
  const sheets = stack.layers.map(({ sheet }) => sheet);
  const holes = repeatHoles(sheets, repeat, settings.config);
  if (!holes) return undefined;
  const notes = sheets.flatMap((sheet) => {
    const mismatch = mismatchAfter(sheet, repeat);
    const length = repeat.axis === 'x' ? sheet.drawing.width : sheet.drawing.height;
    const unit = length > repeat.step + 1e-3 ? 'mm²' : 'mm';
    return mismatch === 0
      ? []
      : [`${sheet.layer.name}: ${mismatch.toFixed(1)} ${unit} of its paint do not go on in the next print`];
  });
  return { holes, notes };
}

/**
 * The sheets laid on as few beds as they need.
 * @returns undefined where one of them fits on none
 */
export function cutOnBeds(sheets: readonly CutSheet[], bed: Bed): CutSheet[] | undefined {
  const berths = berthsFor(sheets, bed);
  return berths && sheetsOnBeds(sheets, berths, bed);
}

/** The text of a sheet's file; ASCII for all but SVG. */
export function cutFile(sheet: CutSheet, format: CutFormat, version: DxfVersion = 'AC1015'): string {
  switch (format) {
    case 'svg':
      return cutSvg(sheet, SVG_MARK);
    case 'pdf':
      return cutPdf(sheet, CUT_MARK);
    case 'dxf':
      return cutDxf(sheet, CUT_MARK, version);
  }
}

/** The page that hangs at the wall, by the names of its files. */
export function jobFiles(
  report: Report,
  sheets: readonly CutSheet[],
  title: string,
  texts: readonly string[] = [report.text],
): { readonly 'job.html': string; readonly 'job.pdf': string } {
  const job = jobOf(report, sheets, title, texts);
  return { 'job.html': `<!-- ${CUT_MARK} -->\n${jobHtml(job)}`, 'job.pdf': jobPdf(job, CUT_MARK) };
}

/** Longest part of a file's name that is taken from the layer's. */
const LONGEST_NAME = 40;

/** The file's name without its suffix: `03-heron`. Letters and digits of any script, so that every system takes it. */
export function cutFileName({ number, name }: Pick<CutSheet, 'number' | 'name'>): string {
  const words = name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, '-');
  const short = [...words]
    .slice(0, LONGEST_NAME)
    .join('')
    .replace(/^-+|-+$/g, '');
  return `${String(number).padStart(2, '0')}-${short || 'layer'}`;
}

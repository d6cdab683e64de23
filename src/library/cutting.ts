/** Sheets as they are cut, and files for the cutter. */
import {
  cuttingCautions as cautionsOf,
  cutStack as cut,
  CUT_FORMATS as FORMATS,
  type CutFormat as Format,
  cutFile as fileOf,
  jobFiles as job,
  cutFileName as nameOf,
  repeatPlan as planRepeat,
  type CutSheet as Sheet,
  testStrip as strip,
} from '../cut/index';
import {
  anyLength,
  knownLayer,
  type Length,
  oneOf,
  positiveLength,
  type Reader,
  readOptions,
  StencilError,
  truth,
  words,
} from './failure';
import { engineReport, type StencilReport } from './report';

/**
 * One sheet as it is cut. Millimetres from the page's upper left corner, y down; contours stand in the order of cutting.
 *
 * @example
 * ```js
 * for (const { name, contours, travel } of cutStack(report)) {
 *   const length = contours.reduce((sum, contour) => sum + contour.length, 0);
 *   console.log(`${name}: ${length.toFixed(0)} mm cut, ${travel.toFixed(0)} mm between the cuts`);
 * }
 * ```
 */
export type CutSheet = Sheet;

/**
 * A round hole that is cut into a sheet, in sheet mm.
 *
 * @example
 * ```js
 * const hole = { centre: { x: 5, y: 5 }, radius: 1.5 }; // mm
 * ```
 */
export type RegisterHole = RepeatPlan['holes'][number];

/**
 * How sheets are cut. Lengths in mm, or texts with their unit.
 *
 * @example
 * ```js
 * cutStack(report, { kerf: '0.1mm', leadIn: 1, labels: true, layer: 'Heron' });
 * ```
 */
export interface CutOptions {
  /** What the tool takes away: the path then runs half of it inside each opening. mm, or a text with its unit. */
  readonly kerf?: Length;
  /** Whether the sheet's own edge is cut; it is unless this says no. */
  readonly edge?: boolean;
  /** Let the cut begin so far off the line, on the side that falls away. mm, or a text with its unit. */
  readonly leadIn?: Length;
  /** Let it go on so far beyond where it began. mm, or a text with its unit. */
  readonly overcut?: Length;
  /** Whether number, paint, title and an arrow are written on the sheet. */
  readonly labels?: boolean;
  /** Whether the sheet's edge is notched, so that it can be told. */
  readonly notches?: boolean;
  /** Register holes, from {@link repeatPlan}; sheet mm. */
  readonly holes?: readonly RegisterHole[];
  /** Only the layer of this name; it keeps its number. */
  readonly layer?: string;
}

const holesOption: Reader<readonly RegisterHole[]> = (value, name) => {
  if (Array.isArray(value)) return value;
  throw new StencilError(`${name} is a list of holes, as repeatPlan() gives it.`);
};

/**
 * All sheets of the stack as they are cut, first sprayed first; of the whole project where the report is of one of its files.
 *
 * @param report of a drawing, from `check`
 * @param options lengths in mm or with their unit
 * @throws StencilError where an option is wrong, or no layer has the name
 * @example
 * ```js
 * import { check, cutFile, cutFileName, cutStack } from 'tombolo-stencil';
 *
 * for (const sheet of cutStack(check(svgText, { width: '148mm' }), { kerf: 0.1 })) { // mm
 *   writeFileSync(`${cutFileName(sheet)}.dxf`, cutFile(sheet, 'dxf'));
 * }
 * ```
 */
export function cutStack(report: StencilReport, options: CutOptions = {}): CutSheet[] {
  const source = engineReport(report, 'cutStack()');
  const read = readOptions<CutOptions>(options, 'cutStack()', {
    kerf: anyLength,
    edge: truth,
    leadIn: anyLength,
    overcut: anyLength,
    labels: truth,
    notches: truth,
    holes: holesOption,
    layer: words,
  });
  const { layer, ...rest } = read as typeof read & { kerf?: number; leadIn?: number; overcut?: number };
  const names = source.stack.layers.map(({ sheet }) => sheet.layer.name);
  return cut(source, rest, knownLayer(layer, names));
}

/**
 * The formats that {@link cutFile} writes, all at true size in mm.
 *
 * @example
 * ```js
 * import { CUT_FORMATS } from 'tombolo-stencil';
 *
 * console.log(CUT_FORMATS); // svg, pdf, dxf
 * ```
 */
export const CUT_FORMATS: readonly CutFormat[] = FORMATS;

/**
 * One of {@link CUT_FORMATS}: files in mm.
 *
 * @example
 * ```ts
 * const format: CutFormat = 'dxf';
 * ```
 */
export type CutFormat = Format;

/**
 * The text of a sheet's file for the cutter, at true size in mm.
 *
 * @throws StencilError where there is no such format
 * @example
 * ```js
 * import { cutFile } from 'tombolo-stencil';
 *
 * writeFileSync('01-sky.svg', cutFile(sheet, 'svg'));
 * ```
 */
export function cutFile(sheet: CutSheet, format: CutFormat): string {
  return fileOf(sheet, oneOf(FORMATS)(format, 'format'));
}

/**
 * The name of a sheet's file without its suffix: its number, in two digits, and the layer's name.
 *
 * @example
 * ```js
 * import { cutFileName } from 'tombolo-stencil';
 *
 * cutFileName({ number: 3, name: 'Heron' }); // '03-heron'
 * ```
 */
export function cutFileName(sheet: Pick<CutSheet, 'number' | 'name'>): string {
  return nameOf(sheet);
}

/**
 * The page that hangs at the wall, with every sheet, its paint and its times in minutes, lengths in mm.
 *
 * @param report of the stack, from `check`
 * @param sheets of the same stack, from {@link cutStack}
 * @param title of the page
 * @returns the texts of two files, by their names
 * @example
 * ```js
 * import { jobFiles } from 'tombolo-stencil';
 *
 * const page = jobFiles(report, cutStack(report), 'Marsh');
 * writeFileSync('job.html', page['job.html']);
 * ```
 */
export function jobFiles(
  report: StencilReport,
  sheets: readonly CutSheet[],
  title: string,
): { readonly 'job.html': string; readonly 'job.pdf': string } {
  return job(engineReport(report, 'jobFiles()'), sheets, words(title, 'title'));
}

/**
 * Register holes for a print that is sprayed again and again, in sheet mm.
 *
 * @example
 * ```js
 * const { holes, notes } = repeatPlan(report, { axis: 'x', step: 148 }); // mm
 * ```
 */
export interface RepeatPlan {
  /** For each sheet the same, as {@link CutOptions} takes them; places and radius in sheet mm. */
  readonly holes: readonly { readonly centre: { readonly x: number; readonly y: number }; readonly radius: number }[];
  /** Where the pattern does not go on from one print to the next, a sentence each. */
  readonly notes: readonly string[];
}

/**
 * Where the holes are for a print that goes on along a wall: those at the near side fall on what the last print left of those
 * at the far side.
 *
 * @param report of the stack, from `check`
 * @param repeat `axis`: to the right or down; `step` from one print to the next, mm or a text with its unit
 * @throws StencilError where the sheets have no room for holes, or an option is wrong
 * @example
 * ```js
 * import { cutStack, repeatPlan } from 'tombolo-stencil';
 *
 * const { holes } = repeatPlan(report, { axis: 'x', step: '148mm' });
 * const sheets = cutStack(report, { holes });
 * ```
 */
export function repeatPlan(
  report: StencilReport,
  repeat: { readonly axis: 'x' | 'y'; readonly step: Length },
): RepeatPlan {
  const source = engineReport(report, 'repeatPlan()');
  const { axis, step } = readOptions<typeof repeat>(repeat, 'repeatPlan()', {
    axis: oneOf(['x', 'y']),
    step: positiveLength,
  });
  if (axis === undefined || typeof step !== 'number') throw new StencilError('repeatPlan() needs "axis" and "step".');
  const plan = planRepeat(source, { axis, step });
  if (plan) return plan;
  throw new StencilError('The sheets have no room for register holes: give them a margin.');
}

/**
 * What is said before anything is cut, each time: one or two sentences of the material and of the tool. Nothing is measured.
 *
 * @example
 * ```js
 * import { cuttingCautions } from 'tombolo-stencil';
 *
 * for (const sentence of cuttingCautions(report)) console.error(sentence);
 * ```
 */
export function cuttingCautions(report: StencilReport): string[] {
  return cautionsOf(engineReport(report, 'cuttingCautions()'));
}

/**
 * A strip with bridges and slots from 0.2 to 1.5 mm, as an SVG stencil at true size: to cut and to spray before a job, so that
 * you know what your sheet, tool and paint bear.
 *
 * @example
 * ```js
 * import { testStrip } from 'tombolo-stencil';
 *
 * writeFileSync('strip.svg', testStrip());
 * ```
 */
export function testStrip(): string {
  return strip();
}

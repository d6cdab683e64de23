/** `tombolo cut`: a file for the cutter for each sheet, at true size. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { Config } from '../../config/types';
import { count } from '../../config/values';
import {
  CUT_FORMATS,
  type CutFormat,
  type CutOptions,
  type CutSheet,
  cutFile,
  cutFileName,
  cutOnBeds,
  cutStack,
  cutStackInTiles,
  cuttingCautions,
  errorsLeft,
  isCutFile,
  mirrored,
  motionOf,
  planOf,
  type RepeatPlan,
  sheetTime,
} from '../../engine/index';
import { jsonText } from '../../format/json-text';
import { oneLine } from '../../format/plain-text';
import { formatDuration } from '../../sheet/cutting-time';
import { EXIT_CODES, Failure } from '../failure';
import { ReportLoader, requireLayer, warnOfUnreadable } from '../files/load-report';
import { type LoadedStack, loadStack } from '../files/load-stack';
import { writeFolder } from '../files/write-folder';
import type { Host } from '../host';
import { addReadingOptions, parseAnyLength, parsePositiveLength, type ReadingOptions } from '../options';
import { parseDirection, type RepeatOptions, repeatFor } from './repeat';

interface CutCommandOptions extends Omit<ReadingOptions, 'kerf'>, RepeatOptions {
  readonly out?: string;
  readonly as: readonly CutFormat[];
  /** mm */
  readonly kerf?: number;
  readonly anyway?: boolean;
  readonly plan?: boolean;
  readonly layer?: string;
  readonly r12?: boolean;
  readonly edge: boolean;
  readonly labels?: boolean;
  readonly notches?: boolean;
  /** mm */
  readonly leadIn?: number;
  readonly overcut?: number;
  readonly mirror?: boolean;
  /** mm, both ways. */
  readonly tiles?: readonly [number, number];
  /** mm */
  readonly overlap: number;
  readonly together?: boolean;
}

export function addCutCommand(program: Command, host: Host): void {
  const command = program
    .command('cut')
    .summary('write a file for the cutter for each sheet')
    .description(
      'Writes each sheet at true size: every line once, inner ones before outer ones, the edge last. The sheets are ' +
        'checked first. Ends with 1 when errors are left, and writes nothing then.',
    )
    .argument('<file>', 'an SVG file, or a tombolo.json or its folder; - reads standard input')
    .option('--out <folder>', 'where the files go: 01-sky.svg is painted first')
    .addOption(
      new Option('--as <formats>', 'svg, pdf and dxf, by commas').argParser(parseFormats).default(['svg'], 'svg'),
    )
    .addOption(
      new Option(
        '--kerf <length>',
        'width that the tool takes away, such as 0.1mm: it then runs half of it inside each opening',
      ).argParser(parseAnyLength),
    )
    .option('--no-edge', "leave the sheet's own edge uncut")
    .option('--labels', 'write number, name and paint of each sheet on it, for a pen or engraving')
    .option('--notches', "notch each sheet's edge by its number, for tools that only cut")
    .addOption(
      new Option('--lead-in <length>', 'for a drag knife: begin so far beside the line, such as 0.5mm').argParser(
        parsePositiveLength,
      ),
    )
    .addOption(
      new Option('--overcut <length>', 'for a drag knife: go on so far beyond the beginning').argParser(
        parsePositiveLength,
      ),
    )
    .option('--mirror', 'seen from behind, for glass that is painted there; labels still read')
    .addOption(
      new Option('--tiles <size>', 'part larger sheets into tiles: a4, a3, bed or such as 300x200mm').argParser(
        parseTiles,
      ),
    )
    .addOption(
      new Option('--overlap <length>', 'how far tiles lie over each other')
        .argParser(parsePositiveLength)
        .default(10, '10mm'),
    )
    .option('--together', "lay the sheets side by side on the cutter's bed")
    .addOption(
      new Option(
        '--repeat <direction>',
        'right or down: holes that fall on the last print, to spray it again along a wall',
      ).argParser(parseDirection),
    )
    .addOption(
      new Option('--step <length>', 'from one print to the next; otherwise the artwork is as long').argParser(
        parsePositiveLength,
      ),
    )
    .option('--layer <name>', 'cut this layer alone')
    .option('--r12', 'write DXF of the older kind, which states no unit')
    .option('--plan', 'print the cuts in order as JSON')
    .option('--anyway', 'cut although errors are left');
  addReadingOptions(command, { kerf: false })
    .addHelpText('after', EXAMPLES)
    .action((file: string, options: CutCommandOptions) => runCut(file, options, host));
}

const EXAMPLES = `
Examples:
  tombolo cut heron.svg --out cut
  tombolo cut trail --out cut --as svg,dxf,pdf --kerf 0.1mm
  tombolo cut heron.svg --plan`;

function parseFormats(text: string): CutFormat[] {
  const names = text.split(',').map((name) => name.trim().toLowerCase());
  const known = CUT_FORMATS.filter((format) => names.includes(format));
  if (known.length > 0 && names.every((name) => CUT_FORMATS.some((format) => format === name))) return known;
  throw new InvalidArgumentError('Write one or more of svg, pdf, dxf, such as svg,dxf.');
}

async function runCut(file: string, options: CutCommandOptions, host: Host): Promise<void> {
  if (options.out === undefined && !options.plan) {
    throw new Failure('say with --out into which folder the files go, or ask for the --plan');
  }
  const { kerf = 0, ...others } = options;
  const reading = { ...others, compensated: kerf > 0 };
  const stack = await loadStack(file, new ReportLoader(reading), 'cut');
  for (const loaded of stack.files) warnOfUnreadable(loaded, host);
  requireLayer(stack.name, stack.report.stack, options.layer);
  if (!isSound(stack, options, host)) return;
  const repeated = repeatFor(stack, options);
  const sheets = sheetsFor(stack, options, repeated?.plan.holes);
  for (const note of repeated?.plan.notes ?? []) host.say(oneLine(note));
  for (const sheet of sheets) for (const note of sheet.notes) host.say(`${oneLine(sheet.name)}: ${note}`);
  if (options.plan) host.print(planText(sheets));
  if (options.out === undefined) return;
  const files = filesOf(sheets, options);
  await writeFolder(options.out, files, isCutFile);
  host.say(
    `${count(files.size, 'file')} in ${oneLine(options.out)}.${timeNote(sheets, stack)} ${cuttingCautions(stack.report).join(' ')}`,
  );
  if (repeated) host.say(repeated.told);
}

/** With the ways between the cuts, where the machine is described. */
function timeNote(sheets: readonly CutSheet[], { config }: LoadedStack): string {
  const motion = motionOf(config);
  if (!motion) return '';
  const seconds = sheets.reduce((sum, sheet) => sum + sheetTime(sheet, motion), 0);
  return ` Cutting takes about ${formatDuration(seconds)}.`;
}

/** A line for each cut. */
function planText(sheets: readonly CutSheet[]): string {
  return `[\n${planOf(sheets)
    .map((cut) => jsonText(cut, 0).trimEnd())
    .join(',\n')}\n]\n`;
}

/** mm, upright: ISO 216; a printer leaves a border of 10 mm all round. */
const PAPERS: Readonly<Record<string, readonly [number, number]>> = { a4: [190, 277], a3: [277, 400] };

/** Stands for the bed that the configuration states. */
const BED = [0, 0] as const;

function parseTiles(text: string): readonly [number, number] {
  const name = text.trim().toLowerCase();
  if (name === 'bed') return BED;
  const paper = Object.hasOwn(PAPERS, name) ? PAPERS[name] : undefined;
  if (paper) return paper;
  const [, width = '', height = '', unit = 'mm'] = /^([\d.]+)\s*[x×]\s*([\d.]+)\s*([a-z]+)?$/.exec(name) ?? [];
  return [parsePositiveLength(`${width}${unit}`), parsePositiveLength(`${height}${unit}`)];
}

/** mm between sheets that lie side by side. */
const BED_GAP = 3;

function sheetsFor(
  { report, config }: LoadedStack,
  options: CutCommandOptions,
  holes: RepeatPlan['holes'] = [],
): CutSheet[] {
  const { tiles, overlap, layer, mirror, together } = options;
  const [width, height] = tiles === BED || together ? bedOf(config) : (tiles ?? [0, 0]);
  if (tiles && Math.min(width, height) <= overlap) throw new Failure('the tiles are no larger than their overlap');
  const cut = tiles
    ? cutStackInTiles(report, { width, height, overlap }, cutOptions(options), layer)
    : cutStack(report, { ...cutOptions(options), holes }, layer);
  const sheets = mirror ? cut.map(mirrored) : cut;
  if (!together) return sheets;
  const laid = cutOnBeds(sheets, { width, height, gap: BED_GAP });
  if (!laid) throw new Failure(`a sheet is larger than the bed of ${width} × ${height} mm`);
  return laid;
}

function bedOf({ bed }: Config): readonly [number, number] {
  if (bed) return bed;
  throw new Failure('how large the bed is stands in tombolo.json: "cutter": { "bed": ["300mm", "200mm"] }');
}

function cutOptions({ kerf, edge, labels, notches, leadIn, overcut }: CutCommandOptions): CutOptions {
  return {
    edge,
    ...(kerf !== undefined && { kerf }),
    ...(labels && { labels }),
    ...(notches && { notches }),
    ...(leadIn !== undefined && { leadIn }),
    ...(overcut !== undefined && { overcut }),
  };
}

/** Whether it may be cut: without errors, or anyway. */
function isSound({ name, files }: LoadedStack, { anyway }: CutCommandOptions, host: Host): boolean {
  const { count: total, first } = errorsLeft(files.map(({ report }) => report));
  if (total === 0) return true;
  const what = first === undefined ? '' : ` First: ${oneLine(first)}`;
  if (anyway) {
    host.say(`${oneLine(name)}: cut although ${count(total, 'error')} ${total === 1 ? 'is' : 'are'} left.${what}`);
    return true;
  }
  host.say(`${oneLine(name)}: ${count(total, 'error')} left, nothing was cut.${what}`);
  host.say('tombolo check shows them all; --anyway cuts all the same');
  host.endWith(EXIT_CODES.findings);
  return false;
}

function filesOf(sheets: readonly CutSheet[], { as, r12 }: CutCommandOptions): Map<string, string> {
  return new Map(
    sheets.flatMap((sheet) =>
      as.map((format) => [`${cutFileName(sheet)}.${format}`, cutFile(sheet, format, r12 ? 'AC1009' : 'AC1015')]),
    ),
  );
}

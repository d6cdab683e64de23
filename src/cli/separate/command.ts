/** `tombolo separate`: from a picture to the sheets of its colours. */
import { basename, extname, join, relative } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { MAX_COLOURS } from '../../config/decode-separate';
import { CONFIG_NAME, DEFAULT_CONFIG, type LeftOutBox, type SeparateSettings } from '../../config/types';
import { count } from '../../config/values';
import { readConfig } from '../../engine/index';
import { jsonText } from '../../format/json-text';
import { oneLine } from '../../format/plain-text';
import { tidy } from '../../format/tidy';
import { type Dials, layersAsSvg, type Separation, type Step, separate } from '../../separate/index';
import { type LookedOver, lookedOver } from '../../separator/project/bridged';
import { projectConfig } from '../../separator/project/config-text';
import { type DialWishes, dialsFrom, keptDials } from '../../separator/project/dials';
import { hashOfText } from '../../text/hash';
import { Failure } from '../failure';
import type { Host } from '../host';
import { parseAnyLength, parseColourOption, parsePositiveLength, settingsFrom } from '../options';
import { readMasks, withName } from './masks';
import { readPicture } from './read-picture';
import { isEdited, textAt, writeAll } from './write-sheets';

interface SeparateOptions extends DialWishes {
  /** mm */
  readonly width?: number;
  readonly ground?: string;
  readonly out: string;
  readonly bridge?: boolean;
  readonly masks?: boolean;
  readonly overwrite?: boolean;
  readonly format: 'text' | 'json';
}

export function addSeparateCommand(program: Command, host: Host): void {
  program
    .command('separate')
    .summary('turn a picture into sheets')
    .description(
      'Turns a picture into a few flat colours and writes a sheet for each: a drawing of all layers and its tombolo.json. ' +
        'What is not said is taken from the tombolo.json that stands there already.',
    )
    .argument('<pictures...>', 'a PNG or JPEG file; with --masks one for each sheet, first sprayed first')
    .requiredOption('--out <folder>', 'where the sheets go')
    .addOption(new Option('--width <length>', 'how wide the print becomes').argParser(parsePositiveLength))
    .addOption(new Option('--colours <number>', 'how many paints (default: 4)').argParser(parseColours))
    .addOption(new Option('--paints <list>', 'paints that you have, such as "#8fd3ff,#3b4a54"').argParser(parsePaints))
    .addOption(
      new Option(
        '--detail <length>',
        'nothing finer is cut or left standing (default: what the material bears, of photos half as much again)',
      ).argParser(parsePositiveLength),
    )
    .addOption(
      new Option('--follow <length>', 'how far a curve may run beside the border in the picture').argParser(
        parsePositiveLength,
      ),
    )
    .addOption(
      new Option('--ground <colour>', 'what is painted on: this colour is left unpainted').argParser(parseColourOption),
    )
    .addOption(
      new Option(
        '--leave-out <what>',
        'also leave this unpainted: a colour, or a rectangle as x,y,width,height such as 10mm,10mm,30mm,20mm; may be repeated',
      ).argParser(collectLeftOut),
    )
    .option(
      '--masks',
      'the pictures are sheets: black stays, white or clear is cut; --paints names their paints in order',
    )
    .option('--outline', 'spray the darkest colour last, over all others')
    .option('--bridge', 'add the bridges that islands need')
    .option('--overwrite', 'also write over a drawing that was edited')
    .addOption(new Option('--format <name>', 'what to print').choices(['text', 'json']).default('text'))
    .addHelpText('after', EXAMPLES)
    .action((pictures: string[], options: SeparateOptions) => runSeparate(pictures, options, host));
}

const EXAMPLES = `
Examples:
  tombolo separate marsh.jpg --width 148mm --colours 4 --out trail
  tombolo separate marsh.png --width 148mm --paints "#8fd3ff,#3b4a54" --detail 1mm --bridge --out trail
  tombolo separate marsh.png --detail 1.5mm --out trail
  tombolo separate sun.png reeds.png --masks --width 148mm --paints "#e8a33d,#2f5d4a" --out trail`;

function parseColours(text: string): number {
  const value = /^\d{1,3}$/.test(text) ? Number(text) : NaN;
  if (value >= 1 && value <= MAX_COLOURS) return value;
  throw new InvalidArgumentError(`Write a whole number, from 1 to ${MAX_COLOURS}.`);
}

function parsePaints(text: string): string[] {
  return text.split(',').map(parseColourOption);
}

function collectLeftOut(text: string, before: readonly (string | LeftOutBox)[] = []): (string | LeftOutBox)[] {
  const sides = text.split(',');
  if (sides.length !== 4) return [...before, parseColourOption(text)];
  const [x, y, width, height] = sides.map((side) => parseAnyLength(side.trim())) as [number, number, number, number];
  return [...before, [x, y, width, height]];
}

/** What was done, for who asked. */
interface Outcome {
  readonly separation: Separation;
  readonly looked: LookedOver;
  /** Names in the folder. */
  readonly files: readonly string[];
  /** The drawing that was left alone as it was edited. */
  readonly edited: string | undefined;
}

async function runSeparate(files: readonly string[], options: SeparateOptions, host: Host): Promise<void> {
  const configPath = join(options.out, CONFIG_NAME);
  const before = (await textAt(configPath)) ?? '';
  const { config } = before === '' ? { config: DEFAULT_CONFIG } : readConfig(before);
  const kept = keptDials(options, config.separate);
  const width = options.width ?? config.width;
  if (width === undefined) throw new Failure('say how wide the print becomes, such as --width 148mm');
  const dials = dialsFrom(kept, width, options.ground ?? config.ground, config);
  const [file = '', ...others] = files;
  if (others.length > 0 && !options.masks) throw new Failure('several pictures are sheets of one print: say --masks');
  const progress = new Progress(host);
  progress.show('reading the picture');
  const separation = options.masks
    ? await readMasks(files, dials)
    : await separated(file, dials, (step) => progress.show(STEPS[step]));
  const name = `${basename(file, extname(file))}.svg`;
  const settings: SeparateSettings = { picture: relative(options.out, file), ...kept, files: {} };
  const project = { width: dials.width, ground: dials.ground, file: name };
  progress.show(options.bridge ? 'adding bridges' : 'checking');
  const draft = readConfig(projectConfig(before, { ...project, settings })).config;
  const looked = lookedOver(
    layersAsSvg(separation).text,
    settingsFrom({ limit: false }, draft),
    options.bridge === true,
  );
  const written = await write(options, before, { ...project, settings }, looked.text, config.separate?.files ?? {});
  progress.end();
  const edited = written.includes(name) ? undefined : name;
  const outcome = { separation, looked, files: written, edited };
  if (options.format === 'json') host.print(jsonText(jsonOf(outcome)));
  else host.print(textOf(options.out, outcome));
}

/** @throws Failure of one line where the picture cannot be read, or gives nothing to spray */
async function separated(file: string, dials: Dials, told: (step: Step) => void): Promise<Separation> {
  const picture = await readPicture(file);
  return withName(file, () => separate(picture, dials, { told }));
}

/** @returns the names of the files that were written */
async function write(
  { out, overwrite }: SeparateOptions,
  before: string,
  project: { width: number; ground: string | undefined; file: string; settings: SeparateSettings },
  text: string,
  written: Readonly<Record<string, string>>,
): Promise<string[]> {
  const { file, settings } = project;
  if (!overwrite && (await isEdited(join(out, file), written[file]))) {
    const beside = file.replace(/\.svg$/, '.new.svg');
    await writeAll(out, new Map([[beside, text]]));
    return [beside];
  }
  const files = { [file]: hashOfText(text) };
  const config = projectConfig(before, { ...project, settings: { ...settings, files } });
  await writeAll(
    out,
    new Map([
      [file, text],
      [CONFIG_NAME, config],
    ]),
  );
  return [file, CONFIG_NAME];
}

const STEPS: Readonly<Record<Step, string>> = {
  palette: 'choosing colours',
  areas: 'finding areas',
  order: 'finding the spray order',
  outlines: 'drawing outlines',
};

/** One line on a terminal that says what is being done. */
class Progress {
  private readonly host: Host;

  constructor(host: Host) {
    this.host = host;
  }

  show(what: string): void {
    this.host.progress(`${what}…`);
  }

  end(): void {
    this.host.progress('');
  }
}

function jsonOf({ separation, looked, files, edited }: Outcome): object {
  const { width, height, layers, unpainted, difference, isDrawing, nodes, follow, detail, tooFine, islands } =
    separation;
  return {
    version: 1,
    size: { width: tidy(width), height: tidy(height) },
    kind: isDrawing ? 'drawing' : 'photo',
    palette: layers.map(({ name, paint }) => ({ name, paint })),
    unpainted,
    deltaE: tidy(difference),
    nodes,
    detail: tidy(detail),
    follow: tidy(follow),
    tooFine: tidy(tooFine),
    islands: { ...islands, bridged: looked.islands },
    bridges: looked.bridges,
    twoSheets: looked.twoSheets,
    findings: looked.findings,
    left: looked.left.map(({ at, ...place }) => ({ ...place, ...(at && { at: { x: tidy(at.x), y: tidy(at.y) } }) })),
    files,
    ...(edited !== undefined && { edited }),
  };
}

/** Places that are told one by one; more are in what `tombolo check` says. */
const TOLD_PLACES = 12;

/** Where the sheets are not as they should be though all was tried. */
function placesOf({ left }: LookedOver): string[] {
  const places = left.slice(0, TOLD_PLACES).map(({ layer, at, message }) => {
    const where = [
      layer === undefined ? '' : ` on "${oneLine(layer)}"`,
      at ? ` at ${tidy(at.x)}, ${tidy(at.y)} mm` : '',
    ];
    return `  left${where.join('')}: ${oneLine(message)}`;
  });
  return left.length > TOLD_PLACES ? [...places, `  and ${count(left.length - TOLD_PLACES, 'more place')}`] : places;
}

function twoSheetsOf({ twoSheets }: LookedOver): string[] {
  const names = twoSheets.map((name) => `"${oneLine(name)}"`).join(', ');
  return twoSheets.length === 0
    ? []
    : [`  cut as two sheets in one paint, for one has no room for bridges that hold: ${names}`];
}

function textOf(folder: string, { separation, looked, files, edited }: Outcome): string {
  const { layers, islands, nodes, difference, detail } = separation;
  const lines = layers.map(({ name, paint }, i) => `  ${i + 1}  ${paint}  ${oneLine(name)}`);
  const found = Object.entries(looked.findings).map(([check, many]) => `${many} ${check}`);
  const left =
    looked.bridges > 0 ? `${count(looked.bridges, 'bridge')} added, ${count(looked.islands, 'island')} left` : '';
  return [
    `${folder}: ${count(layers.length, 'layer')} in spray order, nothing finer than ${tidy(detail)} mm`,
    ...lines,
    `  ${count(nodes, 'curve')}; colours differ from the picture by ${difference.toFixed(1)} on average (CIEDE2000)`,
    `  islands: ${islands.alone} where each colour is cut by itself, ${islands.ordered} in this order${left && `; ${left}`}`,
    ...twoSheetsOf(looked),
    ...(found.length > 0 ? [`  tombolo check will say: ${found.join(', ')}`] : []),
    ...placesOf(looked),
    ...(edited === undefined
      ? [`  written: ${files.join(', ')}`]
      : [`  ${edited} was edited and is left as it is; the new sheets are in ${files.join(', ')}`]),
    '',
  ].join('\n');
}

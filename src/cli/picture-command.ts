/** `tombolo picture`: the painted stack, or its sheets, as SVG or PNG. */

import { extname } from 'node:path';
import { type Command, Option } from 'commander';
import { oneLine } from '../format/plain-text';
import { DEFAULT_GROUND, layerNames, stackScene } from '../picture/picture';
import type { ViewMode } from '../picture/scene';
import { sceneSvg } from '../picture/scene-svg';
import { Failure } from './failure';
import { ReportLoader, requireLayer, warnOfUnreadable } from './files/load-report';
import { isSameFile, writeAtomically } from './files/write-output';
import type { Host } from './host';
import { addReadingOptions, parseColourOption, parsePercent, parsePixelsPerMm, type ReadingOptions } from './options';
import { renderPng } from './render-png';

interface PictureOptions extends ReadingOptions {
  readonly out: string;
  /** `#rrggbb` */
  readonly ground?: string;
  /** Pixels per mm. */
  readonly scale?: number;
  readonly layer?: string;
  readonly look: ViewMode;
  /** Percent */
  readonly opacity: number;
}

export function addPictureCommand(program: Command, host: Host): void {
  const command = program
    .command('picture')
    .summary('draw the painted stack')
    .description('Draws what the sheets give when they are sprayed one after the other, at true size.')
    .argument('<file>', 'an SVG file, or a tombolo.json or its folder; - reads standard input')
    .requiredOption('--out <file>', 'where the picture goes: a name that ends in .svg or .png')
    .addOption(
      new Option(
        '--ground <colour>',
        `what is painted on (default: what tombolo.json says, else ${DEFAULT_GROUND})`,
      ).argParser(parseColourOption),
    )
    .addOption(
      new Option('--scale <number>', 'pixels per mm of a .png (default: 10, fewer for large sheets)').argParser(
        parsePixelsPerMm,
      ),
    )
    .addOption(
      new Option('--look <look>', 'the print, one sheet or all sheets')
        .choices(['print', 'sheet', 'sheets'] satisfies ViewMode[])
        .default('print'),
    )
    .addOption(
      new Option('--opacity <percent>', 'how much each coat of paint covers').argParser(parsePercent).default(100),
    )
    .option('--layer <name>', 'draw this layer alone');
  addReadingOptions(command)
    .addHelpText('after', EXAMPLES)
    .action((file: string, options: PictureOptions) => runPicture(file, options, host));
}

const EXAMPLES = `
Examples:
  tombolo picture heron.svg --out stack.png
  tombolo picture heron.svg --out stack.svg --ground '#f4efe4' --layer reeds
  tombolo picture heron.svg --out reeds.png --look sheet --layer reeds
  tombolo picture tombolo.json --out print.png`;

async function runPicture(file: string, options: PictureOptions, host: Host): Promise<void> {
  const suffix = extname(options.out).toLowerCase();
  if (suffix !== '.svg' && suffix !== '.png') {
    throw new Failure(`${options.out}: a picture's name ends in .svg or .png`);
  }
  const loader = new ReportLoader(options);
  const [first, ...others] = await loader.filesOf(file);
  if (first === undefined) throw new Failure(`${file}: names no file that is there, so that there is nothing to draw`);
  for (const each of [file, first, ...others]) await refuseToOverwrite(each, options.out);
  const loaded = await loader.file(first);
  if (others.length > 0 && !loaded.report.project) {
    throw new Failure(`${file}: names no layers, so that it is no one stack; name one of its files`);
  }
  requireLayer(loaded.name, loaded.report.stack, options.layer);
  warnOfUnreadable(loaded, host);
  for (const each of others) warnOfUnreadable(await loader.file(each), host);
  const { ground, layer, scale, look, opacity } = options;
  const {
    drawing: { width, height },
    stack,
  } = loaded.report;
  if (!(width > 0 && height > 0)) throw new Failure(`${loaded.name}: has no size, so that there is nothing to draw`);
  const drawn = stackScene(loaded.report, {
    look,
    opacity: opacity / 100,
    ...(ground !== undefined && { ground }),
    ...(layer !== undefined && { layer }),
  });
  const picture = sceneSvg(drawn, { names: layerNames(loaded.report) });
  const size = { width: drawn.box.maxX - drawn.box.minX, height: drawn.box.maxY - drawn.box.minY, scale };
  await writeAtomically(options.out, suffix === '.svg' ? picture : await renderPng(picture, size, look !== 'print'));
  if (stack.layers.every(({ sheet }) => sheet.openings.length === 0)) {
    host.say(`${oneLine(loaded.name)}: no openings; the picture shows the bare ground`);
  }
}

/** @throws Failure when the picture would take the place of what it is drawn from */
async function refuseToOverwrite(file: string, out: string): Promise<void> {
  if (!(await isSameFile(file, out))) return;
  throw new Failure(`${out}: this is the stencil itself; give the picture another name`);
}

/** `tombolo order`: the spray order that leaves the fewest islands. */
import { type Command, Option } from 'commander';
import { count } from '../config/values';
import { applyEdits, type OrderEdits, reorderStack, type SprayOrder, sprayOrder } from '../engine/index';
import { jsonText } from '../format/json-text';
import { oneLine } from '../format/plain-text';
import { EXIT_CODES, Failure } from './failure';
import { pathIn } from './files/load-project';
import { type LoadedReport, ReportLoader, warnOfUnreadable } from './files/load-report';
import { STANDARD_INPUT } from './files/read-input';
import { replaceText } from './files/write-output';
import type { Host } from './host';
import { addReadingOptions, parseNumber, type ReadingOptions } from './options';

interface OrderOptions extends ReadingOptions {
  readonly write?: boolean;
  readonly format: 'text' | 'json';
  /** Islands for each pair of layers. */
  readonly lightOverDark: number;
}

export function addOrderCommand(program: Command, host: Host): void {
  const command = program
    .command('order')
    .summary('find the spray order with the fewest islands')
    .description(
      'Finds the spray order with the fewest islands: those that later paint covers can be removed. The print stays ' +
        'the same. Ends with 1 when an order could not be found or written.',
    )
    .argument('<files...>', 'SVG files, a tombolo.json or its folder; - reads standard input')
    .option('--write', 'put the layers into that order, in their file or tombolo.json')
    .addOption(
      new Option(
        '--light-over-dark <number>',
        'how many islands a lighter paint over a darker one counts, as it needs more coats; with 0 it decides ' +
          'between orders with equally many islands',
      )
        .argParser(parseNumber)
        .default(0),
    )
    .addOption(new Option('--format <name>', 'what to print').choices(['text', 'json']).default('text'));
  addReadingOptions(command)
    .addHelpText('after', EXAMPLES)
    .action((files: string[], options: OrderOptions) => runOrder(files, options, host));
}

const EXAMPLES = `
Examples:
  tombolo order heron.svg
  tombolo order tombolo.json --write
  tombolo order heron.svg --light-over-dark 0.5 --format json`;

async function runOrder(files: readonly string[], options: OrderOptions, host: Host): Promise<void> {
  if (options.write && files.includes(STANDARD_INPUT))
    throw new Failure('--write needs a file: standard input has none');
  const loader = new ReportLoader(options);
  for (const loaded of await stacksOf(files, loader)) {
    warnOfUnreadable(loaded, host);
    await orderStack(loaded, options, host);
  }
}

/** One report for each stack: the files of a project are one. */
async function stacksOf(files: readonly string[], loader: ReportLoader): Promise<LoadedReport[]> {
  const stacks = new Map<unknown, LoadedReport>();
  for (const file of files) {
    const all = await loader.filesOf(file);
    if (all.length === 0) throw new Failure(`${file}: names no file that is there, so that there is nothing to order`);
    for (const each of all) {
      const loaded = await loader.file(each);
      const stack = loaded.report.project ? loaded.config : loaded.name;
      if (!stacks.has(stack)) stacks.set(stack, loaded);
    }
  }
  return [...stacks.values()];
}

async function orderStack(loaded: LoadedReport, options: OrderOptions, host: Host): Promise<void> {
  const { report } = loaded;
  const name = report.project ? (loaded.config.path ?? loaded.name) : loaded.name;
  const best = sprayOrder(report, options.lightOverDark);
  if (typeof best === 'string') return refuse(name, best, host);
  const layers = report.stack.layers.map(({ sheet }) => sheet.layer.name);
  host.print(options.format === 'json' ? jsonLine(name, best, layers) : textOf(name, best, layers));
  if (!options.write || best.moved.length === 0) return;
  const answer = reorderStack(report, loaded.config.text, best.order, best.moved);
  if (typeof answer === 'string') return refuse(name, answer, host);
  const written = await writeOrder(loaded, answer);
  host.say(`${oneLine(written)}: ${count(best.moved.length, 'layer')} moved`);
}

function refuse(name: string, reason: string, host: Host): void {
  host.say(`${oneLine(name)}: refused: ${oneLine(reason)}`);
  host.endWith(EXIT_CODES.findings);
}

/** @returns the path of the file that says the order */
async function writeOrder({ report, config, name, input }: LoadedReport, { file, edits }: OrderEdits): Promise<string> {
  const [path, text] =
    file === undefined
      ? [config.path ?? name, config.text]
      : file === ''
        ? [name, input.text]
        : [pathIn(config, file), report.project?.report.files.get(file)?.text ?? input.text];
  await replaceText(path, text, applyEdits(text, edits));
  return path;
}

/** One line, so that several stacks are as many lines. */
function jsonLine(
  path: string,
  { order, moved, islands, before, after }: SprayOrder,
  layers: readonly string[],
): string {
  const names = (numbers: readonly number[]) => numbers.map((number) => layers[number] ?? '');
  const result = {
    version: 1,
    path,
    order: names(order),
    places: order,
    moved: names(moved),
    islands,
    islandsBefore: before,
    islandsAfter: after,
  };
  return jsonText(result, 0);
}

function textOf(path: string, best: SprayOrder, layers: readonly string[]): string {
  const { order, moved, islands, before, after } = best;
  const lines = order.map((number, place) => {
    const was = moved.includes(number) ? ` (was ${number + 1})` : '';
    return `  ${place + 1}  ${oneLine(layers[number] ?? '')}${was}`;
  });
  const covered = islands - after;
  const rest = covered > 0 ? [`  ${count(covered, 'island')} can be cut away: later paint covers the place.`] : [];
  const head =
    moved.length === 0
      ? `the spray order is the best already: ${count(after, 'island')} to bridge`
      : `${count(after, 'island')} to bridge in the best spray order, ${before} as it is now`;
  return [`${oneLine(path)}: ${head}`, ...(moved.length === 0 ? [] : lines), ...rest, ''].join('\n');
}

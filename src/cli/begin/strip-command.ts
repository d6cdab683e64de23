/** `tombolo strip`: a test strip to cut, and the limits that were read from it, kept in `tombolo.json`. */
import { join, resolve } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { configEdits } from '../../config/edit-config';
import { CONFIG_NAME } from '../../config/types';
import { applyEdits, testStrip } from '../../engine/index';
import { oneLine } from '../../format/plain-text';
import { Failure } from '../failure';
import { ConfigFinder } from '../files/find-config';
import { isThere } from '../files/load-report';
import { replaceText, writeAtomically } from '../files/write-output';
import type { Host } from '../host';
import { parsePositiveLength } from '../options';

interface StripOptions {
  readonly out?: string;
  readonly config?: string;
  /** As written, with their units. */
  readonly bridge?: string;
  readonly opening?: string;
}

export function addStripCommand(program: Command, host: Host): void {
  program
    .command('strip')
    .summary('make a test strip, and keep the limits read from it')
    .description(
      'Makes a strip of bridges and slots from 0.2 to 1.5 mm. Cut it from your sheet and spray through it; then name ' +
        'the finest bridge that held and the finest slot that painted cleanly: they become the limits in tombolo.json.',
    )
    .option('--out <file>', 'write the strip there instead of to standard output')
    .addOption(new Option('--bridge <length>', 'the finest bridge that held, such as 0.7mm').argParser(checkedLength))
    .addOption(new Option('--opening <length>', 'the finest slot that painted cleanly').argParser(checkedLength))
    .option('--config <file>', 'keep the limits in this tombolo.json instead of the nearest one')
    .addHelpText('after', EXAMPLES)
    .action((options: StripOptions) => runStrip(options, host));
}

const EXAMPLES = `
Examples:
  tombolo strip --out strip.svg
  tombolo strip --bridge 0.7mm --opening 0.5mm`;

/** mm: a strip ends there, and a limit beyond it was not read from one. */
const MOST = 10;

function checkedLength(text: string): string {
  if (parsePositiveLength(text) <= MOST) return text.trim();
  throw new InvalidArgumentError(`No bridge or opening of a strip is that wide: ${MOST} mm is the most.`);
}

async function runStrip(options: StripOptions, host: Host): Promise<void> {
  const { out, bridge, opening } = options;
  const limits = { ...(bridge !== undefined && { bridge }), ...(opening !== undefined && { opening }) };
  const isRead = Object.keys(limits).length > 0;
  if (isRead && out !== undefined)
    throw new Failure('--out is for the strip; --bridge and --opening are for what was read from it');
  if (isRead) return keepLimits(limits, options.config, host);
  if (out === undefined) return host.print(testStrip());
  if (await isThere(out)) throw new Failure(`${out}: is there already; name another file`);
  await writeAtomically(out, testStrip());
}

/** In the nearest `tombolo.json`; where there is none, one is made here. */
async function keepLimits(
  limits: Readonly<Record<string, string>>,
  stated: string | undefined,
  host: Host,
): Promise<void> {
  const found = await new ConfigFinder(stated).configFor(join(resolve('.'), 'any.svg'));
  const path = found.path ?? CONFIG_NAME;
  if (found.problems.some(({ severity }) => severity === 'error'))
    throw new Failure(`${path}: has errors; fix those first`);
  const before = found.path === undefined ? '{}\n' : found.text;
  let text = before.trim() === '' ? '{}\n' : before;
  for (const [key, value] of Object.entries(limits)) text = applyEdits(text, configEdits(text, ['limits', key], value));
  if (found.path === undefined) await writeAtomically(path, text);
  else await replaceText(path, found.text, text);
  const told = Object.entries(limits)
    .map(([key, value]) => `${key} ${value}`)
    .join(', ');
  host.print(`${oneLine(path)}: the least that counts as sound is now ${told}.\n`);
}

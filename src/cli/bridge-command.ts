/** `tombolo bridge`: gives every island the bridges it needs. */
import { Option, type Command } from 'commander';
import { createTwoFilesPatch, FILE_HEADERS_ONLY } from 'diff';
import { relative, resolve, sep } from 'node:path';
import { bridgeIslands } from '../engine';
import { EXIT_CODES } from './exit-codes';
import { Failure } from './failure';
import { ConfigFinder } from './find-config';
import type { Host } from './host';
import { loadReport, requireLayer, warnOfUnreadable, type LoadedReport } from './load-report';
import { addReadingOptions, parsePositiveLength, type ReadingOptions } from './options';
import { count, oneLine } from './plain-text';
import { encodeText, readInput, STANDARD_INPUT } from './read-input';
import { writeAtomically } from './write-output';

interface BridgeOptions extends ReadingOptions {
  readonly write?: boolean;
  readonly diff?: boolean;
  /** mm */
  readonly widthOfBridge?: number;
  readonly layer?: string;
}

export function addBridgeCommand(program: Command, host: Host): void {
  const command = program.command('bridge')
    .summary('add the bridges that islands need')
    .description('Adds the bridges that every island needs and gives the changed file to standard output. Ends with 1 '
      + 'when an island could not be bridged.')
    .argument('<file>', 'an SVG file; - reads standard input')
    .addOption(new Option('--write', 'change the file itself').conflicts('diff'))
    .option('--diff', 'give a unified patch instead')
    .addOption(new Option('--width-of-bridge <length>', 'how wide bridges are (default: what the material needs)')
      .argParser(parsePositiveLength))
    .option('--layer <name>', 'bridge the islands of this layer alone');
  addReadingOptions(command)
    .addHelpText('after', EXAMPLES)
    .action((file: string, options: BridgeOptions) => runBridge(file, options, host));
}

const EXAMPLES = `
Examples:
  tombolo bridge heron.svg > heron-bridged.svg
  tombolo bridge heron.svg --diff
  tombolo bridge heron.svg --write --width-of-bridge 1.2mm --layer reeds`;

async function runBridge(file: string, options: BridgeOptions, host: Host): Promise<void> {
  if (options.write && file === STANDARD_INPUT) throw new Failure('--write needs a file: standard input has none');
  const loaded = await loadReport(file, options, new ConfigFinder(options.config));
  requireLayer(loaded, options.layer);
  warnOfUnreadable(loaded, host);
  const { text, bridges, refusals } = bridgeIslands(loaded.report, {
    ...(options.layer !== undefined && { layer: options.layer }),
    ...(options.widthOfBridge !== undefined && { bridgeWidth: options.widthOfBridge }),
  });
  await deliver(file, text, loaded, options, host);
  const name = oneLine(loaded.name);
  host.say(bridges > 0 ? `${name}: ${count(bridges, 'bridge')} added` : `${name}: no bridge added`);
  for (const refusal of refusals) host.say(`${name}: refused: ${oneLine(refusal.message)}`);
  if (refusals.length > 0) host.endWith(EXIT_CODES.findings);
}

async function deliver(
  file: string, text: string, { name, input }: LoadedReport, options: BridgeOptions, host: Host,
): Promise<void> {
  if (options.diff) {
    host.print(text === input.text ? '' : unifiedPatch(name, input.text, text));
  } else if (!options.write) {
    host.print(encodeText(text, input.encoding));
  } else if (text !== input.text) {
    const now = await readInput(file);
    if (!now.bytes.equals(input.bytes)) {
      throw new Failure(`${name}: the file has changed meanwhile; nothing was written`);
    }
    await writeAtomically(file, encodeText(text, input.encoding));
  }
}

/** A patch for `git apply` or `patch -p1` in this folder; for files elsewhere, in the root folder. */
function unifiedPatch(path: string, before: string, after: string): string {
  const fromHere = relative(process.cwd(), resolve(path));
  const shown = fromHere.startsWith('..') ? resolve(path) : fromHere;
  const name = shown.replaceAll(sep, '/').replace(/^(?:[a-z]:)?\//i, '');
  // The name ends at the tab that GNU diff writes before its dates; without one, `patch` ends it at the first blank.
  const date = /\s/.test(name) ? '' : undefined;
  const options = { context: 3, headerOptions: FILE_HEADERS_ONLY };
  return createTwoFilesPatch(`a/${name}`, `b/${name}`, before, after, date, date, options);
}

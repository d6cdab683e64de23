/** `tombolo mend`: makes the fixes that hold, one after the other. */
import { type Command, Option } from 'commander';
import { count } from '../config/values';
import { fixAll } from '../engine/index';
import { oneLine } from '../format/plain-text';
import { filesNamed } from './check/check-units';
import { Failure, internalFailure } from './failure';
import { ReportLoader, warnOfUnreadable } from './files/load-report';
import { STANDARD_INPUT } from './files/read-input';
import { type ResultOptions, writeResult } from './files/write-result';
import type { Host } from './host';
import { addReadingOptions, nameOf, type ReadingOptions } from './options';

interface MendOptions extends ReadingOptions, ResultOptions {
  readonly safe?: boolean;
}

export function addMendCommand(program: Command, host: Host): void {
  const command = program
    .command('mend')
    .summary('make the fixes that hold')
    .description(
      'Bridges the islands and makes the best fix of each finding, each proven, and gives the changed file to standard output. ' +
        'What cannot be fixed is left: tombolo check tells of it.',
    )
    .argument('<files...>', 'SVG files, folders or patterns; - reads standard input')
    .option('--safe', 'only what changes nothing that is painted')
    .addOption(new Option('--write', 'change the files themselves').conflicts('diff'))
    .option('--diff', 'give a unified patch instead');
  addReadingOptions(command)
    .addHelpText('after', EXAMPLES)
    .action((files: string[], options: MendOptions) => runMend(files, options, host));
}

const EXAMPLES = `
Examples:
  tombolo mend heron.svg > heron-mended.svg
  tombolo mend heron.svg --diff
  tombolo mend trail --safe --write`;

async function runMend(named: readonly string[], options: MendOptions, host: Host): Promise<void> {
  const { write, diff } = options;
  if (write && named.includes(STANDARD_INPUT)) throw new Failure('--write needs a file: standard input has none');
  const files = await filesNamed(named, { loader: new ReportLoader(options), configs: new Set(), options: {} }, host);
  if (files.length > 1 && !write && !diff) throw new Failure('several files need --write or --diff');
  for (const file of files) {
    try {
      await mendFile(file, options, host);
    } catch (error) {
      host.fail(internalFailure(nameOf(file, options), error));
    }
  }
}

/** With a loader of its own: what was written before is read again by the other files of its project. */
async function mendFile(file: string, options: MendOptions, host: Host): Promise<void> {
  const loaded = await new ReportLoader(options).file(file);
  warnOfUnreadable(loaded, host);
  const name = oneLine(loaded.name);
  const { text, done } = fixAll(loaded.report, {
    ...(options.safe && { safe: true }),
    progress: (title) => host.say(`${name}: ${oneLine(title)}`),
  });
  await writeResult(file, text, loaded, options, host);
  host.say(`${name}: ${done.length === 0 ? 'nothing to fix' : `${count(done.length, 'change')} made`}`);
}

/** `tombolo mend`: makes the fixes that hold, one after the other. */
import { type Command, Option } from 'commander';
import { count } from '../config/values';
import { fixAll } from '../engine/index';
import { oneLine } from '../format/plain-text';
import { changeFiles } from './change-files';
import { ReportLoader, warnOfUnreadable } from './files/load-report';
import { type ResultOptions, writeResult } from './files/write-result';
import type { Host } from './host';
import { addReadingOptions, type ReadingOptions } from './options';

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
    .action((files: string[], options: MendOptions) => changeFiles(files, options, host, mendFile));
}

const EXAMPLES = `
Examples:
  tombolo mend heron.svg > heron-mended.svg
  tombolo mend heron.svg --diff
  tombolo mend trail --safe --write`;

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

/** `tombolo watch`: checks again whenever a drawing, its `tombolo.json` or the program that draws it has changed. */
import { type Command, Option } from 'commander';
import { addReportOptions, type CheckOptions } from '../check-command';
import type { Host } from '../host';
import { addReadingOptions } from '../options';
import { takeMarksAway } from './leave-marks';
import { Rounds } from './rounds';
import { linesFor, screenFor } from './screen';
import { watchFiles } from './watch-files';

/** @param raw all words of the command line */
export function addWatchCommand(program: Command, host: Host, raw: readonly string[]): void {
  const command = program
    .command('watch')
    .summary('check again whenever something has changed')
    .description(
      'Checks drawings, and again whenever one of them or its tombolo.json has changed; with a program after --, runs that ' +
        'and checks what it writes, whenever one of its files has changed. Ctrl+C ends it, and the program with it.',
    )
    .argument('[words...]', 'files and folders to watch, by default this folder; after -- a program and its arguments');
  addReportOptions(addReadingOptions(command))
    .addHelpText('after', EXAMPLES)
    // For editors: nobody else has a use for it.
    .addOption(new Option('--marks <file>').hideHelp())
    .action((words: string[], options: WatchOptions) => {
      const { paths, program: named } = partWords(words, raw);
      return watch(paths, named, options, host);
    });
}

interface WatchOptions extends CheckOptions {
  /** Where the editor that has started it looks for what each run says of its drawings. */
  readonly marks?: string;
}

const EXAMPLES = `
On a terminal the screen is written anew each time. Elsewhere each report stands between two lines, "tombolo: check begins"
and "tombolo: check ended", for the problem matcher $tombolo-watch.

Examples:
  tombolo watch
  tombolo watch layers --width 148mm
  tombolo watch -- node posts.mjs
  tombolo watch --format unix -- npm run art`;

/** What stands before `--` and what after it; the parser has taken the dashes away. */
export function partWords(words: readonly string[], raw: readonly string[]): { paths: string[]; program: string[] } {
  const dashes = raw.indexOf('--');
  const after = dashes < 0 ? 0 : raw.length - dashes - 1;
  const operands = words.filter((word, i) => word !== '--' || i >= words.length - after);
  return { paths: operands.slice(0, operands.length - after), program: operands.slice(operands.length - after) };
}

/** Ends when the process is told to end. */
async function watch(
  paths: readonly string[],
  program: readonly string[],
  options: WatchOptions,
  host: Host,
): Promise<void> {
  const { marks } = options;
  // Said to us alone by an editor whose Node.js is an Electron.
  if (marks !== undefined) delete process.env.ELECTRON_RUN_AS_NODE;
  const watched = paths.length > 0 ? paths : ['.'];
  const screen = marks === undefined ? screenFor(host) : linesFor(host);
  const rounds = new Rounds({ paths: watched, program, options, host, screen, marks });
  const stop = watchFiles(watched, { byProgram: program.length > 0, changed: (file) => rounds.changed(file) });
  const ended = new Promise<void>((settle) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => settle());
  });
  rounds.begin();
  await ended;
  await Promise.all([stop(), rounds.end()]);
  if (marks !== undefined) await takeMarksAway(marks);
}

/** `tombolo trace`: runs a program that draws, and leads findings to its lines. */

import path from 'node:path';
import type { Command } from 'commander';
import { summarize } from '../../format/checked-file';
import { oneLine } from '../../format/plain-text';
import { runProgram } from '../../trace/run/run-program';
import { exitCodeFor } from '../check/summary';
import { addReportOptions, type CheckOptions, reportText } from '../check-command';
import { failureAt } from '../failure';
import { writeAtomically } from '../files/write-output';
import type { Host } from '../host';
import { addReadingOptions } from '../options';
import { checkRun, isDrawing } from './check-run';

export interface TraceOptions extends CheckOptions {
  readonly report?: string;
}

export function addTraceCommand(program: Command, host: Host): void {
  const command = program
    .command('trace')
    .summary('run a program that draws, and lead findings to its lines')
    .description(
      'Runs a program as it is, checks the SVG files that it writes, or what it prints, and tells which of its lines drew ' +
        'what is found. Programs in JavaScript, TypeScript and Python; what they write is, to the byte, what they write ' +
        "without. Ends with the program's own code, or with 1 where that is 0 and there are findings.",
    )
    .argument('<command...>', 'the program and its arguments, after --')
    .passThroughOptions();
  addReportOptions(addReadingOptions(command))
    .option('--report <file>', 'write the report there; what the program prints then passes through alone')
    .addHelpText('after', EXAMPLES)
    .action((words: string[], options: TraceOptions) => runTrace(words, options, host));
}

const EXAMPLES = `
The report goes to standard output. Where the program prints its drawing there, text and unix go to standard error; with
json and sarif, what the program prints does.

Examples:
  tombolo trace -- node posts.mjs
  tombolo trace --format unix -- npm run art
  tombolo trace --width 148mm -- python3 posts.py`;

/** Where the build puts what is loaded into the program. */
export const PRELOADS = path.join(__dirname, 'trace');

async function runTrace(command: readonly string[], options: TraceOptions, host: Host): Promise<void> {
  const reportAlone = options.report === undefined && /^(?:json|sarif)$/.test(options.format);
  const stdout = reportAlone ? process.stderr : process.stdout;
  const run = await runProgram({ command, preloads: PRELOADS, stdout, stderr: process.stderr }).catch((error) => {
    throw failureAt(command[0] ?? '', error);
  });
  if (run.code !== 0) {
    host.say(`tombolo: ${oneLine(command.join(' '))} ended with ${run.code}; nothing it wrote was checked`);
    return host.endAs(run.code);
  }
  const { checked, drawings } = await checkRun(run, options, host);
  if (drawings === 0) host.say(`tombolo: ${oneLine(command.join(' '))} wrote no SVG`);
  const text = drawings === 0 && options.format === 'text' ? '' : reportText(checked, options, host);
  if (options.report !== undefined) await writeAtomically(options.report, text);
  else if (!reportAlone && isDrawing(run.printed.bytes)) process.stderr.write(text);
  else host.print(text);
  host.endWith(exitCodeFor(summarize(checked), options.maxWarnings));
}

/** The command line as a whole: its commands, and what is said when it is used wrongly. */
import { Command, CommanderError } from 'commander';
import { version } from '../../package.json';
import { oneLine } from '../format/plain-text';
import { addCompletionCommand } from './begin/completion-command';
import { addInitCommand } from './begin/init-command';
import { addStripCommand } from './begin/strip-command';
import { addBridgeCommand } from './bridge-command';
import { addCheckCommand } from './check-command';
import { addCutCommand } from './cut/cut-command';
import { addJobCommand } from './cut/job-command';
import { EXIT_CODES } from './failure';
import type { Host } from './host';
import { addMendCommand } from './mend-command';
import { addOrderCommand } from './order-command';
import { addPictureCommand } from './picture-command';
import { addSeparateCommand } from './separate/command';
import { addServerCommand } from './server-command';
import { addTraceCommand } from './trace/trace-command';
import { addWatchCommand } from './watch/watch-command';

/** @param words the arguments, without those of Node itself */
export async function runProgram(words: readonly string[], host: Host): Promise<void> {
  try {
    await createProgram(host, words).parseAsync(words, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) return host.fail(error);
    if (error.exitCode !== 0) host.endWith(EXIT_CODES.failed);
  }
}

function createProgram(host: Host, words: readonly string[]): Command {
  const program = new Command('tombolo')
    .description('Checks spray-paint stencils in SVG at true size, and puts bridges in.')
    .version(version, '--version')
    .helpCommand(false)
    .enablePositionalOptions()
    .exitOverride()
    .configureOutput({ outputError: (message, write) => write(misuseLine(message)) })
    .addHelpText('after', EXAMPLES);
  addInitCommand(program, host);
  addCheckCommand(program, host);
  addBridgeCommand(program, host);
  addMendCommand(program, host);
  addOrderCommand(program, host);
  addPictureCommand(program, host);
  addCutCommand(program, host);
  addJobCommand(program, host);
  addStripCommand(program, host);
  addTraceCommand(program, host);
  addWatchCommand(program, host, words);
  addSeparateCommand(program, host);
  addServerCommand(program);
  addCompletionCommand(program, host);
  for (const command of program.commands) command.showHelpAfterError(`Try: tombolo ${command.name()} --help`);
  return program.showHelpAfterError('Try: tombolo --help');
}

function misuseLine(message: string): string {
  return `tombolo: ${oneLine(message.replace(/^error: /, ''))}\n`;
}

const EXAMPLES = `
Examples:
  tombolo init --width 148mm --material card-0.3
  tombolo check heron.svg
  tombolo bridge heron.svg --write
  tombolo mend heron.svg --safe --write
  tombolo order heron.svg
  tombolo picture heron.svg --out stack.png
  tombolo cut heron.svg --out cut
  tombolo strip --out strip.svg
  tombolo trace -- node posts.mjs
  tombolo watch -- node posts.mjs
  tombolo separate marsh.jpg --width 148mm --colours 4 --out trail

Ends with 0 when all is well, 1 when there are findings, 2 when a command could not run.
A tombolo.json beside a file, or in a folder above it, says how it is cut.`;

/** The process around a command: where it writes, and what it ends with. */

import { showable } from '../text/plain-text';
import { EXIT_CODES, type ExitCode, type FailureLines, failureLines, worseOf } from './failure';

/** Does not end the process: what waits in a pipe is still written. */
export class Host {
  exitCode: ExitCode = EXIT_CODES.clean;
  /** What went wrong so far, one line each: machines are told of it too. */
  readonly failures: string[] = [];

  readonly isTerminal = process.stdout.isTTY === true;
  /** Characters in a line of the terminal. */
  readonly columns = process.stdout.columns || 80;
  readonly environment: Readonly<Record<string, string | undefined>> = process.env;

  print(output: string | Buffer): void {
    process.stdout.write(output);
  }

  /**
   * Text of a file: as it is, but for a terminal, which would obey some of it.
   * @param encode how the file is written
   */
  printText(text: string, encode: (text: string) => string | Buffer = (whole) => whole): void {
    this.print(this.isTerminal ? showable(text) : encode(text));
  }

  /** One line on standard error. */
  say(line: string): void {
    process.stderr.write(`${line}\n`);
  }

  /** Says on a terminal what is being done, in place of what was said last; nothing is done any more where it is empty. */
  progress(words: string): void {
    if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${words}`);
  }

  /** Says what went wrong; other files may still be worked on. */
  fail(error: unknown): void {
    this.failWith(failureLines(error));
  }

  failWith({ words, line }: FailureLines): void {
    this.failures.push(words);
    this.progress('');
    this.say(line);
    this.endWith(EXIT_CODES.failed);
  }

  /** The code of a program that was run stands before ours. */
  endAs(code: number): void {
    process.exitCode = code;
  }

  /** The worst of all codes stands. */
  endWith(code: ExitCode): void {
    this.exitCode = worseOf(this.exitCode, code);
    process.exitCode = this.exitCode;
  }
}

/** The process around a command: where it writes, and what it ends with. */

import { describeError, EXIT_CODES, type ExitCode, worseOf } from './failure';

/** Does not end the process: what waits in a pipe is still written. */
export class Host {
  exitCode: ExitCode = EXIT_CODES.clean;

  readonly isTerminal = process.stdout.isTTY === true;
  readonly environment: Readonly<Record<string, string | undefined>> = process.env;

  print(output: string | Buffer): void {
    process.stdout.write(output);
  }

  /** One line on standard error. */
  say(line: string): void {
    process.stderr.write(`${line}\n`);
  }

  /** Says what went wrong; other files may still be worked on. */
  fail(error: unknown): void {
    this.say(describeError(error, this.environment.TOMBOLO_DEBUG === '1'));
    this.endWith(EXIT_CODES.failed);
  }

  /** The worst of all codes stands. */
  endWith(code: ExitCode): void {
    this.exitCode = worseOf(this.exitCode, code);
    process.exitCode = this.exitCode;
  }
}

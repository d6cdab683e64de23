/** How a command ends: its exit code, and in one line what kept it from running. */

import { oneLine } from '../format/plain-text';
import { showable } from '../text/plain-text';

/** What the process ends with. Scripts rely on these numbers. */
export const EXIT_CODES = {
  /** Nothing at warning or above beyond the allowance. */
  clean: 0,
  findings: 1,
  /** Bad arguments, or a file that could not be read or written. */
  failed: 2,
} as const;

export type ExitCode = (typeof EXIT_CODES)[keyof typeof EXIT_CODES];

export function worseOf(first: ExitCode, second: ExitCode): ExitCode {
  return first > second ? first : second;
}

/** Something the person at the terminal can put right; its message is shown as it stands. */
export class Failure extends Error {}

/** System errors by their code, as libuv names them: the words that follow the path. */
const SYSTEM_ERRORS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EISDIR: 'is a folder; name the files in it',
  ENOTDIR: 'a part of this path is no folder',
  EACCES: 'permission denied',
  EPERM: 'not permitted',
  EROFS: 'the file system is read-only',
  ENOSPC: 'no space left on the device',
  EFBIG: 'the file would be too large',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'too many symbolic links',
  EMFILE: 'too many open files',
  EIO: 'the device reports an input or output error',
  ERR_FS_FILE_TOO_LARGE: 'the file is too large to be read',
  ERR_STRING_TOO_LONG: 'the file is too large to be read',
};

/** What went wrong with the file at `path`, as a failure that names it. */
export function failureAt(path: string, error: unknown): Failure {
  if (error instanceof Failure) return error;
  const code = (error as NodeJS.ErrnoException | null)?.code;
  const words = (code !== undefined && SYSTEM_ERRORS[code]) || wordsOf(error);
  return new Failure(`${path}: ${words}`, { cause: error });
}

/** A fault of ours, met while working on the input called `name`. */
export function internalFailure(name: string, error: unknown): Failure {
  if (error instanceof Failure) return error;
  return new Failure(`${name}: internal error: ${wordsOf(error)} (TOMBOLO_DEBUG=1 shows where)`, { cause: error });
}

/** What went wrong, as it is kept for machines and as it is said; plain data, where an error would lose its class. */
export interface FailureLines {
  readonly words: string;
  readonly line: string;
}

export function failureLines(error: unknown, debug = process.env.TOMBOLO_DEBUG === '1'): FailureLines {
  const words = describeError(error, false).replace(/^tombolo: /, '');
  return { words, line: describeError(error, debug) };
}

/** One line for stderr; with `debug` (TOMBOLO_DEBUG=1) the stack as well. */
export function describeError(error: unknown, debug: boolean): string {
  const stack = debug && error instanceof Error ? showable(`\n${error.stack ?? ''}${causeOf(error)}`) : '';
  if (error instanceof Failure) return `tombolo: ${oneLine(error.message)}${stack}`;
  return `${internalFailure('tombolo', error).message}${stack}`;
}

function causeOf(error: Error): string {
  return error.cause instanceof Error ? `\ncaused by ${error.cause.stack ?? ''}` : '';
}

function wordsOf(error: unknown): string {
  return oneLine(error instanceof Error ? error.message : String(error)) || 'unknown error';
}

/** What becomes of a drawing that a command has changed. */
import { relative, resolve, sep } from 'node:path';
import { createTwoFilesPatch, FILE_HEADERS_ONLY } from 'diff';
import type { Host } from '../host';
import type { LoadedReport } from './load-report';
import { encodeText } from './read-input';
import { replaceText } from './write-output';

export interface ResultOptions {
  /** Change the file itself. */
  readonly write?: boolean;
  /** Give a unified patch instead. */
  readonly diff?: boolean;
}

/** Where a changed drawing goes: into its file, as a patch, or to standard output. */
export async function writeResult(
  file: string,
  text: string,
  { name, input }: LoadedReport,
  options: ResultOptions,
  host: Host,
): Promise<void> {
  if (options.diff) {
    host.printText(text === input.text ? '' : unifiedPatch(name, input.text, text));
  } else if (!options.write) {
    host.printText(text, (whole) => encodeText(whole, input.encoding));
  } else {
    await replaceText(file, input.text, text, name);
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

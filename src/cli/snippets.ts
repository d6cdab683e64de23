/** Whether and how places are drawn in the text of `tombolo check`. */
import type { SnippetStyle } from '../format/snippet/snippet-text';

export interface TextCircumstances {
  /** Whether the text is read there as it is printed. */
  readonly isTerminal: boolean;
  readonly environment: Readonly<Record<string, string | undefined>>;
}

/** Of one file, on a terminal that nobody asked to draw all of them. */
const FEW = 4;

/** Characters that a place takes, with what stands before it. */
const LEAST_COLUMNS = 52;

/**
 * How many places of a file are drawn.
 * @param wanted `--snippets` or `--no-snippets`, if given
 * @param columns characters in a line of the terminal
 */
export function snippetsFor(
  wanted: boolean | undefined,
  { isTerminal, environment }: TextCircumstances,
  columns: number,
): number {
  if (wanted !== undefined) return wanted ? Number.MAX_SAFE_INTEGER : 0;
  return isTerminal && columns >= LEAST_COLUMNS && environment.TERM !== 'dumb' && !environment.CI ? FEW : 0;
}

/** Braille where the terminal says that it has more than ASCII. */
export function snippetStyleFor({ environment, isTerminal }: TextCircumstances, platform: string): SnippetStyle {
  const { LC_ALL, LC_CTYPE, LANG, TERM, WT_SESSION, TERM_PROGRAM } = environment;
  // A file is read by whoever opens it.
  if (!isTerminal) return 'braille';
  // The console of the Linux kernel has no font for it, nor has that of older Windows.
  if (TERM === 'linux' || TERM === 'dumb') return 'plain';
  if (platform === 'win32') return WT_SESSION || TERM_PROGRAM ? 'braille' : 'plain';
  return /utf-?8/i.test(LC_ALL || LC_CTYPE || LANG || '') ? 'braille' : 'plain';
}

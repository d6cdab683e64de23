/** What every output format takes and gives. */
import type { CheckedFile, SeverityCounts } from './checked-file';
import type { SnippetStyle } from './snippet/snippet-text';

/** How words are coloured, or not. */
export type Colours = Readonly<
  Record<'bold' | 'dim' | 'red' | 'yellow' | 'green' | 'blue' | 'gray', (words: string) => string>
>;

export interface FormatInput {
  /** What to print; with `--quiet` the errors alone. */
  readonly files: readonly CheckedFile[];
  /** Counts everything, also what is not printed. */
  readonly summary: SeverityCounts;
  readonly colours: Colours;
  readonly quiet: boolean;
  /** How places that are drawn small look in text; by default in braille. */
  readonly snippetStyle?: SnippetStyle;
  /** What could not be done, one line each. */
  readonly failures: readonly string[];
  /** How many findings the baseline let pass. */
  readonly passed: number;
  /** What relative paths start from, as a `file:` URL that ends with a slash; undefined where there are no folders. */
  readonly folder?: string;
  /** Whether a program's place, where one is known, is a finding's own in SARIF, and the drawing's is related. */
  readonly atGenerator?: boolean;
}

/** Gives the whole text for standard output, ending in a line end unless empty. */
export type Format = (input: FormatInput) => string;

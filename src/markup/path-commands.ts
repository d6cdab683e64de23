/** The commands of SVG path data, each with the place it was written at. */
import type { Span } from '../text/text';

/** One command with one set of parameters. Repeated sets without a letter give commands of their own. */
export interface PathCommand {
  /** The command that is meant: for the second pair after `m` this is `l`. */
  readonly letter: PathLetter;
  /** False where the letter was left out because it repeats. */
  readonly written: boolean;
  /** The parameters as numbers, in the order written; arc flags are 0 or 1. */
  readonly values: readonly number[];
  /** Where each parameter stands in the path data string. */
  readonly valueSpans: readonly Span[];
  /** From the letter (or the first parameter, where the letter is left out) to the end of the last parameter. */
  readonly span: Span;
}

export type PathLetter =
  | 'M'
  | 'L'
  | 'H'
  | 'V'
  | 'C'
  | 'S'
  | 'Q'
  | 'T'
  | 'A'
  | 'Z'
  | 'm'
  | 'l'
  | 'h'
  | 'v'
  | 'c'
  | 's'
  | 'q'
  | 't'
  | 'a'
  | 'z';

/** What was read of a path data string: all commands up to the first error (SVG 2, "Error handling in path data"). */
export interface PathData {
  readonly commands: readonly PathCommand[];
  readonly error: PathError | undefined;
}

export interface PathError {
  readonly message: string;
  /** The characters that could not be taken, in the path data string; never empty unless at the string's end. */
  readonly span: Span;
}

/** Stretches of a text by lines, as editors and reports name them. */
import { defined } from '../base/defined';
import type { TextPosition } from '../report/generator';
import type { Span } from '../text/text';

/** A stretch of text, by lines and by offsets, all zero-based in UTF-16 code units. */
export interface Range {
  readonly start: TextPosition;
  readonly end: TextPosition;
  readonly from: number;
  readonly to: number;
}

export type RangeOf = (span: Span) => Range;

/** Reads the text into lines once. */
export function rangesIn(text: string): RangeOf {
  const starts = lineStarts(text);
  const positionAt = (offset: number): TextPosition => {
    const line = lineOf(offset, starts);
    return { line, character: offset - defined(starts[line]) };
  };
  return ({ from, to }) => ({ start: positionAt(from), end: positionAt(to), from, to });
}

/** Lines end as editors end them: with a line feed, a carriage return, or both. */
function lineStarts(text: string): number[] {
  return [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map((end) => end.index + end[0].length)];
}

/** The last line that begins at the offset or before it. */
function lineOf(offset: number, starts: readonly number[]): number {
  let [low, high] = [0, starts.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (defined(starts[middle]) > offset) high = middle;
    else low = middle;
  }
  return low;
}

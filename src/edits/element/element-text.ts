/** The author's way of setting out elements. */
import type { Span } from '../../text/text';

/** The line end and blanks before an element, if it stands on a line of its own. */
export function indentBefore(text: string, from: number): string {
  return /(?:\r?\n)[ \t]*$/.exec(text.slice(0, from))?.[0] ?? '';
}

/** The span with the white space before it, for what is taken out. */
export function withBlankBefore(text: string, { from, to }: Span): Span {
  let start = from;
  while (start > 0 && /\s/.test(text[start - 1] ?? '')) start -= 1;
  return { from: start, to };
}

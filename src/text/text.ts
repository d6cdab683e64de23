/** Positions in text and edits to it. All offsets are UTF-16 code units, as in JavaScript strings and in the editor. */

/** A half-open stretch of text: `from` is the first code unit, `to` the one after the last. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Replaces `span` by `text`. An empty span inserts; an empty text deletes. */
export interface TextEdit {
  readonly span: Span;
  readonly text: string;
  /** Where in `text` whoever chose the edit goes on writing, in its first line. */
  readonly caret?: number;
}

/**
 * Applies edits that all refer to the unedited `text`.
 * @throws RangeError if two edits overlap or one lies outside the text.
 */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to);
  let result = '';
  let done = 0;
  for (const { span, text: replacement } of ordered) {
    if (span.from < done || span.to < span.from || span.to > text.length) {
      throw new RangeError(`Edit ${span.from}..${span.to} overlaps another or lies outside the text.`);
    }
    result += text.slice(done, span.from) + replacement;
    done = span.to;
  }
  return result + text.slice(done);
}

/** Edits of `tombolo.json` that leave all else of it as it is, its comments and its layout among it. */
import { type JSONPath, modify } from 'jsonc-parser';
import type { TextEdit } from '../text/text';

/** @param value undefined removes the key */
export function configEdits(text: string, path: JSONPath, value: unknown): TextEdit[] {
  const formattingOptions = { ...layoutOf(text), eol: text.includes('\r\n') ? '\r\n' : '\n' };
  return modify(text, path, value, { formattingOptions }).map(({ offset, length, content }) => ({
    span: { from: offset, to: offset + length },
    text: content,
  }));
}

/** As the text is laid out: by the white space before its first key that stands on a line of its own. */
function layoutOf(text: string): { readonly insertSpaces: boolean; readonly tabSize: number } {
  const before = /\n([ \t]+)"/.exec(text)?.[1] ?? '  ';
  return before.includes('\t') ? { insertSpaces: false, tabSize: 2 } : { insertSpaces: true, tabSize: before.length };
}

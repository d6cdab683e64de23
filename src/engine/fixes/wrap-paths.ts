/** Long path data on lines that an editor shows whole: only white space between commands changes. */
import { lengthOfLastLine, wrapPathData } from '../../edits/path/wrap';
import { allElements, attributeOf } from '../../markup/query';
import type { ElementNode, MarkupDocument } from '../../markup/tree';
import type { Fix } from '../../report/fix';
import type { TextEdit } from '../../text/text';

/** Columns, where nobody asks for another width. */
export const USUAL_WIDTH = 100;

/**
 * @param width the longest line, in UTF-16 code units
 * @param offset of a caret: only the path in whose tag it is; without it, every path of the document
 * @returns edits of the document, none where all lines are short enough
 */
export function wrapPaths(document: MarkupDocument, width = USUAL_WIDTH, offset?: number): TextEdit[] {
  const edits: TextEdit[] = [];
  for (const element of allElements(document)) {
    const { from, to } = element.startTag;
    if (element.localName !== 'path' || (offset !== undefined && (offset < from || offset >= to))) continue;
    edits.push(...wrapElement(document.text, element, width));
  }
  return edits;
}

/**
 * The path at a caret on shorter lines, as a change that can be offered. White space between commands means nothing, so
 * that nothing is left to prove.
 * @returns undefined where no path is there, or none of its lines is too long
 */
export function wrapChange(document: MarkupDocument, offset: number): Fix | undefined {
  const edits = wrapPaths(document, USUAL_WIDTH, offset);
  if (edits.length === 0) return undefined;
  const title = `Wrap this path at ${USUAL_WIDTH} columns`;
  return { kind: 'wrap-path', title, scope: 'place', preferred: false, safe: true, edits, brings: [] };
}

function wrapElement(text: string, element: ElementNode, width: number): TextEdit[] {
  const attribute = attributeOf(element, 'd');
  if (!attribute) return [];
  const { from, to } = attribute.valueSpan;
  const data = text.slice(from, to);
  // In data with character references, places in the text and in the data differ.
  if (data.includes('&')) return [];
  const lineStart = from - lengthOfLastLine(text.slice(0, from), 0);
  const column = from - lineStart;
  const own = /^[ \t]*/.exec(text.slice(lineStart))?.[0] ?? '';
  // Under the first command, unless that leaves less than half of the line.
  const indent = column <= width / 2 ? own + ' '.repeat(column - own.length) : own + (own.includes('\t') ? '\t' : '  ');
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  return wrapPathData(data, { width, column, lineBreak: lineEnd + indent }).map((edit) => ({
    span: { from: from + edit.span.from, to: from + edit.span.to },
    text: edit.text,
  }));
}

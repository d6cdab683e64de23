/** How the author of a file writes numbers, read from the path data at its beginning. */
import { parsePathData } from '../../markup/path-data';
import { allElements, attributeOf } from '../../markup/query';
import type { MarkupDocument } from '../../markup/tree';
import { type NumberStyle, PLAIN_STYLE, readStyle } from '../path/path-style';

/** UTF-16 code units: so much path data shows how its author writes. */
const ENOUGH = 4000;

/** What no path tells is as in path data of our own. */
export function numbersOf(document: MarkupDocument): NumberStyle {
  const data = sampleOf(document);
  const { leadingZero, tightSigns, tightPoints, tightFlags } = readStyle(
    data,
    parsePathData(data).commands,
    PLAIN_STYLE,
  );
  return { leadingZero, tightSigns, tightPoints, tightFlags };
}

/** Path data after path data is path data. */
function sampleOf(document: MarkupDocument): string {
  let data = '';
  for (const element of allElements(document)) {
    const own = element.localName === 'path' ? attributeOf(element, 'd')?.value.slice(0, ENOUGH) : undefined;
    if (own) data += `${own.slice(0, wholeCommands(own))} `;
    if (data.length >= ENOUGH) break;
  }
  return data;
}

function wholeCommands(data: string): number {
  return parsePathData(data).commands.at(-1)?.span.to ?? 0;
}

/** The style sheets that a document carries. */

import { attributeOf } from '../../markup/query';
import type { ElementNode, MarkupDocument } from '../../markup/tree';
import { OUTSIDE_STYLES } from '../messages';
import type { Problems } from '../problems';
import { appliesToScreen, parseStyleSheet, type StyleSheet } from './declarations';

/** Reads `style` elements; style sheets outside the document are reported, never fetched. */
export function readStyleSheets(
  document: MarkupDocument,
  styleElements: readonly ElementNode[],
  problems: Problems,
): readonly StyleSheet[] {
  for (const node of document.children) {
    if (node.kind === 'instruction' && /^(<\?)?xml-stylesheet\b/.test(node.value.trim())) {
      problems.add('unsupported', 'warning', OUTSIDE_STYLES, node.span);
    }
  }
  const sheets: StyleSheet[] = [];
  for (const element of styleElements) {
    const type = attributeOf(element, 'type')?.value.trim().toLowerCase() ?? '';
    if (type !== '' && type !== 'text/css') continue;
    if (!appliesToScreen(attributeOf(element, 'media')?.value ?? '')) continue;
    const sheet = parseStyleSheet(textOf(element));
    for (const note of sheet.notes) problems.add('unsupported', 'warning', { message: note }, element.startTag);
    sheets.push(sheet);
  }
  return sheets;
}

function textOf(element: ElementNode): string {
  let text = '';
  for (const child of element.children) {
    if (child.kind === 'text' || child.kind === 'cdata') text += child.value;
  }
  return text;
}

/** Writes trees down in one line, for tests. */
import { parseMarkup } from '../../src/markup/parse';
import type { MarkupDocument, MarkupNode } from '../../src/markup/tree';

/** `svg[x="1"](path, "text")`; a `!` marks an element that has neither an end tag nor `/>`. */
export function shown(text: string): string {
  return parseMarkup(text).children.map(shownNode).join(' ');
}

function shownNode(node: MarkupNode): string {
  if (node.kind !== 'element') return `${node.kind} ${JSON.stringify(node.value)}`;
  const attributes = node.attributes.map(({ name, value }) => `${name}=${JSON.stringify(value)}`).join(' ');
  const children = node.children.map(shownNode).join(', ');
  const open = node.endTag === undefined && !node.selfClosing ? '!' : '';
  return node.name + open + (attributes && `[${attributes}]`) + (children && `(${children})`);
}

/** The underlined text and the sentence of each problem. */
export function problemsOf(text: string): string[] {
  const document = parseMarkup(text);
  return document.problems.map(({ span, message }) => `${text.slice(span.from, span.to)} | ${message}`);
}

export function underlinedIn(document: MarkupDocument): string[] {
  return document.problems.map(({ span }) => document.text.slice(span.from, span.to));
}

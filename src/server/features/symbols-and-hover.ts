/** The outline of a document and what it says where the pointer rests, in the form that the editor shows. */
import { type DocumentSymbol, type Hover, MarkupKind, SymbolKind } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { formatSides } from '../../config/length';
import { describeShapeAt, type OutlineItem, outlineOf, type ShapeDescription } from '../../engine/index';
import type { CheckedDocument } from '../documents/checked-document';
import { rangeOf } from '../documents/diagnostics';

const KINDS: Readonly<Record<OutlineItem['kind'], SymbolKind>> = {
  layer: SymbolKind.Class,
  opening: SymbolKind.Field,
  sheet: SymbolKind.Object,
  island: SymbolKind.Event,
  more: SymbolKind.Null,
};

export function documentSymbols({ document, report }: CheckedDocument): DocumentSymbol[] {
  return outlineOf(report).map((item) => symbolOf(item, document));
}

function symbolOf(item: OutlineItem, document: TextDocument): DocumentSymbol {
  const { kind, name, detail, span, selection, children } = item;
  return {
    name,
    detail,
    kind: KINDS[kind],
    range: rangeOf(span, document),
    selectionRange: rangeOf(selection, document),
    children: children.map((child) => symbolOf(child, document)),
  };
}

export function hoverAt({ document, report }: CheckedDocument, offset: number): Hover | undefined {
  const shape = describeShapeAt(report, offset);
  if (!shape) return undefined;
  return { contents: { kind: MarkupKind.Markdown, value: textOf(shape) }, range: rangeOf(shape.span, document) };
}

function textOf({ name, id, times, width, height, area, cutLength, layers }: ShapeDescription): string {
  const title = `**${escaped(id === undefined ? name : `${name} ${id}`)}**${times > 1 ? `, drawn ${times} times` : ''}`;
  const size = formatSides(width, height, 2);
  const measures = `${size} · ${area.toFixed(2)} mm² · ${cutLength.toFixed(2)} mm of cut`;
  const stands = layers.map((layer) => `layer ${escaped(layer.name)}, paint ${layer.paint}, read as ${layer.reading}`);
  return [title, measures, ...(stands.length > 0 ? stands : ['in no layer of the stack'])].join('  \n');
}

/** The artist's words as they are: none of them is Markdown. */
function escaped(text: string): string {
  return text.replace(/[\\`*_{}[\]()#+\-.!|<>&~]/g, '\\$&').replace(/\s+/g, ' ');
}

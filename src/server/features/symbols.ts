/** The outline of a document in the form that the editor shows. */
import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { OutlineItem } from '../../engine/index';
import { oneLine } from '../../text/plain-text';
import type { KnownDocument } from '../documents/known-document';

const KINDS: Readonly<Record<OutlineItem['kind'], SymbolKind>> = {
  layer: SymbolKind.Class,
  opening: SymbolKind.Field,
  sheet: SymbolKind.Object,
  island: SymbolKind.Event,
  more: SymbolKind.Null,
};

/** @param live the text as it stands now */
export function documentSymbols(known: KnownDocument, live: TextDocument): DocumentSymbol[] {
  return known.facts.outline.map((item) => symbolOf(item, known, live));
}

function symbolOf(item: OutlineItem, known: KnownDocument, live: TextDocument): DocumentSymbol {
  const { kind, name, detail, span, selection, children } = item;
  return {
    name: oneLine(name) || kind,
    detail: oneLine(detail),
    kind: KINDS[kind],
    range: known.rangeIn(live, span),
    selectionRange: known.rangeIn(live, selection),
    children: children.map((child) => symbolOf(child, known, live)),
  };
}

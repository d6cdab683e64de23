/** The outline of a document and what it says where the pointer rests, in the form that the editor shows. */
import { type DocumentSymbol, type Hover, MarkupKind, SymbolKind } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { formatSides } from '../../config/length';
import { describeShapeAt, type OutlineItem, outlineOf, type ShapeDescription } from '../../engine/index';
import type { Span } from '../../text/text';
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

/** The shape there; and of the findings there, why fixes that were tried by now cannot be had. */
export function hoverAt(checked: CheckedDocument, offset: number): Hover | undefined {
  const { document, report } = checked;
  const shape = describeShapeAt(report, offset);
  const refused = refusalsAt(checked, offset);
  const span = shape?.span ?? refused[0]?.span;
  if (!span) return undefined;
  const texts = [...(shape ? [textOf(shape)] : []), ...refused.map(({ text }) => text)];
  return { contents: { kind: MarkupKind.Markdown, value: texts.join('\n\n') }, range: rangeOf(span, document) };
}

/** A hover proves nothing: it tells what is known. */
function refusalsAt(checked: CheckedDocument, offset: number): { readonly span: Span; readonly text: string }[] {
  return checked.report.findings.flatMap(({ check, span }, index) => {
    const refusals = span.from <= offset && offset <= span.to ? (checked.knownFixes(index)?.refusals ?? []) : [];
    if (refusals.length === 0) return [];
    const lines = refusals.map(({ title, refused }) => `- ${escaped(title)}: ${escaped(refused)}`);
    return [{ span, text: [`Not offered for ${escaped(check)}:`, ...lines].join('\n') }];
  });
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

/** What a file consists of: its layers, and in each the openings and the pieces of the sheet, with their measures. */
import { contourSpan, layerSpan, type Traced } from '../../checks/places';
import { count, formatSides } from '../../config/values';
import type { Polygon } from '../../geometry/base/polygon-types';
import { areaOf, boxOfPolygon, perimeterOf } from '../../geometry/boolean/index';
import type { Report } from '../../report/report';
import { sourcesOf } from '../../sheet/source-index';
import type { Piece, Sheet } from '../../sheet/types';
import type { Span } from '../../text/text';

export interface OutlineItem {
  readonly kind: 'layer' | 'opening' | 'sheet' | 'island' | 'more';
  readonly name: string;
  /** The measures, in mm at stated scale. */
  readonly detail: string;
  /** All that belongs to it; holds `selection`. */
  readonly span: Span;
  /** The text to go to. */
  readonly selection: Span;
  readonly children: readonly OutlineItem[];
}

/** A longer list helps nobody, and looking up the text of each takes time. */
const MAX_ITEMS = 500;

/** Layers in painting order; in each the sheet itself, its islands, and its openings from top to bottom. */
export function outlineOf({ drawing, sheets }: Report): OutlineItem[] {
  const traced: Traced = { drawing, sources: sourcesOf };
  return sheets.map((sheet) => layerItem(traced, sheet));
}

function layerItem(traced: Traced, sheet: Sheet): OutlineItem {
  const { layer, openings, pieces, cutLength } = sheet;
  const selection = layerSpan(traced, sheet);
  const islands = pieces.filter(({ island }) => island);
  const fallen = islands.length > 0 ? [count(islands.length, 'island')] : [];
  const counts = [count(openings.length, 'opening'), ...fallen];
  return {
    kind: 'layer',
    name: layer.name || 'layer',
    detail: `${counts.join(', ')}, ${millimetres(cutLength)} of cut`,
    span: layer.element?.span ?? traced.drawing.document.root?.span ?? selection,
    selection,
    children: [
      ...pieces.filter(({ island }) => !island).map((piece) => pieceItem(piece, selection)),
      ...listed(islands, (piece) => pieceItem(piece, contourSpan(traced, sheet, piece.polygon.outer)), selection),
      ...listed(sortTopDown(openings), (opening) => openingItem(traced, sheet, opening), selection),
    ],
  };
}

function listed<T>(parts: readonly T[], itemOf: (part: T) => OutlineItem, place: Span): OutlineItem[] {
  const items = parts.slice(0, MAX_ITEMS).map(itemOf);
  if (parts.length <= MAX_ITEMS) return items;
  const left = { name: `${parts.length - MAX_ITEMS} more`, detail: '', span: place, selection: place };
  return [...items, { kind: 'more', ...left, children: [] }];
}

function pieceItem({ polygon, area, island }: Piece, span: Span): OutlineItem {
  const detail = `${squareMillimetres(area)}${island ? ', falls out' : ''}`;
  return {
    kind: island ? 'island' : 'sheet',
    name: `${island ? 'Island' : 'Sheet'} ${sizeOf(polygon)}`,
    detail,
    span,
    selection: span,
    children: [],
  };
}

function openingItem(traced: Traced, sheet: Sheet, opening: Polygon): OutlineItem {
  const span = contourSpan(traced, sheet, opening.outer);
  const measures = [squareMillimetres(areaOf(opening)), `${millimetres(perimeterOf(opening))} of cut`];
  const detail = measures.join(', ');
  return { kind: 'opening', name: `Opening ${sizeOf(opening)}`, detail, span, selection: span, children: [] };
}

function sortTopDown(openings: readonly Polygon[]): Polygon[] {
  const placed = openings.map((opening) => ({ opening, box: boxOfPolygon(opening) }));
  return placed.sort((a, b) => a.box.minY - b.box.minY || a.box.minX - b.box.minX).map(({ opening }) => opening);
}

function sizeOf(polygon: Polygon): string {
  const { minX, minY, maxX, maxY } = boxOfPolygon(polygon);
  return formatSides(maxX - minX, maxY - minY, 1);
}

const millimetres = (length: number): string => `${length.toFixed(1)} mm`;
const squareMillimetres = (area: number): string => `${area.toFixed(1)} mm²`;

/** Widens the lines that bound a thin part of an opening, by the width that is stated for them. */
import type { Shape } from '../../drawing/types';
import { maxScale, meanScale, minScale } from '../../geometry/base/matrix';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { sourcesOf } from '../../sheet/source-index';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { withDeclarations } from '../element/element-text';
import { formatNumber } from '../path/path-style';
import { decimalsFor } from '../path/precision';
import { GivingBoundary } from './give-way';

/** Where a line's width is written: rules of style sheets win over attributes, declarations of its own over both. */
export type WidthPlace = 'attribute' | 'style';

export interface WidenedStrokes {
  readonly edits: readonly TextEdit[];
  readonly strokes: readonly Shape[];
}

/** @param width mm, as drawn @returns undefined where no line bounds it that could be wider */
export function widenStrokes(
  sheet: Sheet,
  part: ThinPlace,
  width: number,
  place: WidthPlace,
): WidenedStrokes | undefined {
  if (sheet.layer.reading !== 'openings') return undefined;
  const boundary = new GivingBoundary(sheet, part, width);
  const sources = sourcesOf(sheet);
  const bounding = new Set(boundary.thinnest.map(({ place: { at } }) => sources.at(at)?.shape));
  const strokes = [...bounding].filter((shape) => shape?.part === 'stroke') as Shape[];
  if (strokes.some(({ toMm }) => maxScale(toMm) > 1.001 * minScale(toMm))) return undefined;
  const lacks = width - part.drawnWidth;
  const edits = strokes.flatMap(({ element, toMm, strokeWidth = 0 }) => {
    const wanted =
      strokeWidth < width - DRAWN_ALIKE / 2
        ? Math.max(width, Math.min(width, strokeWidth + lacks))
        : strokeWidth + lacks;
    const unit = meanScale(toMm);
    const decimals = decimalsFor(unit);
    const value = Math.ceil((wanted / unit) * 10 ** decimals - 1e-6) / 10 ** decimals;
    return [strokeWidthEdit(element, value, decimals, place)];
  });
  return edits.length > 0 ? { edits, strokes } : undefined;
}

const OWN_WIDTH = /(stroke-width\s*:\s*)([^;]+)/;

function strokeWidthEdit(element: ElementNode, value: number, decimals: number, place: WidthPlace): TextEdit {
  const text = formatNumber(value, decimals);
  const style = attributeOf(element, 'style');
  const declared = style && OWN_WIDTH.exec(style.value);
  if (style && declared) {
    const from = style.valueSpan.from + declared.index + (declared[1]?.length ?? 0);
    return { span: { from, to: from + (declared[2]?.length ?? 0) }, text };
  }
  if (place === 'style') return withDeclarations(element, `stroke-width:${text}`);
  const attribute = attributeOf(element, 'stroke-width');
  if (attribute) return { span: attribute.valueSpan, text };
  const at = element.nameSpan.to;
  return { span: { from: at, to: at }, text: ` stroke-width="${text}"` };
}

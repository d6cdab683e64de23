/** The text that belongs to places between two layers of a stack, whichever files they are in. */
import type { Point } from '../geometry/base/curve-types';
import { boxesTouch, growBox } from '../geometry/base/ring';
import { NEAR_EDGE } from '../geometry/base/tolerances';
import { boxOfPolygon } from '../geometry/boolean/index';
import { buildSegmentIndex, nearestSegment } from '../geometry/spatial/segment-index';
import type { Sheet } from '../sheet/types';
import type { StackLayer } from '../stack/stack';
import type { Span } from '../text/text';
import type { StackStencil } from './check';
import type { Related } from './finding';

/** mm beyond what the kerf moves an edge by. */
const BESIDE = NEAR_EDGE;

/**
 * The command that drew the edge of a layer's opening at a point of the edge as cut; else the layer's or file's tag.
 */
export function spanOnEdge(stencil: StackStencil, { sheet }: StackLayer, point: Point, facing?: Point): Span {
  const source = stencil.sources(sheet).at(drawnPlace(sheet, point), facing);
  return source?.span ?? layerTag(sheet);
}

/** The same as a related place, which says in which file it is if not in this one. */
export function relatedOnEdge(
  stencil: StackStencil,
  layer: StackLayer,
  at: Point,
  message: string,
  facing?: Point,
): Related {
  const file = layer.file === stencil.file ? {} : { file: layer.file };
  return { message, ...file, span: spanOnEdge(stencil, layer, at, facing), at };
}

/** The name in the layer's start tag, else in the root's. */
export function layerTag({ layer, drawing }: Sheet): Span {
  const { root, text } = drawing.document;
  return layer.element?.nameSpan ?? root?.nameSpan ?? { from: 0, to: Math.min(1, text.length) };
}

/** The layers of this file, with their numbers in the stack. */
export function ownLayers(stencil: StackStencil): { readonly number: number; readonly layer: StackLayer }[] {
  return stencil.stack.layers
    .map((layer, number) => ({ number, layer }))
    .filter(({ layer }) => layer.file === stencil.file);
}

/** "rust", with quotation marks as in all messages, and in its full length: for details. */
export function quotedName({ sheet }: StackLayer): string {
  return `"${sheet.layer.name}"`;
}

/** A kerf sets the edge as cut beside the edge as drawn. */
function drawnPlace({ openings, kerf }: Sheet, point: Point): Point {
  if (kerf === 0) return point;
  const reach = kerf + BESIDE;
  const around = growBox({ minX: point.x, minY: point.y, maxX: point.x, maxY: point.y }, reach);
  const near = openings.filter((polygon) => boxesTouch(boxOfPolygon(polygon), around));
  return nearestSegment(buildSegmentIndex(near), point, reach)?.point ?? point;
}

/** Removes from the text the one outline that forms an opening or an island. */
import type { Drawing, Shape, Subpath } from '../../drawing/types';
import type { Box, Ring } from '../../geometry/base/polygon-types';
import { boxOfRing, signedArea } from '../../geometry/base/ring';
import { FLATTENING, NEAR_EDGE } from '../../geometry/base/tolerances';
import { flattenSubpath } from '../../geometry/curve/flatten';
import type { ElementNode } from '../../markup/tree';
import type { Sheet } from '../../sheet/types';
import type { Span, TextEdit } from '../../text/text';
import { elementGeometry } from '../element/element-geometry';
import type { EditResult } from '../element/result';
import { orderLoops } from '../path/loop-order';
import { pathSource, writeInstead } from '../path/path-source';

/** In mm: how far the boxes, and for each mm of outline the areas, of two outlines that are one may differ. */
const SAME_OUTLINE = NEAR_EDGE;
/**
 * @param ring the boundary of the opening or island, in sheet mm
 * @param inset mm by which the ring runs inside the drawn outline
 */
export function removeOutline(sheet: Sheet, ring: Ring, inset: number): EditResult {
  const found = sheet.layer.shapes.flatMap((shape) =>
    matching(shape, ring, inset).map((subpath) => ({ shape, subpath })),
  );
  const [only] = found;
  if (!only || found.length > 1) return { refusal: 'It is made by more than one outline; change the drawing by hand.' };
  const { shape, subpath } = only;
  const { drawing } = sheet;
  if (drawing.shapes.some((other) => other.element === shape.element && other !== shape)) {
    return { refusal: `The <${shape.element.name}> that makes it is painted more than once.` };
  }
  const alone = shape.subpaths.length === 1;
  const edits = alone ? removeElement(drawing, shape.element) : removeSubpath(drawing, shape, subpath);
  return edits ? { edits } : { refusal: 'Its outline could not be found in the text.' };
}

function matching({ subpaths, part }: Shape, ring: Ring, inset: number): number[] {
  if (part === 'stroke') return [];
  return subpaths.flatMap((subpath, index) => (isOutline(subpath, ring, inset) ? [index] : []));
}

function isOutline({ curves }: Subpath, ring: Ring, inset: number): boolean {
  const other = flattenSubpath(curves, FLATTENING);
  const [a, b] = [boxOfRing(other), boxOfRing(ring)];
  const around = 2 * (b.maxX - b.minX + b.maxY - b.minY);
  const more = Math.abs(signedArea(other)) - Math.abs(signedArea(ring)) - inset * around;
  return boxesAgree(a, b, inset) && Math.abs(more) < (SAME_OUTLINE + inset) * around;
}

function boxesAgree(outer: Box, inner: Box, inset: number): boolean {
  const gaps = [inner.minX - outer.minX, inner.minY - outer.minY, outer.maxX - inner.maxX, outer.maxY - inner.maxY];
  return gaps.every((gap) => Math.abs(gap - inset) < SAME_OUTLINE);
}

/** With the blanks before it on its line, and the line's end if nothing else is on it. */
export function removeElement({ document }: Drawing, { span }: ElementNode): TextEdit[] {
  const before = /(?:\r?\n)?[ \t]*$/.exec(document.text.slice(0, span.from))?.[0].length ?? 0;
  const alone = /^[ \t]*(?:\r?\n|<\/)/.test(document.text.slice(span.to, span.to + 200));
  const removed: Span = { from: alone ? span.from - before : span.from, to: span.to };
  return [{ span: removed, text: '' }];
}

function removeSubpath({ document }: Drawing, shape: Shape, subpath: number): readonly TextEdit[] | undefined {
  const geometry = elementGeometry(document, shape, shape.subpaths, 0);
  if (typeof geometry === 'string') return undefined;
  const source = pathSource(geometry.data, { decimals: 0, numbers: geometry.numbers }, true);
  const { paths } = source;
  if (paths.length !== shape.subpaths.length) return undefined;
  const others = paths.flatMap((_, index) => (index === subpath ? [] : [index]));
  return geometry.editsFor(writeInstead(source, orderLoops([], others, paths)));
}

/** Takes strips out of what one element paints. */
import type { Shape } from '../../drawing/types';
import type { Matrix } from '../../geometry/base/curve-types';
import { memoizeByIdentity } from '../../geometry/base/derived-facts';
import { IDENTITY, invert, maxScale, meanScale, minScale } from '../../geometry/base/matrix';
import { intersection } from '../../geometry/boolean/index';
import type { ElementNode, MarkupDocument } from '../../markup/tree';
import { shapeRegion } from '../../sheet/layer/shape-region';
import { elementGeometry } from '../element/element-geometry';
import type { EditResult } from '../element/result';
import { decimalsFor } from '../path/precision';
import { cutPathData } from '../path/subtract-strips';
import { polygonOf, type Strip, transformStrip, widenStrip } from '../strip/strip';
import { cutLineData } from './cut-line-data';

/** An element with the strips that come near any of its parts. */
export interface CrossedElement {
  readonly element: ElementNode;
  readonly parts: readonly Shape[];
  readonly strips: readonly Strip[];
}

type Cuts = Map<Shape, { readonly strips: string; readonly cut: EditResult }>;

/** What each element of a document was cut with last, by the first of its shapes. */
const lastCuts = memoizeByIdentity('cuts of elements', (_: MarkupDocument): Cuts => new Map());

/** Of a plan that is tried again with a few bridges less, most elements are crossed by the very same strips. */
export function cutElement(document: MarkupDocument, crossed: CrossedElement): EditResult {
  const known = lastCuts(document);
  const [first] = crossed.parts;
  const strips = JSON.stringify(crossed.strips);
  const last = first && known.get(first);
  const cut = last?.strips === strips ? last.cut : cutAnew(document, crossed);
  if (first) known.set(first, { strips, cut });
  return 'refusal' in cut ? { ...cut, strips: crossed.strips } : cut;
}

/** Dashes that are still there were not met. */
function cutAnew(document: MarkupDocument, { parts, strips }: CrossedElement): EditResult {
  const { fill, stroke } = painted(parts);
  if (stroke?.dashed) return { edits: [] };
  if (fill) return cutFill(document, fill, strips, stroke?.strokeWidth);
  return stroke ? cutStroke(document, stroke, strips) : { edits: [] };
}

/** What an element paints; the fill of an open line that encloses nothing is none. */
export function painted(parts: readonly Shape[]): { fill: Shape | undefined; stroke: Shape | undefined } {
  const fill = parts.find((shape) => shape.part === 'fill');
  const stroke = parts.find((shape) => shape.part === 'stroke');
  const flat = fill && stroke && fill.subpaths.some(({ closed }) => !closed) && shapeRegion(fill).length === 0;
  return { fill: flat ? undefined : fill, stroke };
}

/** Whether lines keep one width all along: no direction is stretched more than another. */
function isEvenOdd(matrix: Matrix): boolean {
  return maxScale(matrix) <= minScale(matrix) * 1.001;
}

/** A shape that comes near a strip but paints nothing there needs no edit. */
function refuseIfMet(shape: Shape, strips: readonly Strip[], refusal: string): EditResult {
  return strips.some((strip) => paintsIn(shape, strip)) ? { refusal } : { edits: [] };
}

/** @param line mm: the width of the line round it, which goes with it */
function cutFill(document: MarkupDocument, fill: Shape, strips: readonly Strip[], line = 0): EditResult {
  const toUser = invert(fill.toMm);
  if (!toUser) return { edits: [] };
  const decimals = decimalsFor(maxScale(fill.toMm));
  const geometry = elementGeometry(document, fill, fill.subpaths, decimals);
  if (typeof geometry === 'string') return refuseIfMet(fill, strips, geometry);
  // Lines have one width all round in user units, however the transform stretches them.
  const own = strips.map((strip) => widenStrip(transformStrip(strip, toUser), line / meanScale(fill.toMm)));
  const edits = cutPathData(geometry.data, {
    strips: own,
    fillRule: fill.fillRule,
    decimals,
    numbers: geometry.numbers,
    lined: line > 0,
    rounding: { toMm: fill.toMm, fillets: strips.flatMap(({ fillets = [] }) => fillets), line },
  });
  return edits
    ? { edits: geometry.editsFor(edits) }
    : refuseIfMet(fill, strips, `An outline of this <${fill.element.name}> runs along the bridge's edge.`);
}

function cutStroke(document: MarkupDocument, stroke: Shape, strips: readonly Strip[]): EditResult {
  const { toMm, strokeWidth = 0, strokeCap: cap = 'butt', miterLimit = 1, centreline = [] } = stroke;
  const toUser = invert(toMm);
  if (!toUser) return { edits: [] };
  const decimals = decimalsFor(maxScale(toMm));
  const geometry = elementGeometry(document, stroke, centreline, decimals);
  if (typeof geometry === 'string') return refuseIfMet(stroke, strips, geometry);
  const frame = isEvenOdd(toMm)
    ? { strips, toFrame: toMm, width: strokeWidth }
    : {
        strips: strips.map((strip) => transformStrip(strip, toUser)),
        toFrame: IDENTITY,
        width: strokeWidth / meanScale(toMm),
      };
  const line = { ...frame, cap, miterLimit };
  const edits = cutLineData(geometry.data, { ...line, decimals, numbers: geometry.numbers, lined: true });
  return edits
    ? { edits: geometry.editsFor(edits) }
    : refuseIfMet(stroke, strips, `The line of this <${stroke.element.name}> runs along the bridge, not across it.`);
}

export function paintsIn(shape: Shape, strip: Strip): boolean {
  return intersection(shapeRegion(shape), [polygonOf(strip)]).length > 0;
}

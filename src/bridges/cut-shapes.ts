/** Takes strips out of what shapes paint, element by element. */
import type { Drawing, Shape } from '../drawing/drawing';
import { readDrawing } from '../drawing/read-drawing';
import type { Matrix } from '../geometry/curve';
import { invert, maxScale, minScale } from '../geometry/matrix';
import { intersection } from '../geometry/polygons';
import { parseMarkup } from '../markup/parse';
import type { ElementNode, MarkupDocument } from '../markup/tree';
import { shapeRegion } from '../sheet/shape-region';
import { applyEdits, type TextEdit } from '../text';
import { composeEdits } from './compose-edits';
import { cutLineData } from './cut-line-data';
import { cutPathData } from './cut-path-data';
import { decimalsFor } from './decimals';
import { detachUse } from './detach-use';
import { elementGeometry } from './element-geometry';
import { mergeOutcomes, type Outcome } from './outcome';
import { shapesNear } from './near-shapes';
import { polygonOf, transformStrip, widenStrip, type Strip } from './strip';

/** Uses within uses are taken apart one level at a time, down to so many. */
const DEEPEST = 8;

/**
 * Only those shapes are touched that a strip meets. Where such a shape is drawn through a `use`, and drawn elsewhere
 * too, the instance is made a copy of its own first.
 */
export function cutStripsFromShapes(
  drawing: Drawing, shapes: readonly Shape[], strips: readonly Strip[], depth = 0,
): Outcome {
  const near = shapesNear(shapes, strips);
  const groups = byElement([...near.keys()]);
  const all = byElement(drawing.shapes);
  const shared = [...groups].filter(([element]) => !isDrawnOnce(all.get(element) ?? []));
  const uses = shared.flatMap(([element, parts]) => usesToDetach(parts, all.get(element) ?? [], near));
  if (uses.length > 0) {
    return depth < DEEPEST ? cutDetached(drawing, shapes, strips, new Set(uses), depth) : { refusal: TOO_DEEP };
  }
  const own = [...groups].filter(([element]) => isDrawnOnce(all.get(element) ?? []));
  return mergeOutcomes(own.map(([element, parts]) => {
    const strokesToo = shapes.filter((shape) => shape.element === element);
    return cutElement(drawing.document, strokesToo, [...new Set(parts.flatMap((shape) => near.get(shape) ?? []))]);
  }));
}

const TOO_DEEP = 'What the bridge crosses is drawn through too many uses within uses.';

function byElement(shapes: readonly Shape[]): Map<ElementNode, Shape[]> {
  const groups = new Map<ElementNode, Shape[]>();
  for (const shape of shapes) {
    const group = groups.get(shape.element);
    if (group) group.push(shape);
    else groups.set(shape.element, [shape]);
  }
  return groups;
}

/** Fill and stroke of one element count as one drawing of it. */
function isDrawnOnce([first, ...others]: readonly Shape[]): boolean {
  return others.every(({ instances }) =>
    instances.length === first?.instances.length && instances.every((use, index) => use === first.instances[index]));
}

/**
 * The outermost uses through which an element's shapes are drawn where a strip meets them; all of its uses where the
 * element is met where it stands itself.
 */
function usesToDetach(
  parts: readonly Shape[], drawn: readonly Shape[], near: ReadonlyMap<Shape, Strip[]>,
): ElementNode[] {
  const met = parts.filter((shape) => (near.get(shape) ?? []).some((strip) => paintsIn(shape, strip)));
  const original = met.some(({ instances }) => instances.length === 0);
  return (original ? drawn : met).flatMap(({ instances: [outermost] }) => outermost ?? []);
}

function paintsIn(shape: Shape, strip: Strip): boolean {
  return intersection(shapeRegion(shape), [polygonOf(strip)]).length > 0;
}

/** The detached text is read again: it has the same shapes in the same order. */
function cutDetached(
  drawing: Drawing, shapes: readonly Shape[], strips: readonly Strip[], uses: ReadonlySet<ElementNode>, depth: number,
): Outcome {
  const { text } = drawing.document;
  const detached: TextEdit[] = [];
  for (const use of uses) {
    const edit = detachUse(drawing, use);
    if (typeof edit === 'string') return { refusal: edit };
    detached.push(edit);
  }
  const { width, height } = drawing;
  const again = readDrawing(parseMarkup(applyEdits(text, detached)), { width, height });
  if (again.shapes.length !== drawing.shapes.length) {
    return { refusal: 'A copy of what this <use> draws would look different.' };
  }
  const numbers = new Map(drawing.shapes.map((shape, number) => [shape, number]));
  const same = shapes.flatMap((shape) => again.shapes[numbers.get(shape) ?? -1] ?? []);
  const cut = cutStripsFromShapes(again, same, strips, depth + 1);
  return 'refusal' in cut ? cut : { edits: composeEdits(text, detached, cut.edits) };
}

/** @param strips those near any of its parts */
function cutElement(document: MarkupDocument, parts: readonly Shape[], strips: readonly Strip[]): Outcome {
  const { fill, stroke } = painted(parts);
  const refusal = stroke && reasonAgainst(stroke);
  if (refusal) return refuseIfMet(stroke, strips, refusal);
  if (!fill) return stroke ? cutStroke(document, stroke, strips) : { edits: [] };
  if (!stroke) return cutFill(document, fill, strips);
  if (!fill.subpaths.every(({ closed }) => closed)) {
    return { refusal: `This <${fill.element.name}> has a fill and an open line; close the line or part the two.` };
  }
  return cutFill(document, fill, strips.map((strip) => widenStrip(strip, stroke.strokeWidth ?? 0)));
}

/** What an element paints; the fill of an open line that encloses nothing is none. */
export function painted(parts: readonly Shape[]): { fill: Shape | undefined; stroke: Shape | undefined } {
  const fill = parts.find((shape) => shape.part === 'fill');
  const stroke = parts.find((shape) => shape.part === 'stroke');
  const flat = fill && stroke && fill.subpaths.some(({ closed }) => !closed) && shapeRegion(fill).length === 0;
  return { fill: flat ? undefined : fill, stroke };
}

function reasonAgainst({ element, dashed, toMm }: Shape): string | undefined {
  if (dashed) return `The dashes of this <${element.name}> would shift; turn them into shapes first.`;
  if (isEven(toMm)) return undefined;
  return `The line of this <${element.name}> is stretched by its transform; turn it into a shape first.`;
}

/** Whether lines keep one width all along: no direction is stretched more than another. */
function isEven(matrix: Matrix): boolean {
  return maxScale(matrix) <= minScale(matrix) * 1.001;
}

/** A shape that comes near a strip but paints nothing there needs no edit. */
function refuseIfMet(shape: Shape, strips: readonly Strip[], refusal: string): Outcome {
  return strips.some((strip) => paintsIn(shape, strip)) ? { refusal } : { edits: [] };
}

function cutFill(document: MarkupDocument, fill: Shape, strips: readonly Strip[]): Outcome {
  const toUser = invert(fill.toMm);
  if (!toUser) return { edits: [] };
  const decimals = decimalsFor(maxScale(fill.toMm));
  const geometry = elementGeometry(document, fill, fill.subpaths, decimals);
  if (typeof geometry === 'string') return refuseIfMet(fill, strips, geometry);
  const own = strips.map((strip) => transformStrip(strip, toUser));
  const edits = cutPathData(geometry.data, { strips: own, fillRule: fill.fillRule, decimals });
  return edits
    ? { edits: geometry.editsFor(edits) }
    : refuseIfMet(fill, strips, `An outline of this <${fill.element.name}> runs along the bridge's edge.`);
}

function cutStroke(document: MarkupDocument, stroke: Shape, strips: readonly Strip[]): Outcome {
  const decimals = decimalsFor(maxScale(stroke.toMm));
  const geometry = elementGeometry(document, stroke, stroke.centreline ?? [], decimals);
  if (typeof geometry === 'string') return refuseIfMet(stroke, strips, geometry);
  const { toMm, strokeWidth: width = 0, strokeCap: cap = 'butt' } = stroke;
  const edits = cutLineData(geometry.data, { strips, toMm, width, cap, decimals });
  return edits
    ? { edits: geometry.editsFor(edits) }
    : refuseIfMet(stroke, strips, `The line of this <${stroke.element.name}> runs along the bridge, not across it.`);
}

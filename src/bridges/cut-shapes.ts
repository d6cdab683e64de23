/** Takes strips out of what shapes paint, element by element. */
import type { Drawing, Shape } from '../drawing/drawing';
import { readDrawing } from '../drawing/read-drawing';
import type { Matrix } from '../geometry/curve';
import { boundsOf } from '../geometry/curves';
import { invert, maxScale, minScale } from '../geometry/matrix';
import { intersection } from '../geometry/polygons';
import { boxesTouch, joinBoxes } from '../geometry/rings';
import { parseMarkup } from '../markup/parse';
import type { ElementNode } from '../markup/tree';
import { shapeRegion } from '../sheet/shape-region';
import { applyEdits, type TextEdit } from '../text';
import { composeEdits } from './compose-edits';
import { cutLineData } from './cut-line-data';
import { cutPathData } from './cut-path-data';
import { decimalsFor } from './decimals';
import { detachUse } from './detach-use';
import { elementGeometry } from './element-geometry';
import { mergeOutcomes, type Outcome } from './outcome';
import { transformStrip, widenStrip, type Strip } from './strip';
import { boxOfCorners, polygonOf } from './strip-reach';

/** Uses within uses are taken apart one level at a time, down to so many. */
const DEEPEST = 8;

/**
 * Only those shapes are touched that a strip meets. Where such a shape is drawn through a `use`, and drawn elsewhere too,
 * the instance is made a copy of its own first.
 */
export function cutStripsFromShapes(
  drawing: Drawing, shapes: readonly Shape[], strips: readonly Strip[], depth = 0,
): Outcome {
  const uses = usesToDetach(drawing, shapes, strips);
  if (uses.length > 0) return depth < DEEPEST ? cutDetached(drawing, shapes, strips, uses, depth) : { refusal: TOO_DEEP };
  const outcomes: Outcome[] = [];
  for (const parts of byElement(shapes)) {
    if (isDrawnOnce(drawing, parts) && parts.some((shape) => strips.some((strip) => meets(shape, strip)))) {
      outcomes.push(cutElement(drawing, parts, strips));
    }
  }
  return mergeOutcomes(outcomes);
}

const TOO_DEEP = 'What the bridge crosses is drawn through too many uses within uses.';

/** The outermost uses through which shapes are drawn that must become shapes of their own. */
function usesToDetach(drawing: Drawing, shapes: readonly Shape[], strips: readonly Strip[]): ElementNode[] {
  const uses = new Set<ElementNode>();
  for (const parts of byElement(shapes)) {
    const drawn = drawing.shapes.filter((shape) => shape.element === parts[0]?.element);
    if (isDrawnOnce(drawing, parts)) continue;
    const met = parts.filter((shape) => strips.some((strip) => paintsIn(shape, strip)));
    const original = met.some(({ instances }) => instances.length === 0);
    for (const { instances: [outermost] } of original ? drawn : met) if (outermost) uses.add(outermost);
  }
  return [...uses];
}

/** The detached text is read again: it has the same shapes in the same order. */
function cutDetached(
  drawing: Drawing, shapes: readonly Shape[], strips: readonly Strip[], uses: readonly ElementNode[], depth: number,
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
  if (again.shapes.length !== drawing.shapes.length) return { refusal: 'A copy of what this <use> draws would look different.' };
  const same = shapes.flatMap((shape) => again.shapes[drawing.shapes.indexOf(shape)] ?? []);
  const cut = cutStripsFromShapes(again, same, strips, depth + 1);
  return 'refusal' in cut ? cut : { edits: composeEdits(text, detached, cut.edits) };
}

function byElement(shapes: readonly Shape[]): Shape[][] {
  const groups = new Map<ElementNode, Shape[]>();
  for (const shape of shapes) groups.set(shape.element, [...(groups.get(shape.element) ?? []), shape]);
  return [...groups.values()];
}

/** Fill and stroke of one element count as one drawing of it. */
function isDrawnOnce(drawing: Drawing, parts: readonly Shape[]): boolean {
  const [first] = parts;
  return drawing.shapes.every((shape) => shape.element !== first?.element || sameInstance(shape, first));
}

function sameInstance(a: Shape, b: Shape): boolean {
  return a.instances.length === b.instances.length && a.instances.every((use, index) => use === b.instances[index]);
}

function paintsIn(shape: Shape, strip: Strip): boolean {
  return meets(shape, strip) && intersection(shapeRegion(shape), [polygonOf(strip)]).length > 0;
}

/** Whether the boxes of a shape and a strip touch. */
export function meets({ subpaths }: Shape, { corners }: Strip): boolean {
  const box = boxOfCorners(corners);
  return boxesTouch(joinBoxes(subpaths.flatMap(({ curves }) => curves.map(boundsOf))), box);
}

function cutElement(drawing: Drawing, parts: readonly Shape[], strips: readonly Strip[]): Outcome {
  const { text } = drawing.document;
  const fill = parts.find((shape) => shape.part === 'fill');
  const stroke = parts.find((shape) => shape.part === 'stroke');
  if (stroke?.dashed) return { refusal: `The dashes of this <${stroke.element.name}> would shift; turn them into shapes first.` };
  if (stroke && !isEven(stroke.toMm)) {
    return { refusal: `The line of this <${stroke.element.name}> is stretched by its transform; turn it into a shape first.` };
  }
  if (!fill) return stroke ? cutStroke(text, stroke, strips) : { edits: [] };
  if (!stroke) return cutFill(text, fill, strips);
  if (!fill.subpaths.every(({ closed }) => closed)) {
    return { refusal: `This <${fill.element.name}> has a fill and an open line round it; close the line or part the two.` };
  }
  return cutFill(text, fill, strips.map((strip) => widenStrip(strip, stroke.strokeWidth ?? 0)));
}

/** Whether lines keep one width all along: no direction is stretched more than another. */
function isEven(matrix: Matrix): boolean {
  return maxScale(matrix) <= minScale(matrix) * 1.001;
}

function cutFill(text: string, fill: Shape, strips: readonly Strip[]): Outcome {
  const toUser = invert(fill.toMm);
  if (!toUser) return { refusal: 'This shape is flattened to nothing by its transform.' };
  const decimals = decimalsFor(maxScale(fill.toMm));
  const geometry = elementGeometry(text, fill, fill.subpaths, decimals);
  if (typeof geometry === 'string') return { refusal: geometry };
  const own = strips.filter((strip) => meets(fill, strip)).map((strip) => transformStrip(strip, toUser));
  const edits = cutPathData(geometry.data, { strips: own, fillRule: fill.fillRule, decimals });
  if (!edits) return { refusal: `An outline of this <${fill.element.name}> runs along the bridge's edge.` };
  return { edits: geometry.editsFor(edits, applyEdits) };
}

function cutStroke(text: string, stroke: Shape, strips: readonly Strip[]): Outcome {
  const decimals = decimalsFor(maxScale(stroke.toMm));
  const geometry = elementGeometry(text, stroke, stroke.centreline ?? [], decimals);
  if (typeof geometry === 'string') return { refusal: geometry };
  const { toMm, strokeWidth: width = 0, strokeCap: cap = 'butt' } = stroke;
  const own = strips.filter((strip) => meets(stroke, strip));
  const edits = cutLineData(geometry.data, { strips: own, toMm, width, cap, decimals });
  if (!edits) return { refusal: `The line of this <${stroke.element.name}> runs along the bridge, not across it.` };
  return { edits: geometry.editsFor(edits, applyEdits) };
}

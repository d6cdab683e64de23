/** Takes strips out of what shapes paint, element by element. */
import type { Drawing, Shape } from '../drawing/drawing';
import type { Matrix } from '../geometry/curve';
import { boundsOf } from '../geometry/curves';
import { invert, maxScale, minScale } from '../geometry/matrix';
import { boxesTouch, joinBoxes } from '../geometry/rings';
import type { ElementNode } from '../markup/tree';
import { applyEdits } from '../text';
import { cutLineData } from './cut-line-data';
import { cutPathData } from './cut-path-data';
import { decimalsFor } from './decimals';
import { elementGeometry } from './element-geometry';
import { mergeOutcomes, type Outcome } from './outcome';
import { transformStrip, widenStrip, type Strip } from './strip';
import { boxOfCorners } from './strip-reach';

/** Only those shapes are touched that a strip meets. */
export function cutStripsFromShapes(drawing: Drawing, shapes: readonly Shape[], strips: readonly Strip[]): Outcome {
  const outcomes: Outcome[] = [];
  for (const [, parts] of byElement(shapes)) {
    const met = parts.flatMap((shape) => strips.filter((strip) => meets(shape, strip)));
    if (met.length > 0) outcomes.push(cutElement(drawing, parts, strips));
  }
  return mergeOutcomes(outcomes);
}

function byElement(shapes: readonly Shape[]): Map<ElementNode, Shape[]> {
  const groups = new Map<ElementNode, Shape[]>();
  for (const shape of shapes) groups.set(shape.element, [...(groups.get(shape.element) ?? []), shape]);
  return groups;
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

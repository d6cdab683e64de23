/** Takes strips out of what shapes paint, element by element. */

import { checkpoint } from '../../base/checkpoint';
import type { Drawing, Shape } from '../../drawing/types';
import type { ElementNode } from '../../markup/tree';
import type { TextEdit } from '../../text/text';
import { splitElement } from '../element/element-text';
import { type EditResult, mergeResults } from '../element/result';
import { inlineThenEdit, type NextStep, normalizeThenEdit } from '../element/two-step';
import { writeDashes } from '../element/write-dashes';
import { shapesNearStrips } from '../strip/shapes-near';
import type { Strip } from '../strip/strip';
import { type CrossedElement, cutElement, painted, paintsIn } from './cut-element';

/**
 * Only those shapes are touched that a strip meets. Where such a shape is drawn through a `use`, and drawn elsewhere
 * too, the instance is made a copy of its own first.
 */
export function cutStripsFromShapes(
  drawing: Drawing,
  shapes: readonly Shape[],
  strips: readonly Strip[],
  depth = 0,
): EditResult {
  const near = shapesNearStrips(shapes, strips);
  const groups = groupByElement([...near.keys()]);
  const all = groupByElement(drawing.shapes);
  const shared = [...groups].filter(([element]) => !isDrawnOnce(all.get(element) ?? []));
  const uses = shared.flatMap(([element, parts]) => usesToInline(parts, all.get(element) ?? [], near));
  const next: NextStep = (again, same, deeper) => cutStripsFromShapes(again, same, strips, deeper);
  if (uses.length > 0) return inlineThenEdit(drawing, shapes, new Set(uses), depth, next);
  const met = [...groups]
    .filter(([element]) => isDrawnOnce(all.get(element) ?? []))
    .map(
      ([element, parts]): CrossedElement => ({
        element,
        parts: shapesOf(shapes, element),
        strips: stripsNear(parts, near),
      }),
    );
  const mixed = met.filter(needsSplitting);
  if (mixed.length > 0) {
    const edits = mixed.map(({ element }) => splitElement(drawing.document.text, element));
    return normalizeThenEdit(drawing, shapes, edits, depth, next);
  }
  const dashed = met.flatMap(dashedLine);
  if (dashed.length > 0) return writeDashesFirst(drawing, shapes, dashed, depth, next);
  return mergeResults(met.map((each) => cutElement(drawing.document, each)));
}

function shapesOf(shapes: readonly Shape[], element: ElementNode): Shape[] {
  return shapes.filter((shape) => shape.element === element);
}

/** Those near any of an element's parts. */
function stripsNear(parts: readonly Shape[], near: ReadonlyMap<Shape, Strip[]>): Strip[] {
  return [...new Set(parts.flatMap((shape) => near.get(shape) ?? []))];
}

/**
 * A fill is cut with its whole rim, an open line from end to end, and dashes one by one: an element that has a fill and
 * one of these cannot be cut as one.
 */
function needsSplitting({ parts, strips }: CrossedElement): boolean {
  const { fill, stroke } = painted(parts);
  if (!fill || !stroke || (!stroke.dashed && fill.subpaths.every(({ closed }) => closed))) return false;
  return strips.some((strip) => paintsIn(fill, strip) || paintsIn(stroke, strip));
}

/** The line of the element, where it has dashes of which a strip takes something. */
function dashedLine({ parts, strips }: CrossedElement): Shape[] {
  const { stroke } = painted(parts);
  return stroke?.dashed && strips.some((strip) => paintsIn(stroke, strip)) ? [stroke] : [];
}

function writeDashesFirst(
  drawing: Drawing,
  shapes: readonly Shape[],
  dashed: readonly Shape[],
  depth: number,
  next: NextStep,
): EditResult {
  const edits: TextEdit[] = [];
  for (const stroke of dashed) {
    const written = writeDashes(drawing.document, stroke);
    if (typeof written === 'string') return { refusal: written };
    edits.push(...written);
  }
  const numbers = dashed.map((stroke) => shapes.indexOf(stroke));
  return normalizeThenEdit(drawing, shapes, edits, depth, (again, same, deeper) =>
    numbers.some((number) => same[number]?.dashed) ? { refusal: KEEPS_DASHES } : next(again, same, deeper),
  );
}

const KEEPS_DASHES = 'A style rule would dash the line anew that the bridge crosses; draw its dashes by hand first.';

function groupByElement(shapes: readonly Shape[]): Map<ElementNode, Shape[]> {
  const groups = new Map<ElementNode, Shape[]>();
  for (const shape of shapes) {
    checkpoint();
    const group = groups.get(shape.element);
    if (group) group.push(shape);
    else groups.set(shape.element, [shape]);
  }
  return groups;
}

/** Fill and stroke of one element count as one drawing of it. */
function isDrawnOnce([first, ...others]: readonly Shape[]): boolean {
  return others.every(
    ({ instances }) =>
      instances.length === first?.instances.length && instances.every((use, index) => use === first.instances[index]),
  );
}

/**
 * The outermost uses through which an element's shapes are drawn where a strip meets them; all of its uses where the
 * element is met where it stands itself.
 */
function usesToInline(
  parts: readonly Shape[],
  drawn: readonly Shape[],
  near: ReadonlyMap<Shape, Strip[]>,
): ElementNode[] {
  const met = parts.filter((shape) => (near.get(shape) ?? []).some((strip) => paintsIn(shape, strip)));
  const original = met.some(({ instances }) => instances.length === 0);
  return (original ? drawn : met).flatMap(({ instances: [outermost] }) => outermost ?? []);
}

/**
 * What lies round one island, as a drawing of its own: the text without the elements that are far from it. What is tried of
 * that island alone is known much sooner from it, as long as it keeps to what lies there.
 */
import type { Shape } from '../../../drawing/types';
import { boxOfShape } from '../../../edits/strip/shapes-near';
import type { Box } from '../../../geometry/base/polygon-types';
import { boxesTouch, boxOfRing, growBox } from '../../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import { regionContains } from '../../../geometry/boolean/index';
import type { ElementNode } from '../../../markup/tree';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import { applyEdits } from '../../../text/text';

/** An island in the drawing that it is looked at in. */
export interface Vicinity {
  readonly report: Report;
  readonly sheet: Sheet;
  readonly island: Piece;
  /** In sheet mm: bridges that keep to this box hold in the whole drawing as well. */
  readonly box: Box;
}

/** mm: what is no farther from the island is left in; bridges keep so far from where other things may be missing. */
const [REACH, MARGIN] = [8, 2];

/** Where more of the elements are near, little is won by leaving out the others. */
const MOST_NEAR = 0.5;

/** @returns undefined where most of the drawing is near, or the island would not be the same without the rest */
export function vicinityOf(report: Report, sheet: Sheet, island: Piece): Vicinity | undefined {
  const own = boxOfRing(island.polygon.outer);
  const { elements, far } = farFrom(growBox(own, REACH), sheet.drawing.shapes);
  if (report.project || elements - far.length > MOST_NEAR * elements) return undefined;
  const edits = far.map(({ span }) => ({ span, text: '' }));
  const part = report.session.check(applyEdits(report.text, edits), report.settings, true);
  const layer = part.sheets.find((other) => other.layer.name === sheet.layer.name);
  const same = layer?.pieces.find(({ polygon }) => regionContains([polygon], island.label));
  const isSame = layer?.layer.reading === sheet.layer.reading && same?.island && areAlike(same, island);
  return isSame ? { report: part, sheet: layer, island: same, box: growBox(own, REACH - MARGIN) } : undefined;
}

/** Those that paint nothing near, and of which there are no copies; and how many elements there are in all. */
function farFrom(box: Box, shapes: readonly Shape[]): { elements: number; far: ElementNode[] } {
  const kept = new Map<ElementNode, boolean>();
  for (const shape of shapes) {
    const isNear = shape.instances.length > 0 || boxesTouch(boxOfShape(shape), box);
    kept.set(shape.element, isNear || kept.get(shape.element) === true);
  }
  return { elements: kept.size, far: [...kept].flatMap(([element, isKept]) => (isKept ? [] : [element])) };
}

function areAlike(one: Piece, other: Piece): boolean {
  const [a, b] = [one, other].map(({ polygon }) => boxOfRing(polygon.outer)) as [Box, Box];
  const sides = [a.minX - b.minX, a.minY - b.minY, a.maxX - b.maxX, a.maxY - b.maxY];
  return sides.every((side) => Math.abs(side) < DRAWN_ALIKE);
}

/** Register marks: what is cut in every sheet at the same place, so that each can be laid over the last. */
import type { Shape } from '../drawing/types';
import type { Point } from '../geometry/base/curve-types';
import type { Box } from '../geometry/base/polygon-types';
import { joinBoxes } from '../geometry/base/ring';
import { boundsOf } from '../geometry/curve/index';
import { ancestors, attributeOf } from '../markup/query';
import type { ElementNode } from '../markup/tree';
import type { Layer } from '../sheet/types';

/** Elements that carry it, with all inside them, are one mark each. */
const REGISTER = 'data-tombolo-register';

export interface RegistrationMark {
  readonly element: ElementNode;
  /** Round all that it draws, in sheet mm. */
  readonly box: Box;
  /** The middle of the box. */
  readonly centre: Point;
}

export function registrationMarks({ shapes }: Layer): RegistrationMark[] {
  const marks = new Map<ElementNode, Shape[]>();
  for (const shape of shapes) {
    const element = [shape.element, ...ancestors(shape.element)].find((each) => attributeOf(each, REGISTER));
    if (element) marks.set(element, [...(marks.get(element) ?? []), shape]);
  }
  return [...marks].map(([element, own]) => {
    const box = boxOfShapes(own);
    return { element, box, centre: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 } };
  });
}

function boxOfShapes(shapes: readonly Shape[]): Box {
  return joinBoxes(shapes.flatMap(({ subpaths }) => subpaths).flatMap(({ curves }) => curves.map(boundsOf)));
}

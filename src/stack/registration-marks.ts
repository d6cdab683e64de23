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

/** Elements that carry it are details that no joint of tiles shall part, where there is another place for it. */
const WHOLE = 'data-tombolo-whole';

export interface RegistrationMark {
  readonly element: ElementNode;
  /** Round all that it draws, in sheet mm. */
  readonly box: Box;
  /** The middle of the box. */
  readonly centre: Point;
}

export function registrationMarks({ shapes }: Layer): RegistrationMark[] {
  const marks = grouped(shapes, ({ element }) =>
    [element, ...ancestors(element)].find((each) => attributeOf(each, REGISTER)),
  );
  return [...marks].map(([element, own]) => {
    const box = boxOfShapes(own);
    return { element, box, centre: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 } };
  });
}

/** Round each detail that the artist has marked, in sheet mm; what is drawn by a `use` can be marked there. */
export function wholeDetails({ shapes }: Layer): Box[] {
  const details = grouped(shapes, ({ element, instances }) =>
    [element, ...instances]
      .flatMap((each) => [each, ...ancestors(each)])
      .find((each) => attributeOf(each, WHOLE) !== undefined),
  );
  return [...details.values()].map(boxOfShapes);
}

function grouped(
  shapes: readonly Shape[],
  ownerOf: (shape: Shape) => ElementNode | undefined,
): Map<ElementNode, Shape[]> {
  const groups = new Map<ElementNode, Shape[]>();
  for (const shape of shapes) {
    const owner = ownerOf(shape);
    if (!owner) continue;
    const own = groups.get(owner);
    if (own) own.push(shape);
    else groups.set(owner, [shape]);
  }
  return groups;
}

function boxOfShapes(shapes: readonly Shape[]): Box {
  return joinBoxes(shapes.flatMap(({ subpaths }) => subpaths).flatMap(({ curves }) => curves.map(boundsOf)));
}

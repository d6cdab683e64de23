/** Which strips come near which shapes, by their boxes. */
import Flatbush from 'flatbush';
import { defined } from '../../base/defined';
import type { Shape } from '../../drawing/types';
import { memoizeByIdentity } from '../../geometry/base/derived-facts';
import type { Box } from '../../geometry/base/polygon-types';
import { joinBoxes } from '../../geometry/base/ring';
import { boundsOf } from '../../geometry/curve/index';
import { boxOfCorners, type Strip } from './strip';

/** Gives the numbers of the strips whose boxes touch a box, ascending. */
export type StripIndex = (box: Box) => readonly number[];

export function indexStrips(strips: readonly Strip[]): StripIndex {
  if (strips.length === 0) return () => [];
  const tree = new Flatbush(strips.length);
  for (const { corners } of strips) {
    const { minX, minY, maxX, maxY } = boxOfCorners(corners);
    tree.add(minX, minY, maxX, maxY);
  }
  tree.finish();
  return (box) => tree.search(box.minX, box.minY, box.maxX, box.maxY).sort((a, b) => a - b);
}

/** Sheet mm. Strips are tried on the same shapes again and again. */
export const boxOfShape = memoizeByIdentity(
  'box of a shape',
  ({ subpaths }: Shape): Box => joinBoxes(subpaths.flatMap(({ curves }) => curves.map(boundsOf))),
);

/** The shapes that strips come near, each with these strips, in the order given. Sheet mm. */
export function shapesNearStrips(shapes: readonly Shape[], strips: readonly Strip[]): Map<Shape, Strip[]> {
  const index = indexStrips(strips);
  const near = new Map<Shape, Strip[]>();
  for (const shape of shapes) {
    const found = index(boxOfShape(shape));
    if (found.length > 0)
      near.set(
        shape,
        found.map((number) => defined(strips[number])),
      );
  }
  return near;
}

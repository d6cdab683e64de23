/**
 * Where layers are taken apart by paint, the drawing has an order of its own: what one colour gains under another must be
 * drawn before it, or it would be seen over it.
 */
import type { Shape } from '../../../drawing/types';
import type { Region } from '../../../geometry/base/polygon-types';
import { boxesTouch } from '../../../geometry/base/ring';
import { areaOf, boxOfPolygon, difference, intersection, union } from '../../../geometry/boolean/index';
import { shapeRegion } from '../../../sheet/layer/shape-region';
import type { Sheet } from '../../../sheet/types';

/** mm²: rounding leaves less. */
const NOTHING = 0.01;

/**
 * The shapes of a layer, without those over whose neighbours a region that they gained would be drawn, and those round
 * which a line is drawn in another layer: it would move with them.
 */
export function shapesUnder({ drawing, layer }: Sheet, above: readonly Shape[], region: Region): readonly Shape[] {
  const outlined = new Set(above.filter(({ part }) => part === 'stroke').map(({ element }) => element));
  const own = layer.shapes.filter(({ element }) => !outlined.has(element));
  if (!layer.byPaint) return own;
  const near = nearTo(above, region);
  return own.filter((shape) => {
    const place = drawing.shapes.indexOf(shape);
    const over = near.filter((other) => drawing.shapes.indexOf(other) > place);
    const seen = difference(region, union(over.map(shapeRegion)));
    // What is added on bare ground is seen in any order.
    return areaOf(intersection(seen, union(near.map(shapeRegion)))) < NOTHING;
  });
}

/** The shape before which a region must be drawn; undefined where layers are groups, each with a place of its own. */
export function firstAbove({ drawing, layer }: Sheet, above: readonly Shape[], region: Region): Shape | undefined {
  const near = layer.byPaint ? nearTo(above, region) : [];
  return drawing.shapes.find(
    (shape) => shape.instances.length === 0 && shape.clips.length === 0 && near.includes(shape),
  );
}

function nearTo(shapes: readonly Shape[], region: Region): Shape[] {
  const boxes = region.map(boxOfPolygon);
  return shapes.filter((shape) => {
    const own = shapeRegion(shape).filter((polygon) => boxes.some((box) => boxesTouch(boxOfPolygon(polygon), box)));
    return areaOf(intersection(own, region)) > NOTHING;
  });
}

/** What the text at an offset draws, measured at stated scale. */
import { drawnThrough } from '../../drawing/drawn-through';
import type { Drawing, Shape } from '../../drawing/types';
import { joinBoxes } from '../../geometry/base/ring';
import { areaOf, boxOfPolygon, perimeterOf, union } from '../../geometry/boolean/index';
import { lengthOf } from '../../geometry/curve/index';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import type { Report } from '../../report/report';
import { outlinesOf } from '../../sheet/layer/reading';
import { fillRegion, shapeRegion } from '../../sheet/layer/shape-region';
import type { Sheet } from '../../sheet/types';
import type { Span } from '../../text/text';

export interface ShapeDescription {
  /** Of the element. */
  readonly name: string;
  readonly id: string | undefined;
  /** Its start tag. */
  readonly span: Span;
  /** How often it is drawn; all measures are of all of them together. */
  readonly times: number;
  /** mm */
  readonly width: number;
  readonly height: number;
  /** mm², without what lies on each other */
  readonly area: number;
  /** mm of outline, as if it stood alone */
  readonly cutLength: number;
  /** The layers that it is part of. */
  readonly layers: readonly Pick<Sheet['layer'], 'name' | 'paint' | 'reading'>[];
}

/** The element whose start tag is at the offset, where it draws something; groups do not draw by themselves. */
export function describeShapeAt({ drawing, sheets }: Report, offset: number): ShapeDescription | undefined {
  const element = drawnAt(drawing, offset);
  if (!element) return undefined;
  const shapes = drawing.shapes.filter((shape) => drawnThrough(shape).includes(element));
  const layers = sheets
    .map(({ layer }) => layer)
    .filter((layer) => layer.shapes.some((shape) => shapes.includes(shape)));
  const outlines = layers.some(({ reading }) => reading === 'outlines') ? outlinesOf(shapes) : [];
  const region = outlines.length > 0 ? fillRegion(outlines, 'evenodd') : union(shapes.map(shapeRegion));
  if (region.length === 0) return undefined;
  const { minX, minY, maxX, maxY } = joinBoxes(region.map(boxOfPolygon));
  const cutLength =
    outlines.length > 0
      ? outlines.flatMap(({ curves }) => curves).reduce((sum, curve) => sum + lengthOf(curve), 0)
      : perimeterOf(region);
  return {
    name: element.localName,
    id: attributeOf(element, 'id')?.value,
    span: element.startTag,
    times: timesDrawn(shapes),
    width: maxX - minX,
    height: maxY - minY,
    area: areaOf(region),
    cutLength,
    layers: layers.map(({ name, paint, reading }) => ({ name, paint, reading })),
  };
}

/** A fill and its stroke are one drawing of the element. */
function timesDrawn(shapes: readonly Shape[]): number {
  const places = new Map<ElementNode, Set<string>>();
  for (const { element, instances } of shapes) {
    const way = places.get(element) ?? new Set<string>();
    places.set(element, way.add(instances.map(({ span }) => span.from).join()));
  }
  return Math.max(...[...places.values()].map(({ size }) => size));
}

/** Start tags do not lie in each other. */
function drawnAt({ shapes }: Drawing, offset: number): ElementNode | undefined {
  for (const shape of shapes) {
    const element = drawnThrough(shape).find(({ startTag }) => startTag.from <= offset && offset < startTag.to);
    if (element) return element;
  }
  return undefined;
}

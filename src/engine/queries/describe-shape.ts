/** What the text at an offset draws, measured at stated scale. */
import { checkpoint } from '../../base/checkpoint';
import { drawnThrough } from '../../drawing/drawn-through';
import type { Drawing, Shape } from '../../drawing/types';
import { pointInside } from '../../geometry/base/point-inside';
import type { Polygon, Region } from '../../geometry/base/polygon-types';
import { joinBoxes } from '../../geometry/base/ring';
import { areaOf, boxOfPolygon, intersection, perimeterOf, regionContains, union } from '../../geometry/boolean/index';
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
  const layers = layersWith(sheets, shapes).map(({ layer }) => layer);
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

/** Several shapes together. */
export interface DrawnDescription {
  /** How often something is drawn; a fill and its stroke are one. */
  readonly times: number;
  /** How many openings of the sheets they reach into. */
  readonly openings: number;
  /** mm², without what lies on each other */
  readonly area: number;
  /** The layers that they are part of. */
  readonly layers: readonly Pick<Sheet['layer'], 'name' | 'paint' | 'reading'>[];
}

export function describeDrawn({ sheets }: Pick<Report, 'sheets'>, shapes: readonly Shape[]): DrawnDescription {
  const drawn = new Set(shapes);
  const within = layersWith(sheets, shapes);
  const parts = within.map(({ layer, openings }) => {
    const own = layer.shapes.filter((shape) => drawn.has(shape));
    const isOutline = layer.reading === 'outlines';
    const region = isOutline ? fillRegion(outlinesOf(own), 'evenodd') : union(own.map(shapeRegion));
    return { area: areaOf(region), openings: countReached(openings, region) };
  });
  return {
    times: new Set(shapes.map(({ element, instances }) => [element, ...instances].map(({ span }) => span.from).join()))
      .size,
    openings: parts.reduce((sum, { openings }) => sum + openings, 0),
    area: parts.reduce((sum, { area }) => sum + area, 0),
    layers: within.map(({ layer: { name, paint, reading } }) => ({ name, paint, reading })),
  };
}

function countReached(openings: Region, region: Region): number {
  const reached = new Set<Polygon>();
  for (const { outer, holes } of intersection(openings, region)) {
    checkpoint();
    const inside = pointInside(outer, holes);
    const opening = openings.find((each) => !reached.has(each) && regionContains([each], inside));
    if (opening) reached.add(opening);
  }
  return reached.size;
}

function layersWith(sheets: readonly Sheet[], shapes: readonly Shape[]): Sheet[] {
  const drawn = new Set(shapes);
  return sheets.filter(({ layer }) => layer.shapes.some((shape) => drawn.has(shape)));
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

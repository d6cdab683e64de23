/** Finds the layers of a drawing: which shapes belong to one colour, what it is called, and its paint. */
import type { Drawing, Shape } from '../../drawing/types';
import type { Region } from '../../geometry/base/polygon-types';
import { areaOf } from '../../geometry/boolean/index';
import { attributeOf, childElements, textContent } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { type LayerId, layerId } from './layer-id';
import { shapeRegion } from './shape-region';

/** The shapes of one layer, before it is known how they are read. */
export interface ShapeGroup {
  readonly id: LayerId;
  /** The group that is the layer; undefined for the whole file, and for shapes that stand outside all groups. */
  readonly element: ElementNode | undefined;
  readonly name: string;
  readonly shapes: readonly Shape[];
}

/**
 * Each top-level `<g>` with something drawn in it is a layer, in the order of the document. With one such group or
 * none, the whole file is one layer. Shapes beside several groups make a layer of their own, named "loose shapes".
 * @param fallback the name of a layer that is a whole file without a name of its own
 * @param file as the project names it
 */
export function groupShapes(
  drawing: Drawing,
  oneLayer = false,
  fallback = 'stencil',
  file = '',
): readonly ShapeGroup[] {
  const members = new Map<ElementNode | undefined, Shape[]>();
  for (const shape of drawing.shapes) {
    const group = shape.topLevel.localName === 'g' ? shape.topLevel : undefined;
    const list = members.get(group);
    if (list) list.push(shape);
    else members.set(group, [shape]);
  }
  const groups = [...members.keys()].filter((element) => element !== undefined);
  if (oneLayer || groups.length < 2) return [wholeFile(drawing, groups, fallback, file)];
  return [...members].map(([element, shapes], i) => ({
    id: layerId(file, i),
    element,
    shapes,
    name: element ? nameOf(element) : 'loose shapes',
  }));
}

function wholeFile(drawing: Drawing, groups: readonly ElementNode[], fallback: string, file: string): ShapeGroup {
  const root = drawing.document.root;
  const [only] = groups;
  const name = (root && statedName(root)) ?? (only && statedName(only)) ?? fallback;
  return { id: layerId(file, 0), element: undefined, name, shapes: drawing.shapes };
}

function nameOf(group: ElementNode): string {
  return statedName(group) ?? `layer at ${group.span.from}`;
}

/** `<title>` child, else `aria-label`, else any attribute with local name `label`, else `id`. */
export function statedName(element: ElementNode): string | undefined {
  const title = childElements(element).find((child) => child.localName === 'title');
  const label = element.attributes.find((candidate) => candidate.localName === 'label');
  const candidates = [
    title && textContent(title),
    attributeOf(element, 'aria-label')?.value,
    label?.value,
    attributeOf(element, 'id')?.value,
  ];
  return candidates.map((text) => text?.trim()).find((text) => text);
}

/** The colour that covers most of the layer, as `#rrggbb`; black where nothing is filled. */
export function mainPaint(shapes: readonly Shape[]): string {
  const colours = new Set(shapes.map(colourOf));
  if (colours.size <= 1) return [...colours][0] ?? '#000000';
  const areas = new Map<string, number>();
  for (const shape of shapes) {
    const colour = colourOf(shape);
    areas.set(colour, (areas.get(colour) ?? 0) + regionArea(shapeRegion(shape)));
  }
  const [largest] = [...areas].sort(([, a], [, b]) => b - a);
  return largest?.[0] ?? '#000000';
}

function colourOf(shape: Shape): string {
  return shape.paint.kind === 'none' ? '#000000' : shape.paint.colour;
}

function regionArea(region: Region): number {
  return region.reduce((sum, polygon) => sum + areaOf(polygon), 0);
}

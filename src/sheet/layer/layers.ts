/** Finds the layers of a drawing: which shapes belong to one colour, what it is called, and its paint. */
import type { Layering } from '../../config/types';
import type { Drawing, Shape } from '../../drawing/types';
import type { Region } from '../../geometry/base/polygon-types';
import { areaOf } from '../../geometry/boolean/index';
import { attributeOf, childElements, textContent } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { type LayerId, layerId } from './layer-id';
import { statedLayering } from './layering';
import { loneGroupOf, type Members, membersOf } from './members';
import { colourOf, paintOrder } from './paint-order';
import { isHairline } from './reading';
import { secondSheetsApart } from './second-sheets';
import { shapeRegion } from './shape-region';

/** The shapes of one layer, before it is known how they are read. */
export interface ShapeGroup {
  readonly id: LayerId;
  /** The group that is the layer; undefined for the whole file, and for shapes that stand outside all groups. */
  readonly element: ElementNode | undefined;
  readonly name: string;
  readonly shapes: readonly Shape[];
  /** Set where it is one of the paints of its element or file, which were taken apart. */
  readonly byPaint?: true;
  /** Set where others of those paints fill areas or draw wide lines: then its thin lines are painted, too. */
  readonly painted?: true;
  /** The layer that it is one painted region with, where another place than its own group names it. */
  readonly with?: string | undefined;
}

export interface LayerOptions {
  /** The whole file is one layer, whatever it says. */
  readonly oneLayer?: boolean;
  /** What `tombolo.json` says, for files that say nothing themselves. */
  readonly layering?: Layering | undefined;
  /** The name of a layer that is a whole file without a name of its own. */
  readonly fallback?: string;
  /** As the project names it. */
  readonly file?: string;
}

type Part = Omit<ShapeGroup, 'id'>;

/**
 * Each top-level `<g>` with something drawn in it is a layer, in the order of the document; a lone group round the groups
 * that are the layers is looked through. With one such group or none, the whole file is one layer. Shapes beside several
 * groups make a layer of their own, named "loose shapes". `data-tombolo-layers` on the root, or on a layer, or
 * `tombolo.json` may say otherwise. Second sheets (`data-tombolo-with`) are layers of their own in a file that is one layer too.
 */
export function groupShapes(drawing: Drawing, options: LayerOptions = {}): readonly ShapeGroup[] {
  return partsOf(drawing, options).map((part, i) => ({ ...part, id: layerId(options.file ?? '', i) }));
}

function partsOf(drawing: Drawing, { oneLayer = false, layering, fallback = 'stencil' }: LayerOptions): Part[] {
  const { root } = drawing.document;
  const whole = (): Part => ({ element: undefined, name: wholeName(drawing, fallback), shapes: drawing.shapes });
  const stated = statedLayering(root) ?? layering;
  if (!root || oneLayer) return [whole()];
  if (stated === 'one') return secondSheetsApart(whole());
  if (stated === 'by-paint') return splitByPaint(whole(), false);
  const members = layersWithin(drawing.shapes, root, stated === 'inner-groups');
  if (groupsOf(members).length < 2) return [whole()];
  return [...members].flatMap(([element, shapes], i) => {
    const name = element ? (statedName(element) ?? `Layer ${i + 1} (unnamed)`) : 'loose shapes';
    return splitAsStated({ element, shapes, name });
  });
}

/** A layer that says itself that it is taken apart. */
export function splitAsStated(part: Part): Part[] {
  const { element, shapes, name } = part;
  const stated = statedLayering(element);
  if (!element || stated === undefined || stated === 'one') return [part];
  if (stated === 'by-paint') return splitByPaint(part, true);
  const inner = membersOf(shapes, element);
  return groupsOf(inner).length < 2
    ? [part]
    : [...inner].map(([group, own], i) => ({
        element: group,
        shapes: own,
        name: (group && statedName(group)) ?? `${name} ${i + 1}`,
      }));
}

/** @param named whether the layers are called after the part as well */
function splitByPaint({ element, shapes, name }: Part, named: boolean): Part[] {
  const painted = !shapes.every(isHairline);
  // Beside what is painted, a line without a width shows nothing.
  const drawn = painted && shapes.some(isWithoutWidth) ? shapes.filter((shape) => !isWithoutWidth(shape)) : shapes;
  const { colours } = paintOrder(drawn);
  return colours.map((colour) => ({
    element,
    name: named ? `${name} ${colour}` : colour,
    shapes: drawn.filter((shape) => colourOf(shape) === colour),
    byPaint: true,
    ...(painted && { painted }),
  }));
}

function isWithoutWidth({ strokeWidth }: Shape): boolean {
  return strokeWidth === 0;
}

function groupsOf(members: Members): ElementNode[] {
  return [...members.keys()].filter((element) => element !== undefined);
}

/**
 * The groups in the root; where there is but one with nothing beside, those in it where they are the layers, and so on.
 * @param asked whether the author says that the groups within the lone group are the layers
 */
function layersWithin(shapes: readonly Shape[], root: ElementNode, asked: boolean): Members {
  const top = membersOf(shapes, root);
  const lone = loneGroupOf(shapes, root);
  if (!lone) return top;
  const members = membersOf(shapes, lone);
  return groupsOf(members).length > 1 && (asked || areLayers(members)) ? members : top;
}

/** Groups are layers where nothing stands beside them, and they are named as layers are or differ in colour. */
function areLayers(members: Members): boolean {
  const groups = groupsOf(members);
  if (groups.length < members.size) return false;
  if (groups.every((group) => labelOf(group) !== undefined)) return true;
  return new Set([...members.values()].flat().map(colourOf)).size > 1;
}

function wholeName({ document: { root }, shapes }: Drawing, fallback: string): string {
  const [only, ...others] = root ? groupsOf(membersOf(shapes, root)) : [];
  const elements = [root, ...(others.length === 0 ? [only] : [])].filter((element) => element !== undefined);
  const titles = elements.map(titleOf);
  return [...titles, ...elements.reverse().map(idOf)].find((name) => name !== undefined) ?? fallback;
}

/** `<title>` child, else `aria-label`, else any attribute with local name `label`, else `id`. */
export function statedName(element: ElementNode): string | undefined {
  return titleOf(element) ?? idOf(element);
}

function titleOf(element: ElementNode): string | undefined {
  const title = childElements(element).find((child) => child.localName === 'title');
  return words(title && textContent(title)) ?? words(attributeOf(element, 'aria-label')?.value) ?? labelOf(element);
}

/** An attribute called `label`, of whatever namespace: drawing programs keep the names of layers in such. */
function labelOf(element: ElementNode): string | undefined {
  return words(element.attributes.find(({ localName }) => localName === 'label')?.value);
}

function idOf(element: ElementNode): string | undefined {
  return words(attributeOf(element, 'id')?.value);
}

function words(text: string | undefined): string | undefined {
  return text?.trim() || undefined;
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

function regionArea(region: Region): number {
  return region.reduce((sum, polygon) => sum + areaOf(polygon), 0);
}

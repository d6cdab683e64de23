/** Which group each shape stands in. Each element on the way up is passed once, however many shapes stand within it. */
import { checkpoint } from '../../base/checkpoint';
import type { Shape } from '../../drawing/types';
import type { ElementNode } from '../../markup/tree';

/** By the group in a container; undefined for shapes that stand in no group of it. */
export type Members = ReadonlyMap<ElementNode | undefined, readonly Shape[]>;

/** The shapes by the child of a container that they stand in; those that stand in no group of it are together. */
export function membersOf(shapes: readonly Shape[], container: ElementNode): Members {
  const members = new Map<ElementNode | undefined, Shape[]>();
  const known = new Map<ElementNode, ElementNode | undefined>();
  for (const shape of shapes) {
    const child = childAround(shape, container, known);
    const group = child?.localName === 'g' ? child : undefined;
    const list = members.get(group);
    if (list) list.push(shape);
    else members.set(group, [shape]);
  }
  return members;
}

/** @param known the children of the container round elements that were passed before */
function childAround(
  shape: Shape,
  container: ElementNode,
  known: Map<ElementNode, ElementNode | undefined>,
): ElementNode | undefined {
  if (shape.topLevel.parent === container) return shape.topLevel;
  const passed: ElementNode[] = [];
  let place: ElementNode | undefined = placeOf(shape);
  while (place && place.parent !== container && !known.has(place)) {
    checkpoint();
    passed.push(place);
    place = place.parent;
  }
  const child = place && known.has(place) ? known.get(place) : place;
  for (const element of passed) known.set(element, child);
  return child;
}

/**
 * The innermost group round all shapes, where there are nothing but groups between the root and it; undefined where the
 * root itself is the innermost element.
 */
export function loneGroupOf(shapes: readonly Shape[], root: ElementNode): ElementNode | undefined {
  const [first, ...others] = shapes;
  if (!first) return undefined;
  const way = wayTo(first, root);
  let common = way.length;
  const depths = new Map(others.length > 0 ? way.map((element, depth) => [element, depth]) : []);
  for (const shape of others) common = Math.min(common, meetingDepth(shape, depths));
  const isAllGroups = way.slice(0, common).every(({ localName }) => localName === 'g');
  return isAllGroups ? way[common - 1] : undefined;
}

/** The elements within the root that the shape stands in, the outermost first. */
function wayTo(shape: Shape, root: ElementNode): ElementNode[] {
  const way: ElementNode[] = [];
  for (let each = placeOf(shape).parent; each && each !== root; each = each.parent) {
    checkpoint();
    way.push(each);
  }
  return way.reverse();
}

/** How many elements of a way the shape stands in. What is passed is known for the shapes that follow. */
function meetingDepth(shape: Shape, depths: Map<ElementNode, number>): number {
  const passed: ElementNode[] = [];
  let place = placeOf(shape).parent;
  while (place && !depths.has(place)) {
    checkpoint();
    passed.push(place);
    place = place.parent;
  }
  const depth = place ? (depths.get(place) ?? 0) : -1;
  for (const element of passed) depths.set(element, depth);
  return depth + 1;
}

function placeOf({ instances, element }: Shape): ElementNode {
  return instances[0] ?? element;
}

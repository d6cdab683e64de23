/** Where a layer stands in the text: its group, or what is drawn at the top of a file that is one layer. */
import { childElements } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import type { Sheet } from '../../sheet/types';

/** Neighbouring children of one parent, from the first to the last of them. */
export interface LayerPlace {
  readonly parent: ElementNode;
  /** Numbers among the parent's child elements. */
  readonly first: number;
  readonly last: number;
  /** Whether it is a group that is the layer; else a group must be put round it. */
  readonly isGroup: boolean;
}

/** @returns the sentence that says why the layer has no place of its own, where it has none */
export function placeOfLayer({ layer, drawing }: Sheet, isOnlyLayer: boolean): LayerPlace | string {
  const { root } = drawing.document;
  const tops = new Set(layer.shapes.map(({ topLevel }) => topLevel));
  const [only] = tops;
  if (layer.byPaint)
    return 'This layer is one of the colours of a group: put its shapes into a group of their own first.';
  const group = layer.element ?? (tops.size === 1 && only?.localName === 'g' ? only : undefined);
  if (group?.parent) {
    const at = childElements(group.parent).indexOf(group);
    return { parent: group.parent, first: at, last: at, isGroup: true };
  }
  const places = root ? [...tops].map((top) => childElements(root).indexOf(top)) : [];
  if (!isOnlyLayer || !root || places.length === 0 || places.some((at) => at < 0)) {
    return 'This layer is no group: put its shapes into a <g> first.';
  }
  return { parent: root, first: Math.min(...places), last: Math.max(...places), isGroup: false };
}

/** The same place after edits within it: what stands before and behind has not changed. */
export function elementsAt(parent: ElementNode, { first, last }: LayerPlace, before: ElementNode): ElementNode[] {
  const behind = childElements(before).length - 1 - last;
  const children = childElements(parent);
  return children.slice(first, children.length - behind);
}

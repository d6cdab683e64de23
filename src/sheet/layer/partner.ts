/** Layers of one colour that are cut as several sheets, each of which paints what bridges of the others keep bare. */
import { defined } from '../../base/defined';
import type { Drawing } from '../../drawing/types';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import type { Layer } from '../types';
import { fileOfLayer } from './layer-id';

/** The attribute, on a layer or on the root of a file that is one, that names the layer it goes with, by id or name. */
export const PARTNER_ATTRIBUTE = 'data-tombolo-with';

/** @param element the group that is the layer; undefined where the whole file is one */
export function statedPartner(element: ElementNode | undefined, { document }: Drawing): string | undefined {
  const owner = element ?? document.root;
  return (owner && attributeOf(owner, PARTNER_ATTRIBUTE)?.value.trim()) || undefined;
}

/** Whether a layer is the one that another names. */
function isCalled({ name, element }: Layer, called: string): boolean {
  return name === called || (element !== undefined && attributeOf(element, 'id')?.value === called);
}

/**
 * The number of the layer that a layer says it goes with: another one, of the same colour, in the same file rather than in
 * another. Undefined where none is.
 */
export function partnerOf(layers: readonly Layer[], number: number): number | undefined {
  const layer = layers[number];
  if (layer?.with === undefined) return undefined;
  const called = layer.with;
  const found = [...layers.keys()].filter((i) => {
    const other = layers[i];
    return other !== undefined && i !== number && other.paint === layer.paint && isCalled(other, called);
  });
  const file = fileOfLayer(layer.id);
  return found.find((i) => fileOfLayer(defined(layers[i]).id) === file) ?? found[0];
}

/**
 * For each layer the number of the first of those that are one painted region with it: its own where it stands alone.
 * @param layers in painting order
 */
export function paintedRegions(layers: readonly Layer[]): readonly number[] {
  const first = layers.map((_, i) => i);
  for (const number of layers.keys()) {
    const partner = partnerOf(layers, number);
    if (partner === undefined) continue;
    const [one, other] = [first[number] as number, first[partner] as number];
    for (const [i, each] of first.entries()) if (each === one || each === other) first[i] = Math.min(one, other);
  }
  return first;
}

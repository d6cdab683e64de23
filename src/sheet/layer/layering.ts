/** How the author wants a file, or a group of it, taken apart into layers. */
import { LAYERINGS, type Layering } from '../../config/types';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';

/** The attribute, on the root or on a group that is a layer, that says so. */
export const LAYERING_ATTRIBUTE = 'data-tombolo-layers';

export function statedLayering(element: ElementNode | undefined): Layering | undefined {
  const value = element && attributeOf(element, LAYERING_ATTRIBUTE)?.value.trim();
  return LAYERINGS.find((word) => word === value);
}

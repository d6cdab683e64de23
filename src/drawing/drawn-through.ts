import type { ElementNode } from '../markup/tree';
import type { Shape } from './types';

/** The element that has a shape's geometry, and the `use` elements through which it is drawn. */
export function drawnThrough({ element, instances }: Shape): readonly ElementNode[] {
  return [element, ...instances];
}

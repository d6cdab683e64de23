import type { ElementNode } from '../markup/tree';
import type { Shape } from './types';

/** The elements whose text a shape comes from: its own, and each `use` and group that draws that again. */
export function drawnThrough({ element, instances }: Shape): readonly ElementNode[] {
  return [element, ...instances];
}

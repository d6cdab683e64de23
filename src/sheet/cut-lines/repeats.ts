/** Lines that are drawn again from end to end: they are recognised before any two lines are compared closely. */

import { checkpoint } from '../../base/checkpoint';
import type { Shape } from '../../drawing/types';
import type { Curve } from '../../geometry/base/curve-types';
import type { ElementNode } from '../../markup/tree';
import { curvesKey } from '../layer/artwork-key';
import { sameCurves } from '../layer/same-curves';

interface Line {
  readonly shape: Shape;
  readonly curves: readonly Curve[];
}

export interface PartedLines<L extends Line> {
  /** Of those that are the same, the first. */
  readonly lines: readonly L[];
  /** The others, each with the first. What one `use` draws there many times is given once. */
  readonly repeats: readonly { readonly first: L; readonly second: L }[];
}

export function partRepeats<L extends Line>(all: readonly L[]): PartedLines<L> {
  const known = new Map<number, L[]>();
  const drawnBy = new Map<L, Set<ElementNode>>();
  const repeats: { first: L; second: L }[] = [];
  const lines = all.filter((line) => {
    checkpoint(4);
    const key = curvesKey(line.curves);
    const alike = known.get(key) ?? [];
    const first = alike.find(({ curves }) => sameCurves(curves, line.curves));
    if (!first) {
      known.set(key, [...alike, line]);
      return true;
    }
    const elements = drawnBy.get(first) ?? new Set();
    drawnBy.set(first, elements);
    const { element, instances } = line.shape;
    const drawing = instances[0] ?? element;
    if (!elements.has(drawing)) repeats.push({ first, second: line });
    elements.add(drawing);
    return false;
  });
  return { lines, repeats };
}

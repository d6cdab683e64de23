/** Sheets of one colour that cover each other's bridges, as the one region that they paint together. Millimetres. */
import type { Region } from '../geometry/base/polygon-types';
import { union } from '../geometry/boolean/index';

/** What is painted as one, through one sheet or several. */
export interface JoinedSheets {
  /** The first of its sheets, in the stack. */
  readonly first: number;
  /** The openings of each of them. */
  readonly parts: readonly Region[];
  readonly region: Region;
}

/**
 * @param layers what is cut, in painting order
 * @param firsts for each layer the first of those that it is one region with
 * @param earlier of another state of the stack: what is joined of the same openings is kept
 */
export function joinSheets(
  layers: readonly Region[],
  firsts: readonly number[],
  earlier: readonly JoinedSheets[] = [],
): JoinedSheets[] {
  return [...new Set(firsts)].map((first) => {
    const parts = layers.filter((_, layer) => firsts[layer] === first);
    const [only, ...others] = parts;
    if (only && others.length === 0) return { first, parts, region: only };
    const known = earlier.find((each) => isSame(each.parts, parts));
    return { first, parts, region: known?.region ?? union(parts) };
  });
}

function isSame(a: readonly Region[], b: readonly Region[]): boolean {
  return a.length === b.length && a.every((part, i) => part === b[i]);
}

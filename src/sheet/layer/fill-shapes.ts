/** What a layer's shapes fill together. */

import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Shape } from '../../drawing/types';
import type { Region } from '../../geometry/base/polygon-types';
import type { CachedCluster } from '../../geometry/boolean/cluster-cache';
import { unionByCluster } from '../../geometry/boolean/index';
import { shapeRegion } from './shape-region';

export interface FilledShapes {
  /** What stands for each of the shapes: see `artworkKey`. */
  readonly keys: Float64Array;
  /** Of each shape, in mm. */
  readonly fills: readonly Region[];
  readonly union: readonly CachedCluster[];
}

export const NOTHING_FILLED: FilledShapes = { keys: new Float64Array(0), fills: [], union: [] };

/** What one shape fills, in mm; `key` stands for the shape. */
export type FillOf = (shape: Shape, key: number) => Region;

/**
 * @param keys what stands for each of the shapes
 * @param previous of the same layer before an edit: what did not change is taken from it
 */
export function fillShapes(
  shapes: readonly Shape[],
  keys: Float64Array,
  previous: FilledShapes = NOTHING_FILLED,
  fillOf: FillOf = shapeRegion,
): FilledShapes {
  const fills = fillsOf(shapes, keys, previous, fillOf);
  return { keys, fills, union: unionByCluster([...new Set(fills)], previous.union) };
}

function fillsOf(shapes: readonly Shape[], keys: Float64Array, previous: FilledShapes, fillOf: FillOf): Region[] {
  // Shapes that are drawn again in the same place share one region, which is united once.
  const drawn = new Map(Array.from(previous.keys, (key, i) => [key, defined(previous.fills[i])]));
  return shapes.map((shape, i) => {
    checkpoint();
    const key = defined(keys[i]);
    const region = drawn.get(key) ?? fillOf(shape, key);
    drawn.set(key, region);
    return region;
  });
}

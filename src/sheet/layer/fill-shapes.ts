/** What a layer's shapes fill together. */

import type { Shape } from '../../drawing/types';
import { checkpoint } from '../../geometry/base/checkpoint';
import { defined } from '../../geometry/base/defined';
import type { Region } from '../../geometry/base/polygon-types';
import type { CachedCluster } from '../../geometry/boolean/cluster-cache';
import { unionByCluster } from '../../geometry/boolean/index';
import type { Sheet } from '../types';
import { areaKey, sameArea, sameShape } from './same-artwork';
import { shapeRegion } from './shape-region';

export interface FilledShapes {
  /** Of each shape, in mm. */
  readonly fills: readonly Region[];
  readonly union: readonly CachedCluster[];
}

/** @param earlier a sheet of the same layer; what did not change is taken from it */
export function fillShapes(shapes: readonly Shape[], earlier: Sheet | undefined): FilledShapes {
  const fills = fillsOf(shapes, earlier);
  return { fills, union: unionByCluster([...new Set(fills)], earlier?.cache.union) };
}

/** An edit touches few shapes, which commonly stand together: those before and after them are kept. */
function fillsOf(shapes: readonly Shape[], earlier: Sheet | undefined): Region[] {
  const [old, known] = [earlier?.layer.shapes ?? [], earlier?.cache.fills ?? []];
  const least = Math.min(shapes.length, known.length);
  let [before, after] = [0, 0];
  while (before < least && sameShape(defined(shapes[before]), defined(old[before]))) before += 1;
  while (after < least - before && sameShape(defined(shapes.at(-1 - after)), defined(old.at(-1 - after)))) after += 1;
  const regionOf = regionsOnce();
  return shapes.map((shape, i) => {
    checkpoint();
    const at = i < before ? i : i >= shapes.length - after ? i - shapes.length + known.length : -1;
    return known[at] ?? regionOf(shape);
  });
}

/** Gives the same region to shapes that are drawn again in the same place, so that they are united once. */
function regionsOnce(): (shape: Shape) => Region {
  const drawn = new Map<string, Shape[]>();
  return (shape) => {
    const key = areaKey(shape);
    const alike = drawn.get(key) ?? [];
    const first = alike.find((other) => sameArea(other, shape));
    if (first) return shapeRegion(first);
    drawn.set(key, [...alike, shape]);
    return shapeRegion(shape);
  };
}

/** Fills path data with polygons, for comparing areas. All in the path's own units. */

import { OutlineBuilder } from '../../src/drawing/outline/outline-builder';
import { tracePath } from '../../src/drawing/outline/path-curves';
import type { Strip } from '../../src/edits/strip/strip';
import { IDENTITY } from '../../src/geometry/base/matrix';
import type { Region } from '../../src/geometry/base/polygon-types';
import { areaOf, difference, regionFromRings } from '../../src/geometry/boolean/index';
import { flattenSubpath } from '../../src/geometry/curve/flatten';

export type FillRule = 'nonzero' | 'evenodd';

export function pathRegion(data: string, fillRule: FillRule, tolerance = 1e-4): Region {
  const builder = new OutlineBuilder(IDENTITY);
  const error = tracePath(data, builder);
  if (error) throw new Error(`${error.message} in ${data}`);
  return regionFromRings(
    builder.done().map(({ curves }) => flattenSubpath(curves, tolerance)),
    fillRule,
  );
}

export function stripRegion({ corners }: Strip): Region {
  return regionFromRings([Float64Array.from(corners.flatMap(({ x, y }) => [x, y]))], 'nonzero');
}

export function totalArea(region: Region): number {
  return region.reduce((sum, polygon) => sum + areaOf(polygon), 0);
}

/** The area that two regions do not share. */
export function areaBetween(a: Region, b: Region): number {
  return totalArea(difference(a, b)) + totalArea(difference(b, a));
}

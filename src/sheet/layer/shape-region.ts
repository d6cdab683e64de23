/** The area that one shape paints, with straight edges. */
import type { Clip, Shape, Subpath } from '../../drawing/types';
import type { Curve } from '../../geometry/base/curve-types';
import { memoizeByIdentity } from '../../geometry/base/memoize';
import type { Region } from '../../geometry/base/polygon-types';
import { clipToBox, intersection, regionFromRings, union } from '../../geometry/boolean/index';
import { flattenSubpath } from '../../geometry/curve/flatten';

/**
 * Largest distance in mm between a curve and the straight edges that stand for it. An inscribed polygon loses 4/3 of it
 * for each unit of radius, so this keeps the area of a disc of 10 mm radius within 1e-4 of itself.
 */
export const FLATNESS = 0.0007;

/** The ring that stands for a chain of curves; it closes open ones. Several measures want it. */
export const ringOfCurves = memoizeByIdentity((curves: readonly Curve[]) => flattenSubpath(curves, FLATNESS));

/** The painted area of one shape in sheet mm, its clip paths applied. */
export function shapeRegion(shape: Shape): Region {
  return shape.clips.reduce(applyClip, fillRegion(shape.subpaths, shape.fillRule));
}

/** The area inside subpaths by a fill rule. */
export function fillRegion(subpaths: readonly Subpath[], fillRule: 'nonzero' | 'evenodd'): Region {
  return regionFromRings(
    subpaths.map(({ curves }) => ringOfCurves(curves)),
    fillRule,
  );
}

function applyClip(region: Region, clip: Clip): Region {
  if (clip.box) return clipToBox(region, clip.box);
  const parts = clip.parts.map((part) => fillRegion(part.subpaths, part.fillRule));
  return intersection(region, union(parts));
}

/** The area that one shape paints, with straight edges. */
import type { Clip, Shape, Subpath } from '../../drawing/types';
import type { Curve } from '../../geometry/base/curve-types';
import { memoizeByIdentity } from '../../geometry/base/derived-facts';
import type { FillRule, Region } from '../../geometry/base/polygon-types';
import { FLATTENING } from '../../geometry/base/tolerances';
import { clipToBox, intersection, regionFromRings, union } from '../../geometry/boolean/index';
import { flattenSubpath } from '../../geometry/curve/flatten';

/** The ring that stands for a chain of curves; it closes open ones. Several measures want it. */
export const ringOfCurves = memoizeByIdentity('ring of a chain', (curves: readonly Curve[]) =>
  flattenSubpath(curves, FLATTENING),
);

/** The painted area of one shape in sheet mm, its clip paths applied. Its layer's paint and fill both want it. */
export const shapeRegion = memoizeByIdentity(
  'area of a shape',
  ({ subpaths, fillRule, clips }: Shape): Region => clips.reduce(applyClip, fillRegion(subpaths, fillRule)),
);

/** The area inside subpaths by a fill rule. */
export function fillRegion(subpaths: readonly Subpath[], fillRule: FillRule): Region {
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

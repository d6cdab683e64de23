/**
 * Where a region is thinner than a given width: see `README.md` beside this file for the algorithm, what it guarantees and costs.
 */
import type { Region } from '../base/polygon-types';
import { NECK_MARGIN } from '../base/tolerances';
import { describeFullyThin, fullyThinByBox, markFullyThin } from './all-thin-polygons';
import { buildBoundary } from './boundary-index';
import { describeComponents } from './classify';
import { linkChains } from './components';
import { findThinBoundary } from './thin-boundary';
import type { ThinPart } from './types';

export interface ThinPartOptions {
  /**
   * mm: parts narrower than the width by less are not reported. It should be above twice the tolerance to which curves
   * were flattened, for that is by how much a region of exactly the width may seem thinner. Default 0.006.
   */
  readonly tolerance?: number;
  /** mm: tips that reach no farther are not reported. Default: the width, which lets corners above 39° go. */
  readonly leastReach?: number;
}

const DEFAULT_TOLERANCE = NECK_MARGIN;

/**
 * The parts of the region that no disc of the diameter `width` (mm) passes: necks, tips and polygons that are thin as a
 * whole, in the order of their polygons. A region without area, or a width that is not a positive number, has none.
 */
export function findThinParts(region: Region, width: number, options: ThinPartOptions = {}): ThinPart[] {
  if (!(width > 0) || !Number.isFinite(width)) return [];
  const boundary = buildBoundary(region);
  if (!boundary) return [];
  const whole = fullyThinByBox(boundary.outline, region.length, width);
  const leastReach = options.leastReach ?? width;
  const thin = findThinBoundary(boundary, { radius: width / 2, skip: whole, leastReach });
  markFullyThin(thin, whole);
  const limit = width - (options.tolerance ?? DEFAULT_TOLERANCE);
  const wholes = describeFullyThin(thin, whole).filter((part) => part.width < limit);
  const components = linkChains(thin, whole);
  const others = describeComponents({ thin, components, skip: whole, limit, leastReach });
  return [...wholes, ...others].sort((a, b) => a.polygon - b.polygon);
}

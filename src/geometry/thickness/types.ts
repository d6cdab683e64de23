/** What the search for thin parts of a region gives. See `README.md` beside this file for the algorithm and its guarantee. */
import type { Point } from '../base/curve-types';
import type { Box } from '../base/polygon-types';

/**
 * A place where no disc of the asked width passes.
 * - `neck`: joins two thick parts, or one with itself. `width` is the smallest distance between the facing boundaries.
 * - `tip`: hangs on one thick part only. `width` is the smallest distance between its two flanks in the half of its
 *   reach that is nearer to the thick part (at its very end a tip may come to a point); `reach` is how far it goes.
 * - `whole`: a polygon without any thick part. `width` is the diameter of its largest inscribed disc.
 */
export interface ThinPart {
  readonly kind: 'neck' | 'tip' | 'whole';
  /** mm */
  readonly width: number;
  /** The two facing boundary points, `width` apart (for `whole`: the ends of a diameter of the disc). */
  readonly from: Point;
  readonly to: Point;
  /** mm, along the part's course: half of the boundary's length there. 0 where two corners alone face each other. */
  readonly length: number;
  /** mm: for tips, how far the part reaches beyond the last disc of the asked width that fits; else 0. */
  readonly reach: number;
  /** For tips: the place that lies farthest beyond that disc. */
  readonly end?: Point;
  /**
   * How many stretches of boundary face each other in it: one for tips, which it goes round; two for a plain neck, more
   * where several meet in one part; for `whole`, the polygon's rings.
   */
  readonly sides: number;
  /** Round the boundary on either side of it; for `whole`, round the polygon. */
  readonly extent: Box;
  /** Which polygon of the region it lies in. */
  readonly polygon: number;
  /**
   * For necks: what would come off if the neck tore, when tearing it alone divides the polygon; else undefined.
   * `area` is that of the smaller side in mm², `at` a point in it.
   */
  readonly holds: { readonly area: number; readonly at: Point } | undefined;
}

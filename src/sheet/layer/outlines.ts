/** Layers that show only their cut lines: nesting tells openings from material. */
import type { Subpath } from '../../drawing/types';
import type { Box, Region } from '../../geometry/base/polygon-types';
import { joinBoxes } from '../../geometry/base/ring';
import { boundsOf } from '../../geometry/curve/index';
import { fillRegion } from './shape-region';

/** An outermost outline that spans this share of the frame both ways is the sheet's own edge, not an opening. */
const SHEET_EDGE = 0.95;

/** The openings between nested outlines: they alternate from outside in, beginning with an opening. */
export function openingsWithin(outlines: readonly Subpath[], frame: Box): Region {
  const inside = outlines.filter((outline) => !isSheetEdge(outline, frame));
  return fillRegion(inside, 'evenodd');
}

/** Whether an outline spans the whole sheet: its own edge, not an opening. */
export function isSheetEdge({ curves }: Subpath, frame: Box): boolean {
  const { minX, minY, maxX, maxY } = joinBoxes(curves.map(boundsOf));
  return maxX - minX >= SHEET_EDGE * (frame.maxX - frame.minX) && maxY - minY >= SHEET_EDGE * (frame.maxY - frame.minY);
}

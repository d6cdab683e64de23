/** Where the bare ground between two colours is thin: as an area. Sheet mm. */
import type { Box, Region } from '../../../geometry/base/polygon-types';
import { growBox } from '../../../geometry/base/ring';
import { clipToBox, complementInBox, difference, offset, union } from '../../../geometry/boolean/index';
import { thinWithin } from '../../../geometry/polygon/thin-within';
import type { Sheet } from '../../../sheet/types';

/** Ground that two sheets leave bare between them, where it is narrower than a slip. */
export function thinGround(sheets: readonly Sheet[], box: Box, slip: number): Region {
  const around = growBox(box, 3 * slip);
  return thinWithin(complementInBox(paintIn(sheets, around), around), box, slip);
}

/** The part of thin ground that is bare: other sheets paint nothing there either. */
export function bareOf(thin: Region, sheets: readonly Sheet[], box: Box): Region {
  return difference(thin, paintIn(sheets, box));
}

function paintIn(sheets: readonly Sheet[], box: Box): Region {
  const painted = sheets.map(({ openings, kerf }) => {
    const near = clipToBox(openings, growBox(box, kerf));
    return kerf > 0 ? offset(near, kerf / 2) : near;
  });
  return union(painted);
}

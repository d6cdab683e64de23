/** Where the bare ground between two colours is thin: as an area. Sheet mm. */
import type { Box, Region } from '../../../geometry/base/polygon-types';
import { growBox } from '../../../geometry/base/ring';
import { clipToBox, complementInBox, offset, union } from '../../../geometry/boolean/index';
import { thinWithin } from '../../../geometry/polygon/thin-within';
import type { Sheet } from '../../../sheet/types';

/** Ground that two sheets leave bare between them, where it is narrower than a slip. */
export function thinGround(sheets: readonly Sheet[], box: Box, slip: number): Region {
  const around = growBox(box, 3 * slip);
  const painted = sheets.map(({ openings, kerf }) => {
    const near = clipToBox(openings, growBox(around, kerf));
    return kerf > 0 ? offset(near, kerf / 2) : near;
  });
  return thinWithin(complementInBox(union(painted), around), box, slip);
}

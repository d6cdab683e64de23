/** Where regions, and the bare ground between two colours, are thin: as areas. Sheet mm. */
import type { Box, Region } from '../../../geometry/base/polygon-types';
import { growBox } from '../../../geometry/base/ring';
import { NEAR_EDGE } from '../../../geometry/base/tolerances';
import { clipToBox, complementInBox, difference, offset, union } from '../../../geometry/boolean/index';
import type { Sheet } from '../../../sheet/types';

/** What no disc of the width covers, in a box of a region; nothing where two corners alone face each other. */
export function thinWithin(region: Region, box: Box, width: number): Region {
  const around = clipToBox(region, growBox(box, 3 * width));
  const covered = offset(offset(offset(around, -width / 2), width / 2), NEAR_EDGE);
  return clipToBox(difference(around, covered), growBox(box, NEAR_EDGE));
}

/** Ground that two sheets leave bare between them, where it is narrower than a slip. */
export function thinGround(sheets: readonly Sheet[], box: Box, slip: number): Region {
  const around = growBox(box, 3 * slip);
  const painted = sheets.map(({ openings, kerf }) => {
    const near = clipToBox(openings, growBox(around, kerf));
    return kerf > 0 ? offset(near, kerf / 2) : near;
  });
  return thinWithin(complementInBox(union(painted), around), box, slip);
}

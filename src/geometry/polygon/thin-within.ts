import type { Box, Region } from '../base/polygon-types';
import { growBox } from '../base/ring';
import { NEAR_EDGE } from '../base/tolerances';
import { clipToBox, difference, offset } from '../boolean/index';

/** What no disc of the width (mm) covers, in a box of a region; nothing where two corners alone face each other. */
export function thinWithin(region: Region, box: Box, width: number): Region {
  const around = clipToBox(region, growBox(box, 3 * width));
  const covered = offset(offset(offset(around, -width / 2), width / 2), NEAR_EDGE);
  return clipToBox(difference(around, covered), growBox(box, NEAR_EDGE));
}

/** Openings that are parts of what they were: cut off squarely, as by a bridge, and nowhere drawn narrower. */
import type { Region } from '../../../geometry/base/polygon-types';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import { perimeterOf } from '../../../geometry/boolean/index';
import { lengthBeyond, outlineOf } from './course';

/** The ends that are new are short beside its sides. Where an opening is drawn narrower, half of its outline is new. */
const ENDS_SHARE = 0.25;

/** Whether most of an opening's outline is as it was before. Both in sheet mm. */
export function isCutOff(now: Region, before: Region): boolean {
  return lengthBeyond(outlineOf(now), outlineOf(before), DRAWN_ALIKE) <= ENDS_SHARE * perimeterOf(now);
}

import { PLAINLY_BESIDE } from '../../../geometry/base/tolerances';

/** Of a size: what differs by less looks the same from where the whole is seen (common practice, no source). */
const SHARE_OF_SIZE = 0.005;
/** mm: hand and eye see more than this at any size. */
const MOST = 0.5;

/**
 * How far two outlines may lie apart, in mm, that are alike to the eye.
 * @param size mm: the diagonal of what is compared
 */
export function alikeWithin(size: number): number {
  return Math.min(MOST, Math.max(PLAINLY_BESIDE, SHARE_OF_SIZE * size));
}

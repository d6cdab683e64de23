/** Widens a thin part of an opening along its course: the outlines that bound it move aside, and stay what they are. */

import { DRAWN_ALIKE, NECK_MARGIN } from '../../geometry/base/tolerances';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import type { EditResult } from '../element/result';
import { GivingBoundary } from './give-way';
import type { Bank } from './movable-boundary';
import { moveOutlines } from './move-outlines';

/** mm beyond the width asked for: points are written to the 10 µm, and curves are fitted. */
export const WRITING_ROOM = DRAWN_ALIKE + NECK_MARGIN;

/**
 * @param width mm, as drawn
 * @param bank what gives way where two banks face each other; the same as for both where there are no two
 */
export function widenOpening(sheet: Sheet, part: ThinPlace, width: number, bank: Bank): EditResult {
  const boundary = new GivingBoundary(sheet, part, width + WRITING_ROOM);
  if (bank !== 'both' && !boundary.hasBanks) return { refusal: 'It has no two sides.' };
  return moveOutlines(sheet, { boundary, bank, width: width + WRITING_ROOM });
}

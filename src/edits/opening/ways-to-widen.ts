/** The ways in which a thin part of an opening can be brought to a width, the plainest first. */
import type { Region } from '../../geometry/base/polygon-types';
import { offset } from '../../geometry/boolean/index';
import { shapeRegion } from '../../sheet/layer/shape-region';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import { openSlot } from '../bridge/open-slot';
import type { EditResult } from '../element/result';
import { enlargeSmall } from './enlarge-small';
import { moveIsland } from './move-island';
import { widenOpening } from './widen-opening';
import { widenStrokes } from './widen-strokes';

export interface Widening {
  readonly outcome: EditResult;
  /** Where the openings may change, in sheet mm. */
  readonly within: Region;
}

/** @param width mm, as drawn */
export function* waysToWiden(sheet: Sheet, part: ThinPlace, width: number): Generator<Widening> {
  const opening = sheet.openings[part.polygon];
  const within = opening ? offset([opening], width) : [];
  for (const place of ['attribute', 'style'] as const) {
    const lines = widenStrokes(sheet, part, width, place);
    if (!lines) continue;
    const wider = offset(lines.strokes.flatMap(shapeRegion), width);
    yield { outcome: lines, within: [...within, ...wider] };
  }
  if (part.kind === 'whole') yield { outcome: enlargeSmall(sheet, part, width), within };
  if (part.kind === 'neck') yield { outcome: moveIsland(sheet, part, width), within };
  const banks = part.kind === 'neck' ? (['both', 'from', 'to'] as const) : (['both'] as const);
  for (const bank of banks) yield { outcome: widenOpening(sheet, part, width, bank), within };
  if (part.kind === 'neck') yield { outcome: openSlot(sheet, part, width), within };
}

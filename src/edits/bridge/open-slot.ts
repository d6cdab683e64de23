/** Mends of slots: wide enough for paint, or closed. */
import { add, distance, interpolate, perpendicular, scale, subtract } from '../../geometry/base/vector';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import type { EditResult } from '../element/result';
import { type Strip, stripAlong } from '../strip/strip';
import { addStrips } from './add-strips';
import { cutStrips, ROUNDING_ROOM } from './cut';
import { cutStripsFromShapes } from './cut-fills';
import { narrowInterval } from './widen-bridge';

/** Makes a slot `width` mm wide (as drawn), all along where it is narrower; the slot is taken as straight. */
export function openSlot(sheet: Sheet, part: ThinPlace, width: number): EditResult {
  const place = part.kind === 'neck' ? narrowInterval(sheet.material, part, width) : undefined;
  if (!place) return { refusal: 'Only a slot that is narrower than that can be opened up.' };
  return addOpening(sheet, stripAlong(place.from, place.to, width + ROUNDING_ROOM, 0.1 * width));
}

/** What is filled grows where it is cut away, and shrinks where it stays. */
function addOpening({ drawing, layer: { reading, shapes } }: Sheet, strip: Strip): EditResult {
  if (reading === 'outlines') return { refusal: 'Draw the slot wider by hand: only its cut lines are in the drawing.' };
  return reading === 'sheet' ? cutStripsFromShapes(drawing, shapes, [strip]) : addStrips(drawing, shapes, [strip]);
}

/** Puts material across a slot, all along the stretch where it is narrower than `width` mm (as drawn). */
export function closeSlot(sheet: Sheet, part: ThinPlace, width: number): EditResult {
  const place = part.kind === 'neck' ? narrowInterval(sheet.material, part, width) : undefined;
  if (!place) return { refusal: 'Only a slot that is narrower than that can be closed.' };
  const { from, to } = place;
  const middle = interpolate(from, to, 0.5);
  const long = distance(from, to);
  const side = scale(perpendicular(subtract(to, from)), width / long);
  return cutStrips(sheet, [stripAlong(subtract(middle, scale(side, 0.5)), add(middle, scale(side, 0.5)), long, 0)]);
}

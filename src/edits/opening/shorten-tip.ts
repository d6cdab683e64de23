/** Takes a point that is too fine off an opening, up to where it is wide enough. */

import type { Region } from '../../geometry/base/polygon-types';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { add, distance, dot, normalise, scale, subtract } from '../../geometry/base/vector';
import { intersection, offset } from '../../geometry/boolean/index';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import { cutStrips } from '../bridge/cut';
import type { EditResult } from '../element/result';
import { polygonOf, stripAlong } from '../strip/strip';
import { GivingBoundary } from './give-way';

export interface ShortenedTip {
  readonly outcome: EditResult;
  /** Sheet mm: what is closed. */
  readonly within: Region;
}

/** mm: what the material keeps beyond the point, so that nothing is left of it. */
const BEYOND = PLAINLY_BESIDE;

/** @param width mm, as drawn, that the opening's new end has at least */
export function shortenTip(sheet: Sheet, part: ThinPlace, width: number): ShortenedTip | undefined {
  const opening = sheet.openings[part.polygon];
  const { thinnest } = new GivingBoundary(sheet, part, width);
  const widest = thinnest.reduce((best, each) => (each.radius > best.radius ? each : best), thinnest[0]!);
  if (part.kind !== 'tip' || !opening || !widest) return undefined;
  const places = thinnest.map(({ place: { at } }) => at);
  const far = (from: typeof widest.centre) =>
    places.reduce((best, each) => (distance(each, from) > distance(best, from) ? each : best));
  const end = far(widest.centre);
  const along = normalise(subtract(end, widest.centre));
  if (!along) return undefined;
  const start = add(widest.centre, scale(along, widest.radius));
  const beyond = places.filter((place) => dot(subtract(place, start), along) > 0);
  const aside = Math.max(
    ...beyond.map((place) => Math.abs(along.x * (place.y - start.y) - along.y * (place.x - start.x))),
  );
  const strip = stripAlong(start, end, 2 * (aside + BEYOND), 0, BEYOND);
  const closed = intersection([opening], [polygonOf(strip)]);
  return { outcome: cutStrips(sheet, [strip]), within: offset(closed, 0.01) };
}

/** What later layers paint over, as checks and fixes tell it. */

import type { ThinPlace } from '../sheet/thin-places';
import type { Piece, Sheet } from '../sheet/types';
import { shownThinPart } from '../stack/shown-thin-part';
import type { Stack } from '../stack/stack';
import { NAME_ROOM, quoted } from '../text/wording';
import type { StackStencil } from './check';
import type { IslandCover } from './finding';

/**
 * What is painted over an island later, if all of it is but a rim narrower than the slip.
 * @param slip mm
 */
export function islandCover(stack: Stack, sheet: Sheet, { polygon }: Piece, slip: number): IslandCover | undefined {
  const layer = numberOf(stack, sheet);
  const cover = layer < 0 ? undefined : stack.laterPaint.over(polygon, layer, slip);
  return cover && { rim: cover.rim, layers: cover.layers.flatMap((number) => stack.layers[number] ?? []) };
}

/** '"Heron" is painted over it', '"Heron" and 2 more layers are painted over all but its rim' */
export function coverInWords({ layers, rim }: IslandCover, room = NAME_ROOM): string {
  const names = layers.map(({ sheet }) => sheet.layer.name);
  const shown = quoted(names.length > 2 ? names.slice(0, 1) : names, room);
  const who = names.length > 2 ? `${shown[0]} and ${names.length - 1} more layers` : shown.join(' and ');
  return `${who} ${names.length > 1 ? 'are' : 'is'} painted over ${rim ? 'all but its rim' : 'it'}`;
}

/** A thin part of an opening, and how it is measured where it shows. */
export interface ShownPart {
  readonly part: ThinPlace;
  readonly shown: ThinPlace;
}

/**
 * The thin parts of a sheet's openings of which something is seen when all is painted.
 * @param isAsked which of them are looked at: what of a part is seen takes far longer to tell than whether it is one's own
 */
export function shownThinOpenings(
  { stack, limits }: StackStencil,
  sheet: Sheet,
  isAsked: (part: ThinPlace) => boolean,
): ShownPart[] {
  const layer = numberOf(stack, sheet);
  const asked = sheet.thinOpenings.filter(isAsked);
  if (layer < 0) return asked.map((part) => ({ part, shown: part }));
  return asked.flatMap((part) => {
    const shown = shownThinPart(stack.laterPaint, layer, sheet, part, limits);
    return shown ? [{ part, shown }] : [];
  });
}

function numberOf({ layers }: Stack, { layer }: Sheet): number {
  return layers.findIndex(({ sheet }) => sheet.layer.id === layer.id);
}

/** What only comes of openings that run off the sheet: told with them, as `edge-opening`, and not apart. */
import { defined } from '../base/defined';
import type { Point } from '../geometry/base/curve-types';
import { endsAtEdge, isOnEdge, meetsEdge } from '../sheet/sheet-edge';
import type { ThinPlace } from '../sheet/thin-places';
import type { Piece, Sheet } from '../sheet/types';
import type { Stencil } from './check';

/** Whether the artist is told of openings at the edge at all: else nothing is left out for them. */
function tellsOfEdge({ config }: Stencil): boolean {
  return config.checks['edge-opening'] !== 'off' && config.accept['edge-opening'] === undefined;
}

/** A piece that comes loose since the edge of the sheet cuts it off: with a margin it would hang on that. */
export function isLooseAtEdge(stencil: Stencil, sheet: Sheet, piece: Piece): boolean {
  return tellsOfEdge(stencil) && endsAtEdge(sheet, piece);
}

/** A place of an opening that is only narrow since the edge of the sheet cuts the opening off there. */
export function isCutOffAtEdge(stencil: Stencil, sheet: Sheet, { kind, from, to, polygon }: ThinPlace): boolean {
  if (!tellsOfEdge(stencil)) return false;
  if (kind === 'whole') return meetsEdge(sheet, defined(sheet.openings[polygon]).outer);
  return isOnEdge(sheet, from) || isOnEdge(sheet, to);
}

/** A tongue that begins or ends at the edge of the sheet, where an opening has taken the rim. */
export function isTongueAtEdge(stencil: Stencil, sheet: Sheet, places: readonly Point[]): boolean {
  return tellsOfEdge(stencil) && places.some((place) => isOnEdge(sheet, place));
}

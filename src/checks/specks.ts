/** Openings and islands that are too small for anybody to see. */
import type { Polygon } from '../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../geometry/base/ring';
import { DRAWN_ALIKE } from '../geometry/base/tolerances';
import { areaOf, boxOfPolygon } from '../geometry/boolean/index';
import type { ThinPlace } from '../sheet/thin-places';
import type { Piece, Sheet } from '../sheet/types';
import { registrationMarks } from '../stack/registration-marks';
import type { Stencil } from './check';

/**
 * mm²: a square of 0.22 mm a side, the dot of a fine pen. What traced pictures leave over is mostly smaller. Common
 * practice, no source.
 */
export const SPECK = 0.05;

/** Whether an opening or an island is told with the other specks of its layer, and not by itself. */
export function isSpeck({ config }: Stencil, polygon: Polygon): boolean {
  return config.checks.sliver !== 'off' && areaOf(polygon) < SPECK;
}

/** The same of the opening that a thin place lies in. */
export function isSpeckOpening(stencil: Stencil, { openings }: Sheet, { polygon }: ThinPlace): boolean {
  const opening = openings[polygon];
  return opening !== undefined && isSpeck(stencil, opening);
}

export interface Specks {
  readonly openings: readonly Polygon[];
  readonly islands: readonly Piece[];
}

/** Those of a layer, without its register marks. */
export function specksOf({ layer, openings, pieces }: Sheet): Specks {
  const small = openings.filter((opening) => areaOf(opening) < SPECK);
  const marks = small.length > 0 ? registrationMarks(layer) : [];
  const isMark = (opening: Polygon): boolean =>
    marks.some(({ box }) => boxContainsBox(growBox(box, DRAWN_ALIKE), boxOfPolygon(opening)));
  return {
    openings: small.filter((opening) => !isMark(opening)),
    islands: pieces.filter(({ island, area }) => island && area < SPECK),
  };
}

/** Openings and islands that are too small for anybody to see. */
import { memoizeByIdentity } from '../geometry/base/derived-facts';
import type { Polygon } from '../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../geometry/base/ring';
import { DRAWN_ALIKE, PLAINLY_BESIDE } from '../geometry/base/tolerances';
import { areaOf, boxOfPolygon } from '../geometry/boolean/index';
import { stripLength } from '../geometry/polygon/strip-length';
import type { Piece, Sheet } from '../sheet/types';
import { registrationMarks } from '../stack/registration-marks';
import type { Stencil } from './check';
import type { SpeckKind } from './finding';

/**
 * mm²: a square of 0.22 mm a side, the dot of a fine pen. What traced pictures leave over is mostly smaller. Common
 * practice, no source.
 */
export const SPECK = 0.05;

/**
 * mm on average, as cut: an island that is no wider is no wider than the kerf of a usual laser, and no bridge is as narrow.
 * Common practice, no source.
 */
export const SLIM = 2 * PLAINLY_BESIDE;

/**
 * mm as cut: an opening that is nowhere as wide is a sixth of the thickness of usual card, and paint dries across it before
 * any comes through. Common practice, no source.
 */
export const HAIRLINE = PLAINLY_BESIDE;

/** Whether an island is told with the other specks of its layer, and not by itself. */
export function isSpeckIsland({ config }: Stencil, piece: Piece): boolean {
  return config.checks.sliver !== 'off' && isSpeck(piece);
}

/** By its area, or as a sliver that is next to no wider than the line that cuts it. */
function isSpeck({ polygon }: Piece): boolean {
  return areaOf(polygon) < SPECK || isSlim(polygon);
}

function isSlim(polygon: Polygon): boolean {
  return areaOf(polygon) < SLIM * stripLength(polygon);
}

/** The same of an opening of a sheet. */
export function isSpeckOpening({ config }: Stencil, sheet: Sheet, opening: Polygon | undefined): boolean {
  if (!opening || config.checks.sliver === 'off') return false;
  return areaOf(opening) < SPECK || hairlinesOf(sheet).has(opening);
}

export interface Specks {
  readonly openings: readonly Polygon[];
  readonly islands: readonly Piece[];
}

/** Those of a layer, without its register marks. */
export function specksOf(sheet: Sheet, kind: SpeckKind): Specks {
  const all = kind === 'speck' ? sheet.openings : [...hairlinesOf(sheet)];
  const own = all.filter((opening) => areaOf(opening) < SPECK === (kind === 'speck'));
  const marks = own.length > 0 ? registrationMarks(sheet.layer) : [];
  const isMark = (opening: Polygon): boolean =>
    marks.some(({ box }) => boxContainsBox(growBox(box, DRAWN_ALIKE), boxOfPolygon(opening)));
  return {
    openings: own.filter((opening) => !isMark(opening)),
    islands: kind === 'speck' ? sheet.pieces.filter((piece) => piece.island && isSpeck(piece)) : [],
  };
}

/** The openings that are hairlines: asked about for each thin place of a sheet, of which there may be thousands. */
const hairlinesOf = memoizeByIdentity(
  'hairlines of a sheet',
  ({ openings, thinOpenings }: Sheet): ReadonlySet<Polygon> => {
    const fine = thinOpenings.filter(({ kind, cutWidth }) => kind === 'whole' && cutWidth < HAIRLINE);
    return new Set(fine.flatMap(({ polygon }) => openings[polygon] ?? []));
  },
);

/** Where a sheet's material or its openings are thin: as drawn, and as the tool cuts them. Millimetres. */
import type { Region } from '../geometry/base/polygon-types';
import { findThinPartsIncrementally } from '../geometry/thickness/incremental';
import { findThinParts } from '../geometry/thickness/index';
import type { ThinPart } from '../geometry/thickness/types';

/** A thin part of a region on a sheet. Its ends, its length and its reach are as drawn. */
export interface ThinPlace extends Omit<ThinPart, 'width'> {
  /** mm, between the drawn lines. */
  readonly drawnWidth: number;
  /** mm, what is left of material, or becomes of an opening, when the tool has taken its kerf; below 0 where all is gone. */
  readonly cutWidth: number;
  /** Where its ends were sought on the curves: what it is on the edges that stand for them. */
  readonly flat?: Pick<ThinPart, 'from' | 'to' | 'width'>;
}

/** A region measured before with the same limit and kerf, and its thin places. */
export interface MeasuredPlaces {
  readonly region: Region;
  readonly places: readonly ThinPlace[];
}

/**
 * The places that are thinner than the limit as cut. A kerf k makes every neck of material narrower by k and every opening
 * wider by k; so drawn widths under limit + k are looked for.
 * @param limit mm
 * @param kerf mm; negative for openings
 * @param earlier what did not change since is taken over
 */
export function findThinPlaces(region: Region, limit: number, kerf: number, earlier?: MeasuredPlaces): ThinPlace[] {
  const width = limit + kerf;
  if (width <= 0) return [];
  const parts = earlier
    ? findThinPartsIncrementally(region, width, { region: earlier.region, parts: earlier.places.map(asPart) })
    : findThinParts(region, width);
  return parts.map((part) => asPlace(part, kerf));
}

function asPlace({ width, ...part }: ThinPart, kerf: number): ThinPlace {
  return { ...part, drawnWidth: width, cutWidth: width - kerf };
}

function asPart({ drawnWidth, cutWidth: _, flat, ...place }: ThinPlace): ThinPart {
  return { ...place, width: drawnWidth, ...flat };
}

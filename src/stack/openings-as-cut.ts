import type { Region } from '../geometry/base/polygon-types';
import { offset } from '../geometry/boolean/index';
import type { SheetMeasures } from '../sheet/types';

/** What is painted through a sheet, in mm: a kerf k widens each opening by k/2 on every side. */
export function openingsAsCut({ openings, kerf }: Pick<SheetMeasures, 'openings' | 'kerf'>): Region {
  return kerf > 0 ? offset(openings, kerf / 2) : openings;
}

/** What a sheet adds to the print that no sheet before it in the same paint has. Sheet mm. */
import { defined } from '../base/defined';
import type { Region } from '../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../geometry/base/ring';
import { DRAWN_ALIKE } from '../geometry/base/tolerances';
import { boxOfPolygon } from '../geometry/boolean/index';
import { paintedRegions } from '../sheet/layer/partner';
import type { Sheet } from '../sheet/types';
import { registrationMarks } from './registration-marks';

/**
 * For each sheet what is sprayed through it. The second sheet of a colour is laid by the register marks that the first has
 * left: they are covered then, and get no second coat.
 * @param sheets in painting order
 */
export function sprayedThrough(sheets: readonly Sheet[]): readonly Region[] {
  const regions = paintedRegions(sheets.map(({ layer }) => layer));
  return sheets.map(({ layer, openings }, i) => {
    const first = defined(regions[i]);
    if (first === i || registrationMarks(defined(sheets[first]).layer).length === 0) return openings;
    const marks = registrationMarks(layer).map(({ box }) => growBox(box, DRAWN_ALIKE));
    return openings.filter((opening) => !marks.some((mark) => boxContainsBox(mark, boxOfPolygon(opening))));
  });
}

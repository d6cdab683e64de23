/** The bridges that stand in a layer, found once for a version of the text, and the one at a place. */

import { limitsOf } from '../../config/limits';
import { standingBridges } from '../../edits/plan/standing/all';
import { type StandingBridge, standingBridgeAt } from '../../edits/plan/standing/detect';
import type { Point } from '../../geometry/base/curve-types';
import type { Report } from '../../report/report';
import { findThinPlaces } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import { effectiveConfig } from '../check/effective-config';
import { placesDrawnAt } from './bridge-at';

export { lengthOf } from '../../edits/plan/standing/all';

/** Wider necks than so many limits are parts of the picture (common practice, no source). */
const MAX_WIDTH = 6;
/** Necks of so many limits are looked at, whatever their sides look like. */
const NARROW = 2.5;

/** All bridges of a layer, row by row. The same list for the same report: a bridge is known by its number in it. */
export function bridgesOf(report: Report, sheet: Sheet): readonly StandingBridge[] {
  return report.session.remember(`bridges standing in ${sheet.layer.id}`, () => {
    const narrow = findThinPlaces(sheet.material, NARROW * limitOf(report), sheet.kerf);
    return standingBridges(sheet, widestOn(report, sheet), narrow);
  });
}

/** The bridge that the command at an offset of the text draws a side of, and its sheet. */
export function bridgeAtOffset(report: Report, offset: number): { sheet: Sheet; bridge: StandingBridge } | undefined {
  for (const sheet of report.sheets) {
    for (const place of placesDrawnAt(sheet, offset)) {
      const bridge = bridgeStandingAt(report, sheet, place);
      if (bridge) return { sheet, bridge };
    }
  }
  return undefined;
}

/** The bridge at a place of a sheet, in or beside it; sheet mm. */
export function bridgeStandingAt(report: Report, sheet: Sheet, place: Point): StandingBridge | undefined {
  return standingBridgeAt(sheet, place, widestOn(report, sheet));
}

/** mm, as drawn. */
function widestOn(report: Report, sheet: Sheet): number {
  return MAX_WIDTH * limitOf(report) + sheet.kerf;
}

function limitOf({ settings }: Report): number {
  return limitsOf(effectiveConfig(settings)).bridge;
}

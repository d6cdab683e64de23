/** The mends that the lightbulb offers for a finding. Each is proven before it is in the list. */

import type { Finding } from '../../checks/finding';
import { formatMillimetres } from '../../config/length';
import { limitsOf } from '../../config/limits';
import { closeSlot, openSlot } from '../../edits/bridge/open-slot';
import { cutIslandAway, removeOpening, widenNeck } from '../../edits/bridge/widen-bridge';
import type { Polygon } from '../../geometry/base/polygon-types';
import type { ThinPart } from '../../geometry/thickness/types';
import type { Fix, Report } from '../../report/report';
import type { Piece, Sheet } from '../../sheet/types';
import { effectiveConfig } from '../check/effective-config';
import { acceptFix } from './accept-fix';
import { type FixCandidate, verifyCandidate } from './candidate';
import { bridgeFixes } from './island-fixes';
import { doubledFixes, openFixes } from './outline-fixes';
import { addRegistrationMarks } from './registration-marks';
import { scaleToFitFix, stateSizeFix } from './size-fixes';
import { spreadFixes } from './spread-colour';

/** In the order in which they are offered: this place, the layer, the file, and last to accept it as it is. */
export function fixesFor(report: Report, finding: Finding): readonly Fix[] {
  const accept = acceptFix(report, finding);
  return [...changesFor(report, finding), ...(accept ? [accept] : [])];
}

function changesFor(report: Report, finding: Finding): Fix[] {
  const { subject, check } = finding;
  if (check === 'unstated-size') return stateSizeFix(report, finding);
  if (check === 'oversize-sheet') return scaleToFitFix(report, finding);
  if (check === 'frame-mismatch') return addRegistrationMarks(report, finding);
  if (subject?.kind === 'overlap' || subject?.kind === 'gap') return spreadFixes(report, finding);
  if (subject?.kind === 'opening') {
    return verifyCandidate(
      report,
      finding,
      subject.sheet,
      removeFixes(subject.sheet, subject.opening, 'Remove this opening'),
    );
  }
  if (subject?.kind === 'island') {
    const { sheet, piece } = subject;
    return [
      ...bridgeFixes(report, sheet, piece),
      ...verifyCandidate(report, finding, sheet, cutAwayFixes(sheet, piece)),
    ];
  }
  if (subject?.kind === 'doubled') return doubledFixes(report, finding, subject);
  if (subject?.kind === 'open') return openFixes(report, finding, subject);
  if (subject?.kind !== 'thin') return [];
  const { sheet, part } = subject;
  if (check === 'thin-bridge') return verifyCandidate(report, finding, sheet, widenFixes(report, sheet, part));
  if (check === 'narrow-opening') {
    return slotCandidates(report, sheet, part).flatMap((attempt) => verifyCandidate(report, finding, sheet, attempt));
  }
  const opening = sheet.openings[part.polygon];
  if (check === 'small-opening' && opening)
    return verifyCandidate(report, finding, sheet, removeFixes(sheet, opening, 'Remove this pinhole'));
  return [];
}

function cutAwayFixes(sheet: Sheet, piece: Piece): FixCandidate {
  return {
    kind: 'cut-island-away',
    title: 'Cut the island away (its place is painted)',
    outcome: cutIslandAway(sheet, piece),
    within: [piece.polygon],
    preferred: false,
  };
}

function widenFixes(report: Report, sheet: Sheet, part: ThinPart): FixCandidate {
  const limit = limitsOf(effectiveConfig(report.settings)).bridge;
  return {
    kind: 'widen-bridge',
    title: `Widen to ${formatMillimetres(limit)}`,
    outcome: widenNeck(sheet, part, limit + sheet.kerf),
    within: [widenedRegion(part, limit + sheet.kerf)],
    preferred: true,
  };
}

function slotCandidates(report: Report, sheet: Sheet, part: ThinPart): FixCandidate[] {
  if (part.kind !== 'neck') return [];
  const limit = limitsOf(effectiveConfig(report.settings)).opening;
  const width = limit - sheet.kerf;
  const within = [widenedRegion(part, limit)];
  return [
    {
      kind: 'open-up',
      title: `Open up to ${formatMillimetres(limit)}`,
      outcome: openSlot(sheet, part, width),
      within,
      preferred: true,
    },
    { kind: 'close-slot', title: 'Close this slot', outcome: closeSlot(sheet, part, width), within, preferred: false },
  ];
}

function removeFixes(sheet: Sheet, opening: Polygon, title: string): FixCandidate {
  return {
    kind: 'remove-opening',
    title,
    outcome: removeOpening(sheet, opening),
    within: [opening],
    preferred: false,
  };
}

/** Where widening a neck may change the sheet: a square about its middle that the widened neck cannot leave. */
function widenedRegion({ from, to, length }: ThinPart, width: number): Polygon {
  const [x, y, half] = [(from.x + to.x) / 2, (from.y + to.y) / 2, length + 2 * width];
  return {
    outer: Float64Array.of(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half),
    holes: [],
  };
}

/** The mends that the lightbulb offers for a finding. Each is proven before it is in the list. */
import { closeSlot, openUp } from '../../edits/bridge/open-slot';
import { cutIslandAway, removeOpening, widenNeck } from '../../edits/bridge/widen-bridge';
import type { Finding } from '../../checks/finding';
import type { Polygon } from '../../geometry/base/polygon-types';
import type { ThinPart } from '../../geometry/thickness/types';
import type { Mend, Report } from '../../report/report';
import { formatMillimetres } from '../../config/length';
import { limitsOf } from '../../config/limits';
import type { Piece, Sheet } from '../../sheet/types';
import { acceptMend } from './accept-fix';
import { offer, type Attempt } from './candidate';
import { configOf } from '../check/effective-config';
import { scaleToFit, stateSize } from './size-fixes';
import { bridgeMends } from './island-fixes';
import { markRegister } from './registration-marks';
import { doubledMends, openMends } from './outline-fixes';
import { spreadMends } from './spread-colour';

/** In the order in which they are offered: this place, the layer, the file, and last to accept it as it is. */
export function mendsFor(report: Report, finding: Finding): readonly Mend[] {
  const accept = acceptMend(report, finding);
  return [...changesFor(report, finding), ...(accept ? [accept] : [])];
}

function changesFor(report: Report, finding: Finding): Mend[] {
  const { subject, check } = finding;
  if (check === 'unstated-size') return stateSize(report, finding);
  if (check === 'oversize-sheet') return scaleToFit(report, finding);
  if (check === 'frame-mismatch') return markRegister(report, finding);
  if (subject?.kind === 'overlap' || subject?.kind === 'gap') return spreadMends(report, finding);
  if (subject?.kind === 'opening') {
    return offer(report, finding, subject.sheet, removing(subject.sheet, subject.opening, 'Remove this opening'));
  }
  if (subject?.kind === 'island') {
    const { sheet, piece } = subject;
    return [...bridgeMends(report, sheet, piece), ...offer(report, finding, sheet, cuttingAway(sheet, piece))];
  }
  if (subject?.kind === 'doubled') return doubledMends(report, finding, subject);
  if (subject?.kind === 'open') return openMends(report, finding, subject);
  if (subject?.kind !== 'thin') return [];
  const { sheet, part } = subject;
  if (check === 'thin-bridge') return offer(report, finding, sheet, widening(report, sheet, part));
  if (check === 'narrow-opening') {
    return slotAttempts(report, sheet, part).flatMap((attempt) => offer(report, finding, sheet, attempt));
  }
  const opening = sheet.openings[part.polygon];
  if (check === 'small-opening' && opening)
    return offer(report, finding, sheet, removing(sheet, opening, 'Remove this pinhole'));
  return [];
}

function cuttingAway(sheet: Sheet, piece: Piece): Attempt {
  return {
    kind: 'cut-island-away',
    title: 'Cut the island away (its place is painted)',
    outcome: cutIslandAway(sheet, piece),
    within: [piece.polygon],
    preferred: false,
  };
}

function widening(report: Report, sheet: Sheet, part: ThinPart): Attempt {
  const limit = limitsOf(configOf(report.settings)).bridge;
  return {
    kind: 'widen-bridge',
    title: `Widen to ${formatMillimetres(limit)}`,
    outcome: widenNeck(sheet, part, limit + sheet.kerf),
    within: [around(part, limit + sheet.kerf)],
    preferred: true,
  };
}

function slotAttempts(report: Report, sheet: Sheet, part: ThinPart): Attempt[] {
  if (part.kind !== 'neck') return [];
  const limit = limitsOf(configOf(report.settings)).opening;
  const width = limit - sheet.kerf;
  const within = [around(part, limit)];
  return [
    {
      kind: 'open-up',
      title: `Open up to ${formatMillimetres(limit)}`,
      outcome: openUp(sheet, part, width),
      within,
      preferred: true,
    },
    { kind: 'close-slot', title: 'Close this slot', outcome: closeSlot(sheet, part, width), within, preferred: false },
  ];
}

function removing(sheet: Sheet, opening: Polygon, title: string): Attempt {
  return {
    kind: 'remove-opening',
    title,
    outcome: removeOpening(sheet, opening),
    within: [opening],
    preferred: false,
  };
}

/** Where widening a neck may change the sheet: a square about its middle that the widened neck cannot leave. */
function around({ from, to, length }: ThinPart, width: number): Polygon {
  const [x, y, half] = [(from.x + to.x) / 2, (from.y + to.y) / 2, length + 2 * width];
  return {
    outer: Float64Array.of(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half),
    holes: [],
  };
}

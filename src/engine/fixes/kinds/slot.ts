/** A slot that is too narrow is opened up, or closed. */

import type { Finding } from '../../../checks/finding';
import { limitsOf } from '../../../config/limits';
import { formatMillimetres } from '../../../config/values';
import { closeSlot as closeIn, openSlot } from '../../../edits/bridge/open-slot';
import type { EditResult } from '../../../edits/element/result';
import type { Result } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { ThinPlace } from '../../../sheet/thin-places';
import type { Sheet } from '../../../sheet/types';
import { effectiveConfig } from '../../check/effective-config';
import { type FixKind, type ProvenChange, proveAttempt } from '../kind';
import { widenedRegion } from '../widened-region';

const FACTS = { scope: 'place', safe: false, effects: [] } as const;

export const openUp: FixKind = {
  ...FACTS,
  kind: 'open-up',
  preferred: true,
  offer: (report, finding) => slotOf(finding) && `Open up to ${formatMillimetres(leastOpening(report))}`,
  prove: (report, finding) => proveSlot(report, finding, openSlot),
};

export const closeSlot: FixKind = {
  ...FACTS,
  kind: 'close-slot',
  preferred: false,
  offer: (_, finding) => slotOf(finding) && 'Close this slot',
  prove: (report, finding) => proveSlot(report, finding, closeIn),
};

/** Points that run out too fine are no slots. */
function slotOf({ subject }: Finding) {
  return subject?.kind === 'thin' && subject.part.kind === 'neck' ? subject : undefined;
}

/** mm */
function leastOpening({ settings }: Report): number {
  return limitsOf(effectiveConfig(settings)).opening;
}

function proveSlot(
  report: Report,
  finding: Finding,
  change: (sheet: Sheet, part: ThinPlace, width: number) => EditResult,
): Result<ProvenChange> | undefined {
  const slot = slotOf(finding);
  if (!slot) return undefined;
  const { sheet, part } = slot;
  const limit = leastOpening(report);
  const outcome = change(sheet, part, limit - sheet.kerf);
  return proveAttempt(report, sheet, { outcome, within: [widenedRegion(part, limit)], gone: [finding] });
}

/** A slot that is too narrow is closed. */

import type { Finding } from '../../../checks/finding';
import { closeSlot as closeIn } from '../../../edits/bridge/open-slot';
import type { Result } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { type FixKind, type ProvenChange, proveAttempt } from '../kind';
import { leastOpening } from '../thin-opening';
import { widenedRegion } from '../widened-region';

export const closeSlot: FixKind = {
  kind: 'close-slot',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: false,
  offer: (_, finding) => slotOf(finding) && 'Close this slot',
  prove: proveSlot,
};

/** Points that run out too fine are no slots. */
function slotOf({ subject }: Finding) {
  return subject?.kind === 'thin' && subject.part.kind === 'neck' ? subject : undefined;
}

function proveSlot(report: Report, finding: Finding): Result<ProvenChange> | undefined {
  const slot = slotOf(finding);
  if (!slot) return undefined;
  const { sheet, part } = slot;
  const limit = leastOpening(report);
  const outcome = closeIn(sheet, part, limit - sheet.kerf);
  return proveAttempt(report, sheet, { outcome, within: [widenedRegion(part, limit)], gone: [finding] });
}

/** A thin part of an opening is brought to the least width that paint needs. */
import type { Finding } from '../../../checks/finding';
import { formatMillimetres } from '../../../config/values';
import { waysToWiden } from '../../../edits/opening/ways-to-widen';
import { isRefusal, type Refusal, type Result } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { ThinPlace } from '../../../sheet/thin-places';
import { type FixKind, type ProvenChange, proveAttempt } from '../kind';
import { leastOpening, thinPartOf } from '../thin-opening';

export const openUp: FixKind = {
  kind: 'open-up',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: true,
  offer: (report, finding) => {
    const thin = thinPartOf(finding);
    return thin && `Widen this ${nameOf(thin.part)} to ${formatMillimetres(leastOpening(report))}`;
  },
  prove: (report, finding) => proveWidening(report, finding),
};

function nameOf({ kind }: ThinPlace): string {
  return kind === 'neck' ? 'slot' : kind === 'tip' ? 'tip' : 'opening';
}

/**
 * The ways are tried from the plainest on. Where none holds, the first that could be had anyway says why, else the first.
 */
function proveWidening(report: Report, finding: Finding): Result<ProvenChange> | undefined {
  const thin = thinPartOf(finding);
  if (!thin) return undefined;
  const { sheet, part } = thin;
  const refusals: Refusal<ProvenChange>[] = [];
  for (const { outcome, within } of waysToWiden(sheet, part, leastOpening(report) - sheet.kerf)) {
    const change = proveAttempt(report, sheet, { outcome, within, gone: [finding] });
    if (!isRefusal(change)) return change;
    refusals.push(change);
  }
  return refusals.find(({ anyway }) => anyway) ?? refusals[0];
}

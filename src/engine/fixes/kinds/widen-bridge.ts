import type { Finding } from '../../../checks/finding';
import { limitsOf } from '../../../config/limits';
import { formatMillimetres } from '../../../config/values';
import { widenNeck } from '../../../edits/bridge/widen-bridge';
import { effectiveConfig } from '../../check/effective-config';
import { type FixKind, proveAttempt } from '../kind';
import { widenedRegion } from '../widened-region';

/** A bridge is brought to the least width. */
export const widenBridge: FixKind = {
  kind: 'widen-bridge',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: true,
  offer: (report, finding) => {
    const { bridge } = limitsOf(effectiveConfig(report.settings));
    return neckOf(finding) && `Widen to ${formatMillimetres(bridge)}`;
  },
  prove: (report, finding) => {
    const neck = neckOf(finding);
    if (!neck) return undefined;
    const { sheet, part } = neck;
    const width = limitsOf(effectiveConfig(report.settings)).bridge + sheet.kerf;
    const outcome = widenNeck(sheet, part, width);
    return proveAttempt(report, sheet, { outcome, within: [widenedRegion(part, width)], gone: [finding] });
  },
};

function neckOf({ subject }: Finding) {
  return subject?.kind === 'thin' ? subject : undefined;
}

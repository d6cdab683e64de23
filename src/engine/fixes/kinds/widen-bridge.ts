import type { Finding } from '../../../checks/finding';
import { limitsOf } from '../../../config/limits';
import { formatMillimetres } from '../../../config/values';
import { widenNeck } from '../../../edits/bridge/widen-bridge';
import { interpolate } from '../../../geometry/base/vector';
import { isRefusal } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { effectiveConfig } from '../../check/effective-config';
import { type FixKind, proveAttempt } from '../kind';
import { planChange } from '../plan-change';
import { bridgeStandingAt } from '../standing-bridges';
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
    const anew = withItsFillets(report, finding, neck);
    if (anew && !isRefusal(anew)) return anew;
    const width = limitsOf(effectiveConfig(report.settings)).bridge + sheet.kerf;
    const outcome = widenNeck(sheet, part, width);
    return proveAttempt(report, sheet, { outcome, within: [widenedRegion(part, width)], gone: [finding] });
  },
};

type Neck = NonNullable<ReturnType<typeof neckOf>>;

/** A bridge whose roots are rounded is drawn anew: a strip over it would leave ends of its fillets beside. */
function withItsFillets(
  report: Report,
  finding: Finding,
  { sheet, part }: Neck,
): ReturnType<typeof proveAttempt> | undefined {
  if (part.kind === 'whole') return undefined;
  const bridge = bridgeStandingAt(report, sheet, interpolate(part.from, part.to, 0.5));
  if (!bridge || bridge.flare === 0) return undefined;
  const { bridge: width } = limitsOf(effectiveConfig(report.settings));
  const planned = planChange(report, sheet, bridge, { width });
  if (typeof planned === 'string') return undefined;
  const { edits, within } = planned;
  return proveAttempt(report, sheet, { outcome: { edits }, within, gone: [finding] });
}

function neckOf({ subject }: Finding) {
  return subject?.kind === 'thin' ? subject : undefined;
}

import type { Finding } from '../../../checks/finding';
import { bridgesFromTongue } from '../../../edits/plan/from-tongue';
import { isRefusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { bridgesAsChange } from '../bridges-as-change';
import { type VerifiedBridges, verifyCut } from '../bridging/cut';
import { bridgeWidthFor, hiddenOn } from '../bridging/plan';
import type { FixKind } from '../kind';

/** The end of a loose tongue is bridged to firm sheet. */
export const tieTongue: FixKind = {
  kind: 'tie-tongue',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: true,
  offer: (_, finding) => (tongueOf(finding) ? 'Bridge the end of this tongue' : undefined),
  prove: (report, finding, title) => {
    const proven = firstThatHolds(report, finding);
    return proven && bridgesAsChange(proven, title);
  },
};

function tongueOf({ subject }: Finding) {
  return subject?.kind === 'tongue' ? subject : undefined;
}

/** The best place that can be proven; else why the best of all cannot. */
function firstThatHolds(report: Report, finding: Finding): Result<VerifiedBridges> | undefined {
  const found = tongueOf(finding);
  if (!found) return undefined;
  const { sheet, tongue } = found;
  const options = { width: bridgeWidthFor(report, sheet), hidden: hiddenOn(report, sheet) };
  let best: Result<VerifiedBridges> | undefined;
  for (const bridge of bridgesFromTongue(sheet, tongue, options)) {
    const proven = verifyCut(report, sheet, [bridge], [], [], [finding]);
    if (!isRefusal(proven)) return proven;
    best ??= proven;
  }
  return best ?? refuse('No straight bridge fits at the end of this tongue.');
}

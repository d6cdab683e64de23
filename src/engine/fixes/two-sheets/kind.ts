/** A layer cut as two sheets, so that no bridge shows in the print. */
import type { Finding } from '../../../checks/finding';
import { count } from '../../../config/values';
import { mapResult } from '../../../report/refusal';
import type { Sheet } from '../../../sheet/types';
import { bridgePreviewOf } from '../bridges-as-change';
import { BRIDGING_EFFECTS } from '../bridging/together';
import type { FixKind } from '../kind';
import { verifyTwoLayers } from './index';

export const twoSheets: FixKind = {
  kind: 'two-sheets',
  spare: 1,
  scope: 'layer',
  safe: false,
  effects: BRIDGING_EFFECTS,
  preferred: false,
  offer: (_, finding) => sheetToDouble(finding) && "Cut this layer as two sheets that cover each other's bridges",
  prove: (report, finding, title) => {
    const sheet = sheetToDouble(finding);
    if (!sheet) return undefined;
    return mapResult(verifyTwoLayers(report, sheet), ({ edits, first, second }) => ({
      edits,
      brings: [...first.brings, ...second.brings],
      bridges: [...first.bridges, ...second.bridges].map(bridgePreviewOf),
      title: `${title} (${count(first.bridges.length, 'bridge')} and ${second.bridges.length}; one coat in their shadows, two elsewhere)`,
    }));
  },
};

/** Not a second sheet, nor one of the colours of a group. */
function sheetToDouble({ subject }: Finding): Sheet | undefined {
  if (subject?.kind !== 'island') return undefined;
  const { with: partner, byPaint } = subject.sheet.layer;
  return partner === undefined && !byPaint ? subject.sheet : undefined;
}

import { formatMillimetres } from '../../../config/values';
import { shortenTip as shorten } from '../../../edits/opening/shorten-tip';
import { type FixKind, proveAttempt } from '../kind';
import { leastOpening, thinPartOf } from '../thin-opening';

/** What of a point is too fine is closed. */
export const shortenTip: FixKind = {
  kind: 'shorten-tip',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: false,
  offer: (_, finding) => {
    const thin = thinPartOf(finding);
    return thin?.part.kind === 'tip' ? `Shorten the tip by ${formatMillimetres(thin.part.reach)}` : undefined;
  },
  prove: (report, finding) => {
    const thin = thinPartOf(finding);
    if (!thin) return undefined;
    const { sheet, part } = thin;
    const shortened = shorten(sheet, part, leastOpening(report) - sheet.kerf);
    if (!shortened) return 'The tip has no plain end.';
    return proveAttempt(report, sheet, { ...shortened, gone: [finding] });
  },
};

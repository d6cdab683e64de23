import type { Subject } from '../../../../checks/finding';
import { removeOpening as removeFrom } from '../../../../edits/bridge/widen-bridge';
import type { Polygon } from '../../../../geometry/base/polygon-types';
import type { Sheet } from '../../../../sheet/types';
import { type FixKind, proveAttempt } from '../../kind';

/** An opening that is of no use goes. */
export const removeOpening: FixKind = {
  kind: 'remove-opening',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: false,
  offer: (_, { subject }) => openingOf(subject) && 'Remove this opening',
  prove: (report, finding) => {
    const place = openingOf(finding.subject);
    if (!place) return undefined;
    const { sheet, opening } = place;
    return proveAttempt(report, sheet, { outcome: removeFrom(sheet, opening), within: [opening], gone: [finding] });
  },
};

function openingOf(subject: Subject | undefined): { readonly sheet: Sheet; readonly opening: Polygon } | undefined {
  if (subject?.kind === 'opening') return subject;
  if (subject?.kind !== 'thin' || subject.part.kind !== 'whole') return undefined;
  const opening = subject.sheet.openings[subject.part.polygon];
  return opening && { sheet: subject.sheet, opening };
}

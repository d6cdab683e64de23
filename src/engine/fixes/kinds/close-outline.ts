import type { Finding } from '../../../checks/finding';
import { closeSubpath } from '../../../edits/outline/close-subpath';
import { regionFromRings } from '../../../geometry/boolean/index';
import { ringOfCurves } from '../../../sheet/layer/shape-region';
import { type FixKind, proveAttempt } from '../kind';

/** An outline that stands alone is closed, and becomes an opening. */
export const closeOutline: FixKind = {
  kind: 'close-outline',
  scope: 'place',
  safe: false,
  effects: ['adds-opening'],
  preferred: true,
  offer: (_, finding) => (openLine(finding) ? 'Close this outline' : undefined),
  prove: (report, finding) => {
    const open = openLine(finding);
    if (!open) return undefined;
    const { sheet, line } = open;
    return proveAttempt(report, sheet, {
      outcome: closeSubpath(sheet.drawing, line),
      within: regionFromRings([ringOfCurves(line.curves)], 'evenodd'),
      gone: [finding],
      effects: closeOutline.effects,
    });
  },
};

function openLine({ subject }: Finding) {
  if (subject?.kind !== 'open') return undefined;
  const [line, ...others] = subject.lines;
  return line && others.length === 0 ? { sheet: subject.sheet, line } : undefined;
}

/** Lines that meet but are not joined become one outline; a stray line goes. */
import type { Finding } from '../../../checks/finding';
import { joinLines as joinIn } from '../../../edits/outline/join-lines';
import { removeLines } from '../../../edits/outline/merge-outlines';
import type { Region } from '../../../geometry/base/polygon-types';
import { joinBoxes, polygonOfBox } from '../../../geometry/base/ring';
import { offset } from '../../../geometry/boolean/index';
import { boundsOf } from '../../../geometry/curve/index';
import type { CutLine } from '../../../sheet/cut-lines/index';
import { type FixKind, proveAttempt } from '../kind';

const FACTS = { scope: 'place', safe: false } as const;

export const joinLines: FixKind = {
  ...FACTS,
  kind: 'join-lines',
  effects: ['adds-opening'],
  preferred: true,
  offer: (_, finding) => {
    const lines = openLinesOf(finding)?.lines ?? [];
    return lines.length > 1 ? `Join these ${lines.length} lines into a closed outline` : undefined;
  },
  prove: (report, finding) => {
    const open = openLinesOf(finding);
    if (!open) return undefined;
    const { sheet, lines } = open;
    const outcome = joinIn(sheet.drawing, lines);
    return proveAttempt(report, sheet, { outcome, within: around(lines), gone: [finding], effects: joinLines.effects });
  },
};

export const removeOpenLine: FixKind = {
  ...FACTS,
  kind: 'remove-open-line',
  effects: [],
  preferred: false,
  offer: (_, finding) => {
    const lines = openLinesOf(finding)?.lines;
    return lines && (lines.length === 1 ? 'Remove this line' : `Remove these ${lines.length} lines`);
  },
  prove: (report, finding) => {
    const open = openLinesOf(finding);
    if (!open) return undefined;
    const { sheet, lines } = open;
    return proveAttempt(report, sheet, { outcome: removeLines(sheet.drawing, lines), within: [], gone: [finding] });
  },
};

function openLinesOf({ subject }: Finding) {
  return subject?.kind === 'open' ? subject : undefined;
}

/** The box round all lines: what they enclose lies in it. */
function around(lines: readonly CutLine[]): Region {
  const box = joinBoxes(lines.flatMap(({ curves }) => curves.map(boundsOf)));
  return offset([polygonOfBox(box)], 0.01);
}

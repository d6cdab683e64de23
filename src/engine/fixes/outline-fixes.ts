/** Mends of the lines themselves: one of two that lie on each other goes, an open one is closed. */

import type { Finding, Subject } from '../../checks/finding';
import type { CheckId } from '../../config/check-id';
import { formatMillimetres } from '../../config/length';
import { closeSubpath } from '../../edits/outline/close-subpath';
import { mergeOutlines, removeLines } from '../../edits/outline/merge-outlines';
import type { Region } from '../../geometry/base/polygon-types';
import { regionFromRings } from '../../geometry/boolean/index';
import type { Fix, Report } from '../../report/report';
import type { CutLine } from '../../sheet/cut-lines/index';
import { ringOfCurves } from '../../sheet/layer/shape-region';
import type { Sheet } from '../../sheet/types';
import { verifyCandidate } from './candidate';

type Doubled = Extract<Subject, { kind: 'doubled' }>;
type Open = Extract<Subject, { kind: 'open' }>;

/** The first that can be proven is preferred. */
export function doubledFixes(report: Report, finding: Finding, subject: Doubled): Fix[] {
  const { sheet, doubled } = subject;
  const { drawing } = sheet;
  const { first, second, whole, stretch } = doubled;
  if (!whole) {
    const title =
      first === second
        ? 'Part this outline in two where it runs back along itself'
        : `Unite the two outlines along ${formatMillimetres(stretch.length)}`;
    const outcome = mergeOutlines(drawing, doubled);
    return verifyCandidate(report, finding, sheet, {
      kind: 'unite-outlines',
      title,
      outcome,
      within: [],
      preferred: true,
    });
  }
  const copies = copiesOf(report, doubled.first);
  const lines = copies.map(({ line }) => line);
  const gone = copies.map((copy) => copy.finding);
  const title =
    lines.length === 1
      ? 'Remove the line that lies on another'
      : `Remove the ${lines.length} lines that lie on another`;
  const removal = {
    kind: 'remove-doubled-line',
    title,
    outcome: removeLines(drawing, lines),
    gone,
    within: cancelled(sheet, first),
    preferred: true,
    mayCome: sheet.layer.reading === 'outlines' ? FOUND_IN_OPENINGS : [],
  };
  const both = {
    kind: 'remove-both-lines',
    title: 'Remove the line and all that lie on it',
    outcome: removeLines(drawing, [first, ...lines]),
    gone,
    within: [],
    preferred: false,
  };
  return [...verifyCandidate(report, finding, sheet, removal), ...verifyCandidate(report, finding, sheet, both)];
}

export function openFixes(report: Report, finding: Finding, { sheet, lines }: Open): Fix[] {
  const [line, ...others] = lines;
  if (!line || others.length > 0) return [];
  const within = regionFromRings([ringOfCurves(line.curves)], 'evenodd');
  const outcome = closeSubpath(sheet.drawing, line);
  return verifyCandidate(report, finding, sheet, {
    kind: 'close-outline',
    title: 'Close this outline',
    outcome,
    within,
    preferred: true,
    mayCome: FOUND_IN_OPENINGS,
  });
}

/** What an opening may turn out to have once it is one. */
const FOUND_IN_OPENINGS: readonly CheckId[] = [
  'floating-island',
  'thin-bridge',
  'narrow-opening',
  'small-opening',
  'loose-tongue',
  'edge-opening',
  'crossed-outline',
];

/** All lines that lie wholly on the same one, each with its finding. */
function copiesOf(report: Report, first: CutLine): { readonly finding: Finding; readonly line: CutLine }[] {
  return report.complete.flatMap((finding) => {
    const { subject } = finding;
    if (subject?.kind !== 'doubled' || !subject.doubled.whole || !isSameLine(subject.doubled.first, first)) return [];
    return [{ finding, line: subject.doubled.second }];
  });
}

function isSameLine(a: CutLine, b: CutLine): boolean {
  return a.shape === b.shape && a.subpath === b.subpath;
}

/** Where only lines are drawn, two on each other count as none: the opening comes back when one of them goes. */
function cancelled(sheet: Sheet, line: CutLine): Region {
  return sheet.layer.reading === 'outlines' ? regionFromRings([ringOfCurves(line.curves)], 'nonzero') : [];
}

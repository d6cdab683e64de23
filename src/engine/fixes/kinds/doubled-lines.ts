/** Of lines that lie on each other one stays, or none; outlines that share a part of their way become one. */

import type { Finding } from '../../../checks/finding';
import { formatMillimetres } from '../../../config/values';
import { mergeOutlines, removeLines } from '../../../edits/outline/merge-outlines';
import type { Region } from '../../../geometry/base/polygon-types';
import { regionFromRings } from '../../../geometry/boolean/index';
import type { Report } from '../../../report/report';
import type { CutLine } from '../../../sheet/cut-lines/index';
import { ringOfCurves } from '../../../sheet/layer/shape-region';
import type { Sheet } from '../../../sheet/types';
import { type FixKind, proveAttempt } from '../kind';

const FACTS = { scope: 'place', safe: false } as const;

export const uniteOutlines: FixKind = {
  ...FACTS,
  kind: 'unite-outlines',
  effects: [],
  preferred: true,
  offer: (_, finding) => {
    const doubled = doubledIn(finding);
    if (!doubled || doubled.whole) return undefined;
    return doubled.first === doubled.second
      ? 'Divide this outline in two where it runs back along itself'
      : `Unite the two outlines along ${formatMillimetres(doubled.stretch.length)}`;
  },
  prove: (report, finding) => {
    const { subject } = finding;
    if (subject?.kind !== 'doubled') return undefined;
    const { sheet, doubled } = subject;
    return proveAttempt(report, sheet, { outcome: mergeOutlines(sheet.drawing, doubled), within: [], gone: [finding] });
  },
};

export const removeDoubledLine: FixKind = {
  ...FACTS,
  kind: 'remove-doubled-line',
  effects: ['adds-opening'],
  preferred: true,
  offer: (report, finding) => {
    const doubled = doubledIn(finding);
    if (!doubled?.whole) return undefined;
    const many = copiesOf(report, doubled.first).length;
    return many === 1 ? 'Remove the line on top of another' : `Remove the ${many} lines on top of another`;
  },
  prove: (report, finding) => {
    const { subject } = finding;
    if (subject?.kind !== 'doubled') return undefined;
    const { sheet, doubled } = subject;
    const copies = copiesOf(report, doubled.first);
    const lines = copies.map(({ line }) => line);
    return proveAttempt(report, sheet, {
      outcome: removeLines(sheet.drawing, lines),
      within: cancelled(sheet, doubled.first),
      gone: copies.map((copy) => copy.finding),
      effects: sheet.layer.reading === 'outlines' ? removeDoubledLine.effects : [],
    });
  },
};

export const removeBothLines: FixKind = {
  ...FACTS,
  kind: 'remove-both-lines',
  effects: [],
  preferred: false,
  offer: (_, finding) => (doubledIn(finding)?.whole ? 'Remove the line and all on top of it' : undefined),
  prove: (report, finding) => {
    const { subject } = finding;
    if (subject?.kind !== 'doubled') return undefined;
    const { sheet, doubled } = subject;
    const copies = copiesOf(report, doubled.first);
    const outcome = removeLines(sheet.drawing, [doubled.first, ...copies.map(({ line }) => line)]);
    return proveAttempt(report, sheet, { outcome, within: [], gone: copies.map((copy) => copy.finding) });
  },
};

function doubledIn({ subject }: Finding) {
  return subject?.kind === 'doubled' ? subject.doubled : undefined;
}

/** All lines that lie wholly on the same one, each with its finding. */
function copiesOf(report: Report, first: CutLine): { readonly finding: Finding; readonly line: CutLine }[] {
  return report.complete.flatMap((finding) => {
    const doubled = doubledIn(finding);
    return doubled?.whole && isSameLine(doubled.first, first) ? [{ finding, line: doubled.second }] : [];
  });
}

function isSameLine(a: CutLine, b: CutLine): boolean {
  return a.shape === b.shape && a.subpath === b.subpath;
}

/** Where only lines are drawn, two on each other count as none: the opening comes back when one of them goes. */
function cancelled(sheet: Sheet, line: CutLine): Region {
  return sheet.layer.reading === 'outlines' ? regionFromRings([ringOfCurves(line.curves)], 'nonzero') : [];
}

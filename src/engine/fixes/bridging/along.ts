/** What comes with bridges though it does not speak against them: told, so that nobody is surprised by the next check. */
import { doubledCut } from '../../../checks/doubled-cut/check';
import { edgeOpening } from '../../../checks/edge-opening/check';
import type { Finding } from '../../../checks/finding';
import { looseTongue } from '../../../checks/loose-tongue/check';
import type { CheckId } from '../../../config/check-id';
import { count, formatMillimetres } from '../../../config/values';
import { LONGEST_BRIDGE } from '../../../edits/plan/index';
import { liftingOn } from '../../../edits/plan/lifting';
import { WEIGHTS } from '../../../edits/plan/search/weights';
import type { Point } from '../../../geometry/base/curve-types';
import { SAME_FINDING } from '../../../geometry/base/tolerances';
import { distance, interpolate } from '../../../geometry/base/vector';
import type { BroughtFinding } from '../../../report/fix';
import type { Report } from '../../../report/report';
import { bendingOf } from '../../../sheet/deflection';
import { effectiveConfig } from '../../check/effective-config';
import type { PlannedBridge } from './cut';

/** What one cut in two is called where the next check tells each half. */
const PARTED: readonly { readonly check: CheckId; readonly one: string }[] = [
  { check: looseTongue.meta.id, one: 'loose tongue' },
  { check: doubledCut.meta.id, one: 'line that is cut twice' },
  { check: edgeOpening.meta.id, one: "opening at the sheet's edge" },
];

/** New ones among these findings that no proof told: halves of what was there before, mostly. */
export function toldBeside(before: Report, after: Report, told: readonly BroughtFinding[]): BroughtFinding[] {
  return PARTED.flatMap(({ check, one }) => {
    const of = ({ complete }: Report): Finding[] => complete.filter((finding) => finding.check === check);
    const old = of(before);
    const now = of(after);
    const more = now.length - old.length - told.filter((each) => each.check === check).length;
    if (more <= 0) return [];
    const places = now.flatMap(({ at }) => (at && !old.some((each) => isNear(each, at)) ? [at] : []));
    const where = places.slice(0, more).map(({ x, y }) => `${x.toFixed(1)}, ${y.toFixed(1)} mm`);
    const said = where.length > 0 ? ` at ${where.slice(0, 3).join('; ')}` : '';
    return [{ check, message: `${count(more, one)} more, as a bridge parts what was one${said}.` }];
  });
}

function isNear({ at }: Finding, place: { readonly x: number; readonly y: number }): boolean {
  return at !== undefined && distance(at, place) < SAME_FINDING;
}

/** What is amiss with bridges for which there was no better place: a sentence for a layer and each of the two. */
export function toldOfPlan(report: Report, bridges: readonly PlannedBridge[]): BroughtFinding[] {
  return [...toldOfLifting(report, bridges), ...toldOfLength(report, bridges)];
}

/** Islands whose bridges hold them less well than they ought to. */
function toldOfLifting(report: Report, bridges: readonly PlannedBridge[]): BroughtFinding[] {
  const bending = bendingOf(effectiveConfig(report.settings));
  return report.sheets.flatMap((sheet) => {
    const own = bridges.filter(({ layerId }) => layerId === sheet.layer.id);
    const [worst, ...others] = liftingOn(sheet, own, bending);
    if (!worst) return [];
    const message =
      `Island ${firstOf(worst.island.label, others)}: lifts ${howFar(worst.lift)} under spray, as no ` +
      `bridge of at most ${formatMillimetres(LONGEST_BRIDGE)} holds it better. Weigh it down, or cut two sheets.`;
    return [{ check: looseTongue.meta.id, message }];
  });
}

/** Bridges that are longer than they had better be. */
function toldOfLength({ sheets }: Report, bridges: readonly PlannedBridge[]): BroughtFinding[] {
  const { value: long } = WEIGHTS.long;
  return sheets.flatMap(({ layer }) => {
    const own = bridges.filter(({ layerId, length }) => layerId === layer.id && length > long);
    const [longest, ...others] = own.sort((a, b) => b.length - a.length);
    if (!longest) return [];
    const message =
      `Bridge ${firstOf(interpolate(longest.from, longest.to, 0.5), others)}: ${formatMillimetres(longest.length)} long; over ` +
      `${formatMillimetres(long)} it bends easily. Remove the island, cut two sheets, or redraw what is round it.`;
    return [{ check: looseTongue.meta.id, message }];
  });
}

/** The place of the worst, and how many there are besides. */
function firstOf({ x, y }: Point, others: readonly unknown[]): string {
  const more = others.length > 0 ? ` and ${others.length} more` : '';
  return `at ${x.toFixed(1)}, ${y.toFixed(1)} mm${more}`;
}

/** mm: what lifts farther is beyond what the model knows. */
const FAR = 10;

function howFar(lift: number): string {
  return lift > FAR ? `over ${formatMillimetres(FAR)}` : formatMillimetres(lift);
}

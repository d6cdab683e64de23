/** What comes with bridges though it does not speak against them: told, so that nobody is surprised by the next check. */
import { doubledCut } from '../../../checks/doubled-cut/check';
import { edgeOpening } from '../../../checks/edge-opening/check';
import type { Finding } from '../../../checks/finding';
import { looseTongue } from '../../../checks/loose-tongue/check';
import type { CheckId } from '../../../config/check-id';
import { count } from '../../../config/values';
import { SAME_FINDING } from '../../../geometry/base/tolerances';
import { distance } from '../../../geometry/base/vector';
import type { BroughtFinding } from '../../../report/fix';
import type { Report } from '../../../report/report';

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

/** All bridges of a layer looked at together once they are proven: where islands lift too far on them, more are put beside. */
import { planFurther } from '../../../edits/plan/further';
import type { Bridge } from '../../../edits/plan/index';
import { liftingOn } from '../../../edits/plan/lifting';
import { isRefusal } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { bendingOf } from '../../../sheet/deflection';
import type { Sheet } from '../../../sheet/types';
import { effectiveConfig } from '../../check/effective-config';
import { BESIDE } from './attempt';
import { examineCut, type ProvenCut } from './cut';
import { oneAfterTheOther } from './joined';
import { type BridgePlanChoice, optionsOf } from './plan';

/** So many proofs are made of further bridges. */
const MOST_PROOFS = 8;

/**
 * @param report of the text without bridges
 * @param proven of that text
 */
export function stiffened(report: Report, sheet: Sheet, proven: ProvenCut, choice: BridgePlanChoice): ProvenCut {
  const { near, alone, count, shortestOnly, apartFrom, ...options } = optionsOf(report, sheet, choice);
  if (near || alone || shortestOnly || apartFrom || typeof count === 'number') return proven;
  const bending = bendingOf(effectiveConfig(report.settings));
  let made = proven;
  const avoid: Bridge[] = [];
  for (let tried = 0; tried < MOST_PROOFS; tried += 1) {
    if (liftingOn(sheet, made.bridges, bending).length === 0) return made;
    const beside = avoid.length > 0 && { apartFrom: { bridges: avoid, distance: BESIDE } };
    const more = planFurther(sheet, made.bridges, { ...options, ...beside });
    if (more.length === 0) return made;
    const now = made.after.sheets.find(({ layer }) => layer.id === sheet.layer.id);
    if (!now) return made;
    const result = examineCut(made.after, now, more, []);
    if (isRefusal(result)) avoid.push(...(result.blamed.size > 0 ? result.blamed : more));
    else made = oneAfterTheOther(made, result, report.text);
  }
  return made;
}

/** Changes that could be made, and what becomes of them: those that are proven are mends. */

import type { Finding } from '../../checks/finding';
import type { CheckId } from '../../config/check-id';
import type { EditResult } from '../../edits/element/result';
import type { Region } from '../../geometry/base/polygon-types';
import type { Fix, Report } from '../../report/report';
import type { Sheet } from '../../sheet/types';
import { type Expectations, verify } from './verify';

/** A mend that has not been proven yet. */
export interface FixCandidate {
  readonly kind: string;
  readonly title: string;
  readonly outcome: EditResult;
  /** Where it may change the openings, in sheet mm. */
  readonly within: Region;
  readonly preferred: boolean;
  /** The findings that go with it; the one it is made for where nothing is said. */
  readonly gone?: readonly Finding[];
  readonly mayCome?: readonly CheckId[];
}

/** The attempt as a mend, if it could be made and is proven. */
export function verifyCandidate(report: Report, finding: Finding, sheet: Sheet, attempt: FixCandidate): Fix[] {
  const { outcome, within, kind, title, preferred, gone = [finding], mayCome = [] } = attempt;
  if ('refusal' in outcome) return [];
  const pledge: Expectations = { gone, within: new Map([[sheet.layer.name, within]]), mayCome };
  if (typeof verify(report, outcome.edits, pledge) === 'string') return [];
  return [{ kind, title, check: finding.check, edits: outcome.edits, preferred, safe: false }];
}

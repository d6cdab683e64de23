/** Register marks in every sheet of the stack. */
import type { Fix } from '../../../report/fix';
import type { Result } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { fixResult } from '../fix-of';
import type { FixKind } from '../kind';
import { lacksMarks, proveMarks } from '../registration-marks';

const TITLE = 'Add register marks to every sheet';

export const registerStack: FixKind = {
  kind: 'register-stack',
  scope: 'stack',
  safe: false,
  effects: [],
  preferred: true,
  offer: (report) => (lacksMarks(report) ? TITLE : undefined),
  prove: (report, finding) => proveMarks(report, [finding]),
};

/**
 * The same where no finding asks for it.
 * @returns why it cannot be done, where it cannot; undefined where the marks are there, or would be of no use
 */
export function addRegistrationMarks(report: Report): Result<Fix> | undefined {
  if (!lacksMarks(report)) return undefined;
  return fixResult(report, registerStack, { title: TITLE }, proveMarks(report, []));
}

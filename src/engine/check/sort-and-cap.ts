/** The order and the number of findings that hosts are given. */

import type { Finding } from '../../checks/finding';
import { type CheckId, severityRank } from '../../config/check-id';
import { idOfRest, type ReportedFinding } from '../../report/finding-id';

/** Editors draw a few hundred underlines for a file; beyond that a count says more than another line. */
const MAX_FINDINGS_PER_CHECK = 200;

/**
 * Most serious first, then in the order of the text; those of one check at one place of the text from the top of the sheet to
 * its bottom: so the order does not depend on what was measured again.
 */
export function sortFindings<F extends Finding>(findings: readonly F[]): F[] {
  const checks = [...new Set(findings.map(({ check }) => check))];
  const turn = new Map(checks.map((check, i) => [check, i]));
  const turnOf = ({ check }: Finding) => turn.get(check) ?? 0;
  return [...findings].sort(
    (a, b) =>
      severityRank(b.severity) - severityRank(a.severity) ||
      a.span.from - b.span.from ||
      a.span.to - b.span.to ||
      turnOf(a) - turnOf(b) ||
      comparePlaces(a, b),
  );
}

function comparePlaces({ at: a }: Finding, { at: b }: Finding): number {
  return placed(a?.y) - placed(b?.y) || placed(a?.x) - placed(b?.x);
}

/** Whole µm: what is measured again may differ in its last digits. What lies nowhere comes first. */
const placed = (mm: number | undefined): number => (mm === undefined ? -Number.MAX_VALUE : Math.round(1000 * mm));

/** Keeps so many findings of each check, and adds one that says how many more there were. */
export function capFindings(findings: readonly ReportedFinding[]): ReportedFinding[] {
  const counts = new Map<CheckId, number>();
  const kept: ReportedFinding[] = [];
  for (const finding of findings) {
    const count = (counts.get(finding.check) ?? 0) + 1;
    counts.set(finding.check, count);
    if (count <= MAX_FINDINGS_PER_CHECK) kept.push(finding);
  }
  for (const [check, count] of counts) {
    const first = kept.find((finding) => finding.check === check);
    if (count > MAX_FINDINGS_PER_CHECK && first) kept.push(leftOut(first, count - MAX_FINDINGS_PER_CHECK));
  }
  return kept;
}

function leftOut({ id, check, severity, span }: ReportedFinding, more: number): ReportedFinding {
  return {
    id: idOfRest(id),
    check,
    severity,
    span,
    related: [],
    leftOut: more,
    message: `${more} more findings of ${check} in this file are not listed.`,
  };
}

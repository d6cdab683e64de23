/** The order and the number of findings that hosts are given. */
import { rankOf, type CheckId } from '../../config/check-id';
import type { Finding } from '../../checks/finding';

/** Editors draw a few hundred underlines for a file; beyond that a count says more than another line. */
const MAX_FINDINGS_PER_CHECK = 200;

/** Most serious first, then in the order of the text. */
export function sortFindings(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) => rankOf(a.severity) - rankOf(b.severity) || a.span.from - b.span.from || a.span.to - b.span.to,
  );
}

/** Keeps so many findings of each check, and adds one that says how many more there were. */
export function capFindings(findings: readonly Finding[]): Finding[] {
  const counts = new Map<CheckId, number>();
  const kept: Finding[] = [];
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

function leftOut({ check, severity, span }: Finding, more: number): Finding {
  return {
    check,
    severity,
    span,
    related: [],
    message: `${more} more findings of ${check} in this file are left out.`,
  };
}

/** How serious the editor's settings make the findings of a check, on top of what `tombolo.json` says. */
import { SEVERITIES, type Severity } from '../../config/check-id';
import type { DocumentFacts } from '../../protocol/facts';

/** By the names of checks. */
export type ShownSeverities = Readonly<Record<string, Severity | 'off'>>;

/** Takes what the editor sent; what is no severity is left out. */
export function readSeverities(sent: unknown): ShownSeverities {
  if (typeof sent !== 'object' || sent === null) return {};
  const known: readonly unknown[] = [...SEVERITIES, 'off'];
  return Object.fromEntries(Object.entries(sent).filter(([, severity]) => known.includes(severity)));
}

/** The facts with their findings, and the counts of those, as they are to be shown: the order stays. */
export function withSeverities(facts: DocumentFacts, severities: ShownSeverities): DocumentFacts {
  if (Object.keys(severities).length === 0) return facts;
  const findings = withShown(facts.findings, severities);
  const counts = { error: 0, warning: 0, info: 0, hint: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return { ...facts, findings, summary: { ...facts.summary, counts } };
}

/** Findings as they are to be shown. */
export function withShown<F extends { readonly check: string; readonly severity: Severity }>(
  findings: readonly F[],
  severities: ShownSeverities,
): F[] {
  return findings.flatMap((finding) => {
    const severity = Object.hasOwn(severities, finding.check) ? severities[finding.check] : finding.severity;
    return severity === 'off' || severity === undefined ? [] : [{ ...finding, severity }];
  });
}

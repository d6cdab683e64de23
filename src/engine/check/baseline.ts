/** What `tombolo.json` lets pass: checks that are accepted everywhere, and findings that were there before. */
import type { Finding } from '../../checks/finding';
import type { BaselineEntry, Config } from '../../config/types';
import { SAME_FINDING } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import { isAcceptable } from './known-checks';

/** mm: a finding of the baseline may move so far before it counts as another. */
const SAME_PLACE = 2 * SAME_FINDING;

/** Findings without those that the configuration lets pass. */
export function withoutBaseline(findings: readonly Finding[], { accept, baseline }: Config): Finding[] {
  return findings.filter(
    (finding) =>
      !isAcceptable(finding.check) ||
      (accept[finding.check] === undefined && !baseline.some((entry) => matches(entry, finding))),
  );
}

function matches({ check, layer, at }: BaselineEntry, finding: Finding): boolean {
  if (check !== finding.check || layer !== finding.layer) return false;
  if (!at || !finding.at) return !at && !finding.at;
  return distance({ x: at[0], y: at[1] }, finding.at) <= SAME_PLACE;
}

/** Entries that let pass what counts against a stencil now: errors and warnings. Places are rounded to 0.1 mm. */
export function baselineOf(findings: readonly Finding[]): BaselineEntry[] {
  const entries = findings
    .filter(({ check, severity }) => isAcceptable(check) && (severity === 'error' || severity === 'warning'))
    .map(({ check, layer, at }): BaselineEntry => ({ check, layer, at: at && [rounded(at.x), rounded(at.y)] }));
  return [...new Map(entries.map((entry) => [JSON.stringify(entry), entry])).values()];
}

const rounded = (value: number): number => Math.round(value * 10) / 10 + 0;

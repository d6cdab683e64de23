/** What `tombolo.json` lets pass: checks that are accepted everywhere, and findings that were there before. */
import type { Finding } from '../../checks/finding';
import type { BaselineEntry, Config } from '../../config/types';
import { SAME_FINDING } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import type { Passed } from '../../report/report';
import { isAcceptable } from './known-checks';

/** mm: a finding of the baseline may move so far before it counts as another. */
const SAME_PLACE = 2 * SAME_FINDING;

/**
 * Findings without those that the configuration lets pass.
 * @param file what `tombolo.json` calls the file; undefined where nobody said: then entries for one file do not hold
 */
export function throughBaseline(
  findings: readonly Finding[],
  { accept, baseline }: Config,
  file: string | undefined,
): { readonly kept: Finding[]; readonly passed: Passed } {
  const own = baseline.filter((entry) => entry.file === undefined || entry.file === file);
  const kept: Finding[] = [];
  const entries = new Set<BaselineEntry>();
  let count = 0;
  for (const finding of findings) {
    if (isAcceptable(finding.check) && accept[finding.check] !== undefined) continue;
    const matching = isAcceptable(finding.check) ? own.filter((entry) => matches(entry, finding)) : [];
    if (matching.length === 0) kept.push(finding);
    else count += 1;
    for (const entry of matching) entries.add(entry);
  }
  return { kept, passed: { count, entries: [...entries] } };
}

function matches({ check, layer, at }: BaselineEntry, finding: Finding): boolean {
  if (check !== finding.check || layer !== finding.layer) return false;
  if (!at || !finding.at) return !at && !finding.at;
  return distance({ x: at[0], y: at[1] }, finding.at) <= SAME_PLACE;
}

/**
 * Entries that let pass what counts against a stencil now: errors and warnings. Places are rounded to 0.1 mm.
 * @param file what `tombolo.json` calls the file; without it the entries hold for every file
 */
export function baselineOf(findings: readonly Finding[], file?: string): BaselineEntry[] {
  const entries = findings
    .filter(({ check, severity }) => isAcceptable(check) && (severity === 'error' || severity === 'warning'))
    .map(({ check, layer, at }): BaselineEntry => ({ check, file, layer, at: at && [rounded(at.x), rounded(at.y)] }));
  return [...new Map(entries.map((entry) => [JSON.stringify(entry), entry])).values()];
}

const rounded = (value: number): number => Math.round(value * 10) / 10 + 0;

/** What no fix may do. */
import type { Fix, Report } from '../../src/engine/index';
import type { Fault } from './judge';
import { isWellFormed } from './well-formed';

/** Checks with warnings or errors. */
function seriousChecks({ complete }: Report): Set<string> {
  return new Set(
    complete.flatMap(({ check: id, severity }) => (severity === 'warning' || severity === 'error' ? [id] : [])),
  );
}

export function faultsOfFix(before: Report, fix: Fix, after: Report): Fault[] {
  const faults: Fault[] = [];
  const had = seriousChecks(before);
  const told = new Set<string>(fix.brings.map(({ check: id }) => id));
  for (const id of seriousChecks(after)) {
    if (had.has(id)) continue;
    if (!told.has(id)) faults.push({ kind: 'worse fix', words: `${fix.kind}: ${fix.title} brings ${id}` });
    else if (fix.preferred && /; leaves|anyway:|come to light/.test(fix.title))
      faults.push({ kind: 'worse fix preferred', words: `${fix.kind}: ${fix.title}` });
  }
  if (!isWellFormed(after.text) && isWellFormed(before.text))
    faults.push({ kind: 'not well-formed', words: fix.title });
  return faults;
}

/** How titles and refusals name the faults that a change leaves behind. */
import type { Finding } from '../../checks/finding';
import { metaOf } from '../check/known-checks';

/** "a loose tongue", "a loose tongue and 2 slots that are too narrow": each kind of fault once. */
export function namesOf(findings: readonly Pick<Finding, 'check'>[]): string {
  const counts = new Map<Finding['check'], number>();
  for (const { check } of findings) counts.set(check, (counts.get(check) ?? 0) + 1);
  const names = [...counts].map(([check, times]) => nameOf(check, times));
  const last = names.pop() ?? '';
  return names.length === 0 ? last : `${names.join(', ')} and ${last}`;
}

function nameOf(check: Finding['check'], times: number): string {
  const [one, many] = metaOf(check)?.afterFix?.names ?? [`a new ${check}`, `new findings of ${check}`];
  return times === 1 ? one : `${times} ${many}`;
}

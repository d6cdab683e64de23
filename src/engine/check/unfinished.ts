/** What a run says of itself where its time was over before all was done. */
import type { Finding } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';

export const UNFINISHED: CheckMeta = {
  id: 'unfinished',
  summary: 'A run that stopped before all was looked at.',
  severity: 'warning',
  reads: 'file',
  fixes: [],
  acceptable: false,
  // Of what was not looked at nobody knows whether it got worse.
  afterFix: { refuses: true },
};

/** @param skipped what was not done, as the message names it */
export function unfinished(skipped: readonly string[]): Finding[] {
  if (skipped.length === 0) return [];
  return [
    {
      check: UNFINISHED.id,
      severity: UNFINISHED.severity,
      message:
        `The time for this run was over before these were done: ${skipped.join(', ')}. ` +
        'Nothing is known of them; split the file, or check it on the command line.',
      span: { from: 0, to: 0 },
      related: [],
    },
  ];
}

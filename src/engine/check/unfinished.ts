/** What a run says of itself where it ended before all was done. */

import type { StopReason } from '../../base/checkpoint';
import type { Finding } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';
import type { Skipped } from './run-watch';

export const UNFINISHED: CheckMeta = {
  id: 'unfinished',
  summary: 'A run that stopped before all was looked at.',
  outcome: 'take longer to check than the time that there is',
  severity: 'warning',
  reads: 'file',
  fixes: [],
  acceptable: false,
  // Of what was not looked at nobody knows whether it got worse.
  afterFix: { refuses: true },
};

const LACKING: Readonly<Record<StopReason, string>> = {
  cancelled: 'This run was cancelled',
  time: 'The time for this run was over',
  memory: 'The memory for this run was used up',
};

const SPLIT = 'split the file, or check it on the command line.';

export function unread(reason: StopReason): Finding {
  return unfinishedFinding(`${LACKING[reason]} before the drawing was read. Nothing is known of it; ${SPLIT}`);
}

export function unfinished(skipped: readonly Skipped[]): Finding[] {
  const [first] = skipped;
  if (!first) return [];
  const names = skipped.map(({ name }) => name).join(', ');
  const what = `${LACKING[first.reason]} before these were done: ${names}.`;
  return [unfinishedFinding(`${what} Nothing is known of them; ${SPLIT}`)];
}

function unfinishedFinding(message: string): Finding {
  const { id: check, severity } = UNFINISHED;
  return { check, severity, message, span: { from: 0, to: 0 }, related: [] };
}

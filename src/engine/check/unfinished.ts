/** What a run says of itself where it ended before all was done. */

import type { StopReason } from '../../base/checkpoint';
import type { Finding } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';
import { shortened, type Wording } from '../../text/wording';
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
  cancelled: 'Check was cancelled',
  time: 'Check ran out of time',
  memory: 'Check ran out of memory',
};

const SPLIT = 'Split the file, or check it on the command line.';

/** Characters for the names of the parts that are left. */
const PARTS_ROOM = 60;

export function unread(reason: StopReason): Finding {
  return unfinishedFinding({
    message: `${LACKING[reason]} before the drawing was read: nothing is known of it.`,
    detail: SPLIT,
  });
}

export function unfinished(skipped: readonly Skipped[]): Finding[] {
  const [first] = skipped;
  if (!first) return [];
  const names = skipped.map(({ name }) => name).join(', ');
  return [
    unfinishedFinding({
      message: `${LACKING[first.reason]}; not done: ${shortened(names, PARTS_ROOM)}.`,
      detail: `Nothing is known of these: ${names}. ${SPLIT}`,
    }),
  ];
}

function unfinishedFinding(wording: Wording): Finding {
  const { id: check, severity } = UNFINISHED;
  return { check, severity, ...wording, span: { from: 0, to: 0 }, related: [] };
}

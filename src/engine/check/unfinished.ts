/** What a run says of itself where it ended before all was done. */

import type { StopReason } from '../../base/checkpoint';
import type { Finding } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';
import { shortened, type Wording } from '../../text/wording';
import { internalFinding } from './fault';
import type { Lack, Skipped } from './run-watch';

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
  work: 'Check stopped early',
  time: 'Check ran out of time',
  memory: 'Check ran out of memory',
};

const SPLIT = 'Split the file, or run "tombolo check --no-limit", which takes as long as it needs.';

const MUCH_WORK =
  'The drawing takes far more work than its length suggests, as thousands of dashes, copies or lines over each other do. ';

function cureFor(reason: StopReason): string {
  return reason === 'work' ? MUCH_WORK + SPLIT : SPLIT;
}

/** Characters for the names of the parts that are left. */
const PARTS_ROOM = 60;

/** So many layers that were not done are pointed at. */
const MOST_PLACES = 20;

export function unread(lack: Lack): Finding {
  if (typeof lack === 'object') return internalFinding('the drawing as a whole', lack);
  return unfinishedFinding({
    message: `${LACKING[lack]} before the drawing was read: nothing is known of it.`,
    detail: cureFor(lack),
  });
}

/** One finding for all that the budget did not suffice for, and one for each part that failed. */
export function gapsOf(skipped: readonly Skipped[]): Finding[] {
  const failed = skipped.flatMap(({ name, lack }) => (typeof lack === 'object' ? [internalFinding(name, lack)] : []));
  const ended = skipped.flatMap(({ lack, ...rest }) => (typeof lack === 'object' ? [] : [{ lack, ...rest }]));
  const [first] = ended;
  if (!first) return failed;
  const names = ended.map(({ name }) => name).join(', ');
  const unfinished = unfinishedFinding({
    message: `${LACKING[first.lack]}; not done: ${shortened(names, PARTS_ROOM)}.`,
    detail: `Nothing is known of these: ${names}. ${cureFor(first.lack)}`,
  });
  const related = ended.flatMap(({ name, span }) => (span ? [{ message: `not done: ${name}`, span }] : []));
  return [{ ...unfinished, related: related.slice(0, MOST_PLACES) }, ...failed];
}

function unfinishedFinding(wording: Wording): Finding {
  const { id: check, severity } = UNFINISHED;
  return { check, severity, ...wording, span: { from: 0, to: 0 }, related: [] };
}

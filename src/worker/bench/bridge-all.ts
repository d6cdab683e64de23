/** Every island of a document at once: bridged, or cut away where later layers paint over it. */
import { bridgeIslands, coveredIslands, cutCoveredIslands, type TextEdit } from '../../engine/index';
import type { BridgedIslands, BridgeIslandsParams } from '../../protocol/index';
import type { CheckedDocument } from '../documents/checked-document';

export function bridged(
  { report, version }: CheckedDocument,
  { cutCovered = false }: Pick<BridgeIslandsParams, 'cutCovered'>,
): BridgedIslands {
  const covered = report.sheets.reduce((sum, sheet) => sum + coveredIslands(report, sheet).length, 0);
  const cut = cutCovered ? cutCoveredIslands(report, report.sheets).cut : undefined;
  const { text, edits, bridges, refusals } = bridgeIslands(cut?.after ?? report, {});
  return {
    version,
    edits: cut ? between(report.text, text) : edits,
    bridges,
    refusals: refusals.map(({ message }) => message),
    covered,
    cutAway: cut?.cuts.reduce((sum, { islands }) => sum + islands.size, 0) ?? 0,
  };
}

/** One edit that makes a text of another: of what they do not begin or end alike with. */
function between(before: string, after: string): TextEdit[] {
  if (before === after) return [];
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head += 1;
  let tail = 0;
  while (tail < most - head && before.at(-1 - tail) === after.at(-1 - tail)) tail += 1;
  const span = { from: head, to: before.length - tail };
  return [{ span, text: after.slice(head, after.length - tail) }];
}

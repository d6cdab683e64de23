/** One fix after the other, as long as one holds: each is proven against the text that the last one left. */

import type { Region } from '../../geometry/base/polygon-types';
import { WRITTEN_STEP } from '../../geometry/base/tolerances';
import { areaOf, difference, union } from '../../geometry/boolean/index';
import { symmetricDifference } from '../../geometry/polygon/diff';
import type { ReportedFinding } from '../../report/finding-id';
import type { Fix, FixCandidate } from '../../report/fix';
import { isRefusal } from '../../report/refusal';
import type { Report } from '../../report/report';
import { bridgeIslands } from './bridge-islands';
import { candidatesFor, proveFix } from './index';
import { accept } from './kinds/accept';
import { removeDoubledLine, uniteOutlines } from './kinds/doubled-lines';
import { removeOpening } from './kinds/openings/remove-opening';
import { checkEdited } from './verify';

export interface FixAllChoice {
  /** Only what changes nothing that is painted. */
  readonly safe?: boolean;
  /** Is told the title of each fix that was made. */
  readonly progress?: (title: string) => void;
}

export interface FixAllOutcome {
  /** The text with all that was fixed. */
  readonly text: string;
  /** What was done, in this order. */
  readonly done: readonly { readonly check: string; readonly title: string }[];
}

/**
 * Makes the preferred fix of each finding of the report's own file; islands are bridged together. With `safe`, only fixes after
 * which every layer is seen in the print exactly where it was. What is accepted, or mended in other files, is left alone.
 */
export function fixAll(report: Report, { safe = false, progress }: FixAllChoice = {}): FixAllOutcome {
  const done: { check: string; title: string }[] = [];
  const tell = (check: string, title: string): void => {
    done.push({ check, title });
    progress?.(title);
  };
  let now = safe ? report : bridged(report, tell);
  const tried = new Set<string>();
  for (let next = nextFix(now, safe, tried); next; next = nextFix(now, safe, tried)) {
    tell(next.finding.check, next.fix.title);
    now = next.after;
  }
  return { text: now.text, done };
}

function bridged(report: Report, tell: (check: string, title: string) => void): Report {
  const { edits, bridges } = bridgeIslands(report);
  if (bridges === 0) return report;
  tell('floating-island', `Bridge the islands (${bridges} bridges)`);
  return checkEdited(report, edits);
}

interface NextFix {
  readonly finding: ReportedFinding;
  readonly fix: Fix;
  readonly after: Report;
}

/** @param tried what was tried before and does not hold: it is not tried again after each change elsewhere */
function nextFix(report: Report, safe: boolean, tried: Set<string>): NextFix | undefined {
  for (const finding of report.complete) {
    for (const candidate of candidatesFor(report, finding)) {
      const key = JSON.stringify([candidate.kind, finding.layer, finding.message, finding.at]);
      if (!isWanted(candidate, safe) || tried.has(key)) continue;
      tried.add(key);
      const fix = proveFix(report, candidate);
      if (!fix || isRefusal(fix) || (fix.others ?? []).length > 0) continue;
      const after = checkEdited(report, fix.edits);
      if (!safe || fix.safe || printsTheSame(report, after)) return { finding, fix, after };
    }
  }
  return undefined;
}

/** Fixes that need not change what is painted, though they change what is cut. */
const MAY_KEEP_THE_PRINT: ReadonlySet<string> = new Set([
  removeDoubledLine.kind,
  uniteOutlines.kind,
  removeOpening.kind,
]);

function isWanted({ kind, preferred, safe: isSafe }: FixCandidate, safe: boolean): boolean {
  if (kind === accept.kind) return false;
  return safe ? isSafe || MAY_KEEP_THE_PRINT.has(kind) : preferred;
}

/** Whether each layer of the stack is seen where it was, but for rounding along its cut lines. */
function printsTheSame(before: Report, after: Report): boolean {
  const [old, now] = [seenOf(before), seenOf(after)];
  return (
    old.length === now.length &&
    old.every(({ seen, cutLength }, i) => {
      const changed = areaOf(symmetricDifference(seen, now[i]?.seen ?? []));
      return changed <= 2 * WRITTEN_STEP * cutLength;
    })
  );
}

/** What of each layer no later one covers; mm². */
function seenOf({ stack }: Report): { readonly seen: Region; readonly cutLength: number }[] {
  let covered: Region = [];
  return stack.layers
    .toReversed()
    .map(({ sheet: { openings, cutLength } }) => {
      const seen = difference(openings, covered);
      covered = union([covered, openings]);
      return { seen, cutLength };
    })
    .reverse();
}

/** What may never be, of any text. */
import { readConfig } from '../../src/engine/check/known-checks';
import {
  applyEdits,
  candidatesFor,
  check,
  type Fix,
  type FixCandidate,
  proveFix,
  type Report,
  type ReportedFinding,
  sharedChange,
} from '../../src/engine/index';
import { faultsOfFix } from './fix-faults';
import { faultsOfReport, shown, unlike } from './report-faults';

/** What is wrong: a kind that can be counted, and words. */
export interface Fault {
  readonly kind: string;
  readonly words: string;
}

export interface Judged {
  readonly faults: readonly Fault[];
  /** Milliseconds of processor time that the slowest check took. */
  readonly slowest: number;
  /** Milliseconds of processor time that the slowest proof of a fix took. */
  readonly slowestFix: number;
  readonly fixes: number;
  /** Fixes that were also looked at in the way that was told. */
  readonly seen: number;
}

export interface Ways {
  /** Findings that all fixes are tried for, at most; each trial checks the text several times. */
  readonly fixed: number;
  /** Also called with each fix that was made, for what takes long; undefined where it cannot look. */
  readonly onFix?: (before: Report, fix: Fix, after: Report) => readonly Fault[] | undefined;
}

/**
 * Milliseconds of processor time for any check, and for each character: steps stand for two seconds of an idle processor; one
 * that is shared takes up to three times as long.
 */
const MOST_CPU = 6000;
const CPU_PER_CHARACTER = 0.012;
/** The same for the proof of a fix, which checks many times. */
const MOST_CPU_OF_FIX = 30_000;

/** One of so many fixed texts is checked anew as well. */
const FRESH = 4;

const SETTINGS = { config: readConfig('{}').config };

/** @param next the text after a small change */
export function judge(text: string, next: string, ways: Ways): Judged {
  const judgement = new Judgement();
  try {
    const report = judgement.check(text);
    if (shown(judgement.check(text)) !== shown(report)) judgement.faults.push({ kind: 'two runs differ', words: '' });
    const [fresh, again] = [judgement.check(next), judgement.check(next, report)];
    const difference = unlike(fresh, again);
    if (difference !== undefined) judgement.faults.push({ kind: 'incremental differs', words: difference });
    for (const candidate of candidatesOf(report, ways.fixed)) judgement.tryFix(report, candidate, ways);
  } catch (error) {
    judgement.faults.push({
      kind: 'crash',
      words: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
  return judgement;
}

class Judgement implements Judged {
  readonly faults: Fault[] = [];
  slowest = 0;
  slowestFix = 0;
  fixes = 0;
  seen = 0;

  check(text: string, earlier?: Report): Report {
    const [report, took] = timed(() => check(text, SETTINGS, earlier));
    this.slowest = Math.max(this.slowest, took);
    if (took > MOST_CPU + CPU_PER_CHARACTER * text.length)
      this.faults.push({ kind: 'over budget', words: `${took.toFixed(0)} ms` });
    this.faults.push(...faultsOfReport(report));
    return report;
  }

  /** What a refusal says may be had anyway is made as well. */
  tryFix(report: Report, candidate: FixCandidate, { onFix }: Ways): void {
    const [result, took] = timed(() => proveFix(report, candidate));
    this.slowestFix = Math.max(this.slowestFix, took);
    if (took > MOST_CPU_OF_FIX + CPU_PER_CHARACTER * report.text.length)
      this.faults.push({ kind: 'fix over budget', words: `${candidate.title}: ${took.toFixed(0)} ms` });
    if (result && 'reason' in result && result.reason.startsWith('Tombolo itself failed'))
      this.faults.push({ kind: 'fix failed', words: `${candidate.id}: ${result.reason}` });
    const fix = result && 'reason' in result ? result.anyway : result;
    if (!fix) return;
    const after = this.checkFixed(applyEdits(report.text, fix.edits), report);
    this.fixes += 1;
    this.faults.push(...faultsOfFix(report, fix, after));
    const seen = onFix?.(report, fix, after);
    if (!seen) return;
    this.seen += 1;
    this.faults.push(...seen);
  }

  /** As the editor has it, from what the proof left in the cache; some besides as if nothing were known. */
  checkFixed(text: string, before: Report): Report {
    const again = this.check(text, before);
    if (this.fixes % FRESH !== 0) return again;
    const fresh = this.check(text);
    const difference = unlike(fresh, again);
    if (difference !== undefined) this.faults.push({ kind: 'fixed differs', words: difference });
    return fresh;
  }
}

/** Milliseconds of processor time. */
function timed<T>(work: () => T): [T, number] {
  const before = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(before);
  return [result, (user + system) / 1000];
}

/** The fixes of so many findings; what two of them offer alike once, and ignoring once for each check. */
function candidatesOf(report: Report, most: number): FixCandidate[] {
  const known = new Set<string>();
  return firstOfEachCheck(report.findings)
    .slice(0, most)
    .flatMap((finding) =>
      candidatesFor(report, finding).filter((candidate) => {
        const same = candidate.kind === 'accept' ? `accept ${finding.check}` : sharedChange(candidate);
        if (same === undefined) return true;
        const isNew = !known.has(same);
        known.add(same);
        return isNew;
      }),
    );
}

/** The first finding of each check before the others. */
function firstOfEachCheck(findings: readonly ReportedFinding[]): ReportedFinding[] {
  const first = new Set(new Map(findings.toReversed().map((finding) => [finding.check, finding])).values());
  return [...first, ...findings.filter((finding) => !first.has(finding))];
}

/** What may never be, of any text. */
import { readConfig } from '../../src/engine/check/known-checks';
import { applyEdits, check, type Fix, fixesFor, type Report, type ReportedFinding } from '../../src/engine/index';
import { areaOf } from '../../src/geometry/boolean/index';
import { nonsenseIn } from './nonsense';
import { isWellFormed } from './well-formed';

/** What is wrong: a kind that can be counted, and words. */
export interface Fault {
  readonly kind: string;
  readonly words: string;
}

export interface Judged {
  readonly faults: readonly Fault[];
  /** Milliseconds of processor time that the slowest check took. */
  readonly slowest: number;
  readonly fixes: number;
  /** Fixes after which there are more findings of a check than before, though none of a new one. */
  readonly parted: number;
}

export interface Ways {
  /** Findings that fixes are tried for, at most; each trial checks the text several times. */
  readonly fixed: number;
  /** Also called with each fix that was made, for what takes long. */
  readonly onFix?: (before: Report, fix: Fix, after: Report) => readonly Fault[];
}

/** Milliseconds of processor time for any text, and for each character: three times what an idle machine takes. */
const MOST_CPU = 6000;
const CPU_PER_CHARACTER = 0.012;

const SETTINGS = { config: readConfig('{}').config };

/** @param next the text after a small change */
export function judge(text: string, next: string, { fixed, onFix = () => [] }: Ways): Judged {
  const faults: Fault[] = [];
  let slowest = 0;
  const run = (of: string, earlier?: Report): Report => {
    const before = process.cpuUsage();
    const report = check(of, SETTINGS, earlier);
    const { user, system } = process.cpuUsage(before);
    const took = (user + system) / 1000;
    slowest = Math.max(slowest, took);
    if (took > MOST_CPU + CPU_PER_CHARACTER * of.length) faults.push({ kind: 'over budget', words: `${took} ms` });
    return report;
  };
  let fixes = 0;
  let parted = 0;
  try {
    const report = run(text);
    faults.push(...faultsIn(report));
    if (shown(run(text)) !== shown(report)) faults.push({ kind: 'two runs differ', words: '' });
    const [fresh, again] = [run(next), run(next, report)];
    faults.push(...faultsIn(fresh));
    if (shown(fresh) !== shown(again)) faults.push({ kind: 'incremental differs', words: difference(fresh, again) });
    for (const finding of someOf(report.findings, fixed)) {
      for (const fix of fixesFor(report, finding).fixes) {
        fixes += 1;
        const after = run(applyEdits(text, fix.edits));
        faults.push(...faultsIn(after), ...faultsOfFix(report, fix, after), ...onFix(report, fix, after));
        if (isParted(report, after)) parted += 1;
      }
    }
  } catch (error) {
    faults.push({ kind: 'crash', words: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
  return { faults, slowest, fixes, parted };
}

/** Findings of as many checks as there are, one after the other. */
function someOf(findings: readonly ReportedFinding[], most: number): ReportedFinding[] {
  const first = new Map(findings.map((finding) => [finding.check, finding]));
  return [...first.values()].slice(0, most);
}

function faultsIn({ text, complete, sheets }: Report): Fault[] {
  const faults: Fault[] = [];
  for (const { check: id, message, detail = '', span, related, at, measure } of complete) {
    const words = `${id}: ${message}`;
    for (const { from, to } of [span, ...related.map((each) => each.span)]) {
      if (!(from >= 0 && from <= to && to <= text.length)) faults.push({ kind: 'span outside', words });
    }
    const numbers = [at?.x ?? 0, at?.y ?? 0, measure?.value ?? 0, measure?.limit ?? 0];
    if (!numbers.every(Number.isFinite)) faults.push({ kind: 'NaN', words });
    if (id === 'internal') faults.push({ kind: 'internal', words: detail });
    const nonsense = nonsenseIn(message);
    if (nonsense) faults.push({ kind: 'nonsense measure', words: `${nonsense} in ${words}` });
  }
  const areas = sheets.flatMap(({ openings, material }) =>
    [...openings, ...material].map((polygon) => areaOf(polygon)),
  );
  if (!areas.every((area) => area >= 0)) faults.push({ kind: 'negative area', words: '' });
  return faults;
}

const shown = ({ complete }: Report): string =>
  JSON.stringify(complete.map(({ check: id, severity, span, message, at }) => [id, severity, span, message, at]));

function difference(a: Report, b: Report): string {
  const of = ({ complete }: Report) => complete.map(({ check: id, span, message }) => `${id} ${span.from} ${message}`);
  const [one, two] = [of(a), of(b)];
  return [...one.filter((line) => !two.includes(line)), '|', ...two.filter((line) => !one.includes(line))].join(' ; ');
}

/** How many warnings and errors there are of each check. */
function countsOf({ complete }: Report): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { check: id, severity } of complete) {
    if (severity === 'warning' || severity === 'error') counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  return counts;
}

/** Nothing that is drawn changes: what is then found in the layers was in the drawing, but could not be seen. */
const REVEALING: ReadonlySet<string> = new Set(['layers-by-paint', 'layers-inner-groups']);

function faultsOfFix(before: Report, fix: Fix, after: Report): Fault[] {
  const faults: Fault[] = [];
  const had = countsOf(before);
  const told = new Set<string>(fix.brings.map(({ check: id }) => id));
  for (const id of countsOf(after).keys()) {
    if (!had.has(id) && !told.has(id) && !REVEALING.has(fix.kind))
      faults.push({ kind: 'worse fix', words: `${fix.title} brings ${id}` });
  }
  if (isWellFormed(before.text) && !isWellFormed(after.text))
    faults.push({ kind: 'not well-formed', words: fix.title });
  return faults;
}

function isParted(before: Report, after: Report): boolean {
  const had = countsOf(before);
  return [...countsOf(after)].some(([id, count]) => count > (had.get(id) ?? count));
}

/** One file checked, as plain data that another thread can be given and that can be kept. */
import { isDeepStrictEqual } from 'node:util';
import type { BaselineEntry } from '../../config/types';
import { count } from '../../config/values';
import type { FixesOfFinding, ReportedFinding } from '../../engine/index';
import { type CheckedFile, checkedFile } from '../../format/checked-file';
import { oneLine } from '../../format/plain-text';
import { snippetOf } from '../../format/snippet/snippet';
import type { GeneratorMarks } from '../../report/generator';
import type { Report } from '../../report/report';
import { pathIn } from '../files/load-project';
import type { LoadedReport } from '../files/load-report';
import type { FindingOptions } from '../options';
import { isChosen } from './chosen-checks';
import { FixVerifier } from './mend-prover';

/** Milliseconds for one file, where fixes are listed. */
const FIXES_BUDGET = 60_000;
/** Milliseconds for one file, where it is only said of what there is no fix for. */
const WHY_NONE_BUDGET = 2000;

/** Formats that have a place for fixes. */
const WITH_FIXES: ReadonlySet<string> = new Set(['json', 'sarif']);

/** What is known of a file that was checked. */
export interface FileOutcome {
  readonly checked: CheckedFile;
  /** The configuration that holds for it. */
  readonly configPath: string | undefined;
  /** As `LoadedReport.name`. */
  readonly name: string;
  readonly passed: PassedFindings;
  /** What is to be said on standard error. */
  readonly remarks: readonly string[];
}

/** Findings that the baseline let pass, and its entries that did. */
export interface PassedFindings {
  readonly count: number;
  readonly entries: readonly BaselineEntry[];
}

export function checkLoaded(loaded: LoadedReport, options: FindingOptions, marks?: GeneratorMarks): FileOutcome {
  const { name, report, config: found } = loaded;
  const lengths = [options.width, options.height, found.config.width, found.config.height];
  const chosen = (findings: readonly ReportedFinding[]) => findings.filter(({ check }) => isChosen(check, options));
  const prover = new FixVerifier(options.format === 'text' ? WHY_NONE_BUDGET : FIXES_BUDGET);
  const listed = chosen(options.format === 'text' ? report.findings : report.complete);
  const checked = checkedFile({
    path: name,
    pathOf: (file) => pathIn(found, file),
    report,
    findings: listed,
    counted: chosen(report.complete),
    sizeStated: report.drawing.sizeStated || lengths.some((length) => length !== undefined),
    fixesFor: (finding) => triedFixes(report, finding, options, prover),
    marks,
    snippetFor: snippetsAmong(listed, report.sheets, options),
  });
  const { count: passed, entries } = report.passed;
  const remarks = options.format === 'text' || prover.leftOut === 0 ? [] : [timeWasOver(name, prover.leftOut)];
  return { checked, configPath: found.path, name, passed: { count: passed, entries }, remarks };
}

/** Hints and remarks are told without a picture. */
function snippetsAmong(
  findings: readonly ReportedFinding[],
  sheets: Report['sheets'],
  { drawnPlaces = 0 }: FindingOptions,
) {
  const serious = findings.filter(({ severity, at }) => at && (severity === 'error' || severity === 'warning'));
  const drawn = new Set(serious.slice(0, drawnPlaces));
  return (finding: ReportedFinding) => (drawn.has(finding) ? snippetOf(finding, sheets) : undefined);
}

function triedFixes(
  report: Report,
  finding: ReportedFinding,
  { mends, format }: FindingOptions,
  prover: FixVerifier,
): FixesOfFinding | undefined {
  if (!mends) return undefined;
  if (format === 'text') return prover.whyBeyondMending(report, finding);
  return WITH_FIXES.has(format) ? prover.fixesFor(report, finding) : undefined;
}

function timeWasOver(name: string, findings: number): string {
  return `${oneLine(name)}: the time for proving fixes was over; ${count(findings, 'finding')} are without`;
}

/** Whether an entry is one of those that let something pass: they may come from another thread. */
export function isAmong(entry: BaselineEntry, used: readonly BaselineEntry[]): boolean {
  return used.some((each) => isDeepStrictEqual(each, entry));
}

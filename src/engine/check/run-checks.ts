/** Runs the checks on one file of a stack, and makes its report. */
import { ALL_CHECKS } from '../../checks/all';
import type { Check, StackCheck, StackStencil, Stencil } from '../../checks/check';
import type { Finding } from '../../checks/finding';
import { lookNow, type StopReason } from '../../geometry/base/checkpoint';
import type { CheckResult, ProjectPart, Report } from '../../report/report';
import type { Config } from '../../config/types';
import { limitsOf } from '../../config/limits';
import type { Stack } from '../../stack/stack';
import { withIds, type ReportedFinding } from '../../report/finding-id';
import { sourcesOf } from '../../sheet/source-index';
import type { Answer } from '../cache/cache';
import { fileCheckNode, findingsNode, stackCheckNode } from '../cache/nodes';
import { applyAcceptances } from './acceptances';
import { withoutBaseline } from './baseline';
import { capFindings, sortFindings } from './sort-and-cap';
import type { ReadFile } from './read-file';
import type { Run } from './run';
import { unlessStopped, type Skipped } from './run-watch';

/** A file with the stack that it is part of. */
export interface Subject {
  readonly file: Answer<ReadFile>;
  readonly stack: Answer<Stack>;
  /** Stands for the file and the settings, and for all files of the stack. */
  readonly version: string;
  readonly stackVersion: string;
  readonly project?: ProjectPart;
}

/** What the checks found in a file, by all that the configuration says. */
export interface Found extends Pick<Report, 'findings' | 'complete' | 'results'> {
  /** Whether there was time for everything. */
  readonly whole: boolean;
}

/** @param elapsed milliseconds that reading the file took */
export function reportOn(run: Run, subject: Subject, elapsed: number): Report {
  const start = performance.now();
  const { file, stack, version, project } = subject;
  const { text, drawing, sheets } = file.value;
  const inputs = { file, stack, version: `${version} ${subject.stackVersion}` };
  const found = run.cache.ask(findingsNode, inputs, () => findIn(run, subject));
  const { findings, complete, results } = found.value;
  return {
    text,
    version,
    settings: run.settings,
    drawing,
    sheets,
    complete,
    results,
    stack: stack.value,
    findings,
    ...(project && { project }),
    session: run.sessionFor(found.id),
    elapsed: elapsed + performance.now() - start,
  };
}

function findIn(run: Run, { file, stack, version, stackVersion, project }: Subject): Found {
  const { config } = run;
  const { unread, drawing } = file.value;
  const name = project?.file ?? '';
  const skipped: Skipped[] = [...file.value.skipped];
  const results = unread ? [] : [...runChecks(run, name, file, stack, skipped)];
  const gaps = unread ? [unreadFinding(unread)] : unfinished(skipped);
  const found = [...results.flatMap(({ findings }) => findings), ...gaps];
  const accepted = applyAcceptances(drawing.document, withSeverities(found, config));
  const named = withIds(withoutBaseline(accepted, config), name, (check) =>
    READING_STACKS.has(check) ? stackVersion : version,
  );
  const complete: readonly ReportedFinding[] = sortFindings(named);
  return { results, complete, findings: capFindings(complete), whole: gaps.length === 0 };
}

const READING_STACKS: ReadonlySet<string> = new Set(ALL_CHECKS.filter(readsStack).map(({ id }) => id));

function readsStack(check: Check | StackCheck): check is StackCheck {
  return check.reads === 'stack';
}

/** @param skipped gets the checks that the budget did not suffice for */
function* runChecks(
  run: Run,
  name: string,
  file: Answer<ReadFile>,
  stack: Answer<Stack>,
  skipped: Skipped[],
): Iterable<CheckResult> {
  const { drawing, sheets } = file.value;
  const { config, cache, measuring } = run;
  const stencil: Stencil = { drawing, config, limits: limitsOf(config), sheets, sources: sourcesOf, file: name };
  const ask = (check: Check | StackCheck): CheckResult => {
    const inputs = { check: check.id, file, measuring };
    if (!readsStack(check)) return cache.ask(fileCheckNode, inputs, () => runCheck(check, stencil)).value;
    const around: StackStencil = { ...stencil, stack: stack.value };
    return cache.ask(stackCheckNode, { ...inputs, stack }, () => runCheck(check, around)).value;
  };
  for (const check of ALL_CHECKS) {
    if (config.checks[check.id] === 'off') continue;
    const result = unlessStopped<CheckResult | undefined>(
      () => ask(check),
      (reason) => void skipped.push({ name: check.id, reason }),
    );
    if (result) yield result;
  }
}

function runCheck<S extends Stencil>(
  { id, run }: { readonly id: CheckResult['check']; run(stencil: S): Iterable<Finding> },
  stencil: S,
): CheckResult {
  lookNow();
  return { check: id, findings: [...run(stencil)] };
}

function withSeverities(findings: readonly Finding[], { checks }: Config): Finding[] {
  return findings.map((finding) => {
    const severity = checks[finding.check];
    return severity && severity !== 'off' ? { ...finding, severity } : finding;
  });
}

const LACKING: Readonly<Record<StopReason, string>> = {
  cancelled: 'This run was cancelled',
  time: 'The time for this run was over',
  memory: 'The memory for this run was used up',
};

const SPLIT = 'split the file, or check it on the command line.';

function unreadFinding(reason: StopReason): Finding {
  return unfinishedFinding(`${LACKING[reason]} before the drawing was read. Nothing is known of it; ${SPLIT}`);
}

function unfinished(skipped: readonly Skipped[]): Finding[] {
  const [first] = skipped;
  if (!first) return [];
  const names = skipped.map(({ name }) => name).join(', ');
  const what = `${LACKING[first.reason]} before these were done: ${names}.`;
  return [unfinishedFinding(`${what} Nothing is known of them; ${SPLIT}`)];
}

function unfinishedFinding(message: string): Finding {
  return { check: 'unfinished', severity: 'warning', message, span: { from: 0, to: 0 }, related: [] };
}

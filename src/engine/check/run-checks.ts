/** Runs the checks on one file of a stack, and makes its report. */
import { ALL_CHECKS } from '../../checks/all';
import type { Check, Stencil } from '../../checks/check';
import type { Finding } from '../../checks/finding';
import { lookNow, type StopReason } from '../../geometry/base/checkpoint';
import type { CheckResult, ProjectPart, Report, Settings } from '../../report/report';
import type { Config } from '../../config/types';
import { limitsOf } from '../../config/limits';
import type { Stack } from '../../stack/stack';
import { withIds } from '../../report/finding-id';
import { applyAcceptances } from './acceptances';
import { withoutBaseline } from './baseline';
import { capFindings, sortFindings } from './sort-and-cap';
import type { ReadFile } from './read-sheets';
import { unlessStopped, type Skipped } from './run-watch';
import { sourcesOnce } from './sources';

export interface CheckRun {
  readonly settings: Settings;
  readonly config: Config;
  readonly stack: Stack;
  /** Stands for the file and the settings, and for all files of the stack. */
  readonly version: string;
  readonly stackVersion: string;
  readonly project?: ProjectPart;
  /** Of the same sheets under the same limits: checks that did not look at the stack are not run again. */
  readonly known?: readonly CheckResult[];
}

/** @param elapsed milliseconds that reading the file took */
export function reportOn(file: ReadFile, run: CheckRun, elapsed: number): Report {
  const start = performance.now();
  const { text, drawing, sheets } = file;
  const { settings, config, stack, project } = run;
  const skipped: Skipped[] = [...file.skipped];
  const results = file.unread ? [] : [...runChecks(stencilOf(file, run), run, skipped)];
  const gaps = file.unread ? [unread(file.unread)] : unfinished(skipped);
  const found = [...results.flatMap(({ findings }) => findings), ...gaps];
  const accepted = applyAcceptances(drawing.document, withSeverities(found, config));
  const around = new Set<string>(results.filter(({ looksAround }) => looksAround).map(({ check }) => check));
  const named = withIds(withoutBaseline(accepted, config), project?.file ?? '', (check) =>
    around.has(check) ? run.stackVersion : run.version,
  );
  const complete = sortFindings(named);
  return {
    text,
    version: run.version,
    settings,
    drawing,
    sheets,
    complete,
    results,
    stack,
    findings: capFindings(complete),
    ...(project && { project }),
    elapsed: elapsed + performance.now() - start,
  };
}

function stencilOf({ drawing, sheets }: ReadFile, { config, stack, project }: CheckRun): Stencil {
  const limits = limitsOf(config);
  return { drawing, config, limits, sheets, sources: sourcesOnce(), file: project?.file ?? '', stack };
}

/** @param skipped gets the checks that the budget did not suffice for */
function* runChecks(stencil: Stencil, { config, known = [] }: CheckRun, skipped: Skipped[]): Iterable<CheckResult> {
  for (const each of ALL_CHECKS) {
    if (config.checks[each.id] === 'off') continue;
    const before = known.find(({ check, looksAround }) => check === each.id && !looksAround);
    const result =
      before ??
      unlessStopped<CheckResult | undefined>(
        () => runCheck(each, stencil),
        (reason) => void skipped.push({ name: each.id, reason }),
      );
    if (result) yield result;
  }
}

function runCheck({ id, run }: Check, stencil: Stencil): CheckResult {
  lookNow();
  let looksAround = false;
  const watched = watchStack(stencil, () => {
    looksAround = true;
  });
  const findings = [...run(watched)];
  return { check: id, findings, looksAround };
}

/** The same stencil, which tells when its stack is looked at. */
function watchStack(stencil: Stencil, tell: () => void): Stencil {
  return {
    ...stencil,
    get stack() {
      tell();
      return stencil.stack;
    },
  };
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

function unread(reason: StopReason): Finding {
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

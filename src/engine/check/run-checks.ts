/** Runs the checks on one file of a stack, and makes its report. */

import { ALL_CHECKS } from '../../checks/all';
import type { Check, Stencil } from '../../checks/check';
import type { Finding } from '../../checks/finding';
import { limitsOf } from '../../config/limits';
import type { Config } from '../../config/types';
import { lookNow } from '../../geometry/base/checkpoint';
import { withIds } from '../../report/finding-id';
import type { CheckResult, ProjectPart, Report, Settings } from '../../report/report';
import type { Stack } from '../../stack/stack';
import { now } from '../clock';
import { applyAcceptances } from './acceptances';
import { withoutBaseline } from './baseline';
import { isKnownCheck, metaOf } from './known-checks';
import type { ReadFile } from './read-sheets';
import type { RunWatch, Skipped } from './run-watch';
import { capFindings, sortFindings } from './sort-and-cap';
import { sourcesOnce } from './sources';
import { unfinished, unread } from './unfinished';

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
  readonly watch: RunWatch;
}

/** @param elapsed milliseconds that reading the file took */
export function reportOn(file: ReadFile, run: CheckRun, elapsed: number): Report {
  const start = now();
  const { text, drawing, sheets } = file;
  const { settings, config, stack, project } = run;
  const skipped: Skipped[] = [...file.skipped];
  const results = file.unread ? [] : [...runChecks(stencilOf(file, run), run, skipped)];
  const gaps = file.unread ? [unread(file.unread)] : unfinished(skipped);
  const found = [...results.flatMap(({ findings }) => findings), ...gaps];
  const accepted = applyAcceptances(drawing.document, withSeverities(found, config), isKnownCheck);
  const named = withIds(withoutBaseline(accepted, config), project?.file ?? '', (check) =>
    metaOf(check)?.reads === 'stack' ? run.stackVersion : run.version,
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
    elapsed: elapsed + now() - start,
  };
}

function stencilOf({ drawing, sheets }: ReadFile, { config, stack, project }: CheckRun): Stencil {
  const limits = limitsOf(config);
  return { drawing, config, limits, sheets, sources: sourcesOnce(), file: project?.file ?? '', stack };
}

/** @param skipped gets the checks that the budget did not suffice for */
function* runChecks(
  stencil: Stencil,
  { config, watch, known = [] }: CheckRun,
  skipped: Skipped[],
): Iterable<CheckResult> {
  for (const each of ALL_CHECKS) {
    const { id, reads } = each.meta;
    if (config.checks[id] === 'off') continue;
    const before = reads === 'file' ? known.find(({ check }) => check === id) : undefined;
    const result =
      before ??
      watch.part<CheckResult | undefined>(
        () => runCheck(each, stencil),
        (reason) => void skipped.push({ name: id, reason }),
      );
    if (result) yield result;
  }
}

function runCheck({ meta, run }: Check, stencil: Stencil): CheckResult {
  lookNow();
  const { id, severity } = meta;
  return { check: id, findings: Array.from(run(stencil), (draft) => ({ severity, ...draft, check: id })) };
}

function withSeverities(findings: readonly Finding[], { checks }: Config): Finding[] {
  return findings.map((finding) => {
    const severity = checks[finding.check];
    return severity && severity !== 'off' ? { ...finding, severity } : finding;
  });
}

/** Runs the checks on one file of a stack, and makes its report. */
import { ALL_CHECKS } from '../../checks/all';
import type { Stencil } from '../../checks/check';
import type { Finding, FindingDraft } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';
import type { CheckResult, ProjectPart, Report, Settings } from '../../report/report';
import type { Config } from '../../config/types';
import { limitsOf } from '../../config/limits';
import type { Stack } from '../../stack/stack';
import { applyAcceptances } from './acceptances';
import { withoutBaseline } from './baseline';
import { capFindings, sortFindings } from './sort-and-cap';
import { isKnownCheck } from './known-checks';
import type { ReadFile } from './read-sheets';
import { sourcesOnce } from './sources';
import { unfinished } from './unfinished';

export interface CheckRun {
  readonly settings: Settings;
  readonly config: Config;
  readonly stack: Stack;
  readonly project?: ProjectPart;
  /** Of the same sheets under the same limits: checks that did not look at the stack are not run again. */
  readonly known?: readonly CheckResult[];
  /** Whether the time for the run is over. */
  late(): boolean;
}

/** @param elapsed milliseconds that reading the file took */
export function reportOn(file: ReadFile, run: CheckRun, elapsed: number): Report {
  const start = performance.now();
  const { text, drawing, sheets } = file;
  const { settings, config, stack, project } = run;
  const skipped = [...file.skipped];
  const results = [...runChecks(stencilOf(file, run), run, skipped)];
  const found = [...results.flatMap(({ findings }) => findings), ...unfinished(skipped)];
  const accepted = applyAcceptances(drawing.document, withSeverities(found, config), isKnownCheck);
  const complete = sortFindings(withoutBaseline(accepted, config));
  return {
    text,
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

function* runChecks(
  stencil: Stencil,
  { config, known = [], late }: CheckRun,
  skipped: string[],
): Iterable<CheckResult> {
  for (const each of ALL_CHECKS) {
    const { id, reads } = each.meta;
    if (config.checks[id] === 'off') continue;
    const before = reads === 'file' ? known.find(({ check }) => check === id) : undefined;
    if (before) {
      yield before;
    } else if (late()) {
      skipped.push(id);
    } else {
      yield { check: id, findings: Array.from(each.run(stencil), (draft) => findingOf(each.meta, draft)) };
    }
  }
}

function findingOf({ id, severity }: CheckMeta, draft: FindingDraft): Finding {
  return { severity, ...draft, check: id };
}

function withSeverities(findings: readonly Finding[], { checks }: Config): Finding[] {
  return findings.map((finding) => {
    const severity = checks[finding.check];
    return severity && severity !== 'off' ? { ...finding, severity } : finding;
  });
}

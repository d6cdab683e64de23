/** Runs the checks on one file of a stack, and makes its report. */

import { ALL_CHECKS } from '../../checks/all';
import type { Stencil } from '../../checks/check';
import type { Finding } from '../../checks/finding';
import { limitsOf } from '../../config/limits';
import type { Config } from '../../config/types';
import type { CheckResult, ProjectPart, Report, Settings } from '../../report/report';
import type { Stack } from '../../stack/stack';
import { now } from '../clock';
import { applyAcceptances } from './acceptances';
import { withoutBaseline } from './baseline';
import type { ReadFile } from './read-sheets';
import { capFindings, sortFindings } from './sort-and-cap';
import { sourcesOnce } from './sources';

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
  const start = now();
  const { text, drawing, sheets } = file;
  const { settings, config, stack, project } = run;
  const skipped = [...file.skipped];
  const results = [...runChecks(stencilOf(file, run), run, skipped)];
  const found = [...results.flatMap(({ findings }) => findings), ...unfinished(skipped)];
  const accepted = applyAcceptances(drawing.document, withSeverities(found, config));
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
    elapsed: elapsed + now() - start,
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
    if (config.checks[each.id] === 'off') continue;
    const before = known.find(({ check, looksAround }) => check === each.id && !looksAround);
    if (before) {
      yield before;
    } else if (late()) {
      skipped.push(each.id);
    } else {
      let looksAround = false;
      const watched = watchStack(stencil, () => {
        looksAround = true;
      });
      const findings = [...each.run(watched)];
      yield { check: each.id, findings, looksAround };
    }
  }
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

function unfinished(skipped: readonly string[]): Finding[] {
  if (skipped.length === 0) return [];
  return [
    {
      check: 'unfinished',
      severity: 'warning',
      message:
        `The time for this run was over before these were done: ${skipped.join(', ')}. ` +
        'Nothing is known of them; split the file, or check it on the command line.',
      span: { from: 0, to: 0 },
      related: [],
    },
  ];
}

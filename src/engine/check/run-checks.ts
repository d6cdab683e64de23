/** Runs the checks on one file of a stack, and makes its report. */

import { lookNow } from '../../base/checkpoint';
import { now } from '../../base/clock';
import { ALL_CHECKS } from '../../checks/all';
import type { Check, StackCheck, StackStencil, Stencil } from '../../checks/check';
import type { Finding, FindingDraft } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';
import { limitsOf } from '../../config/limits';
import type { Config } from '../../config/types';
import type { MarkupDocument } from '../../markup/tree';
import { type ReportedFinding, withIds } from '../../report/finding-id';
import type { CheckResult, ProjectPart, Report } from '../../report/report';
import { sourcesOf } from '../../sheet/source-index';
import type { Stack } from '../../stack/stack';
import type { Answer } from '../cache/cache';
import { fileCheckNode, findingsNode, stackCheckNode } from '../cache/nodes';
import { isKnownCheck, metaOf } from '../metas';
import { generatorsIn } from '../queries/generators';
import { applyAcceptances } from './acceptances';
import { throughBaseline } from './baseline';
import type { Run } from './run';
import type { Skipped } from './run-watch';
import { capFindings, sortFindings } from './sort-and-cap';
import type { Found, ReadFile } from './stages';
import { gapsOf, unread as unreadFinding } from './unfinished';

/** A file with the stack that it is part of. */
export interface Subject {
  readonly file: Answer<ReadFile>;
  readonly stack: Answer<Stack>;
  /** Stands for the file and the settings, and for all files of the stack. */
  readonly version: string;
  readonly stackVersion: string;
  readonly project?: ProjectPart;
}

/** @param elapsed milliseconds that reading the file took */
export function reportOn(run: Run, subject: Subject, elapsed: number): Report {
  const start = now();
  const { file, stack, version, project } = subject;
  const { text, drawing, sheets } = file.value;
  const inputs = { file, stack, version: `${version} ${subject.stackVersion}` };
  const found = run.cache.ask(findingsNode, inputs, () => findIn(run, subject));
  const { findings, complete, results, passed } = found.value;
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
    passed,
    ...(project && { project }),
    session: run.sessionFor(found.id),
    elapsed: elapsed + now() - start,
  };
}

function findIn(run: Run, { file, stack, version, stackVersion, project }: Subject): Found {
  const { config } = run;
  const { unread, drawing } = file.value;
  const name = project?.file ?? '';
  const skipped: Skipped[] = [...file.value.skipped];
  const results = unread ? [] : [...runChecks(run, name, file, stack, skipped)];
  const gaps = unread ? [unreadFinding(unread)] : gapsOf(skipped);
  const found = [...results.flatMap(({ findings }) => findings), ...gaps];
  const accepted = applyAcceptances(drawing.document, withSeverities(found, config), isKnownCheck);
  const { kept, passed } = throughBaseline(accepted, config, {
    name: name || run.settings.file,
    document: drawing.document,
  });
  const named = withIds(kept, name, (check) => {
    const { reads, foundIn = reads } = metaOf(check) ?? {};
    return foundIn === 'stack' ? stackVersion : version;
  });
  const complete = sortFindings(withGenerators(drawing.document, named));
  return { results, complete, findings: capFindings(complete), passed, whole: gaps.length === 0 };
}

function withGenerators(document: MarkupDocument, findings: readonly ReportedFinding[]): readonly ReportedFinding[] {
  const generatorOf = generatorsIn(document);
  return findings.map((finding) => {
    const from = generatorOf(finding.span);
    return from ? { ...finding, from } : finding;
  });
}

function readsStack(check: Check | StackCheck): check is StackCheck {
  return check.meta.reads === 'stack';
}

/** @param skipped gets the checks that were not done */
function* runChecks(
  run: Run,
  name: string,
  file: Answer<ReadFile>,
  stack: Answer<Stack>,
  skipped: Skipped[],
): Iterable<CheckResult> {
  const { drawing, sheets } = file.value;
  const { config, cache, measuring, watch } = run;
  const stencil: Stencil = { drawing, config, limits: limitsOf(config), sheets, sources: sourcesOf, file: name };
  const ask = (check: Check | StackCheck): CheckResult => {
    const inputs = { check: check.meta.id, file, measuring };
    if (!readsStack(check)) return cache.ask(fileCheckNode, inputs, () => runCheck(check, stencil)).value;
    const around: StackStencil = { ...stencil, stack: stack.value };
    return cache.ask(stackCheckNode, { ...inputs, stack }, () => runCheck(check, around)).value;
  };
  const checks = ALL_CHECKS.filter(({ meta }) => config.checks[meta.id] !== 'off');
  for (const check of checks) {
    const result = watch.part<CheckResult | undefined>(
      'checking',
      check === checks.at(-1),
      () => ask(check),
      (lack) => void skipped.push({ name: check.meta.id, lack }),
    );
    if (result) yield result;
  }
}

function runCheck<S extends Stencil>(
  { meta, run }: { readonly meta: CheckMeta; run(stencil: S): Iterable<FindingDraft> },
  stencil: S,
): CheckResult {
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

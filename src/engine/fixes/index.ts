/** The fixes for a finding: what may be tried, which costs nothing to say, and what was proven of it. */

import { Stopped, stepsMade, underWatch } from '../../base/checkpoint';
import type { ReportedFinding } from '../../report/finding-id';
import { type Fix, type FixCandidate, type FixRefusal, type FixScope, fixId, refusalOf } from '../../report/fix';
import { isRefusal, refuse } from '../../report/refusal';
import type { Report } from '../../report/report';
import { internalReason, isolated } from '../check/fault';
import { workOfCheck } from '../check/run-watch';
import { metaOf } from '../metas';
import { findingById } from '../queries/find-finding';
import { fixResult } from './fix-of';
import type { FixKind } from './kind';
import { FIX_KINDS } from './kinds';
import { accept } from './kinds/accept';

/** What became of all candidates for a finding. */
export interface FixesOfFinding {
  /** Proven, in the order in which they are offered. */
  readonly fixes: readonly Fix[];
  readonly refusals: readonly FixRefusal[];
}

/**
 * What may be tried for a finding, in the order offered: what its check names, and last to accept it as it is. Takes no
 * time: nothing is planned or proven.
 */
export function candidatesFor(report: Report, finding: ReportedFinding): readonly FixCandidate[] {
  return kindsFor(finding).flatMap((kind) => {
    const title = kind.offer(report, finding);
    return title === undefined ? [] : [candidateOf(kind, finding, title)];
  });
}

function kindsFor({ check }: ReportedFinding): FixKind[] {
  const named = metaOf(check)?.fixes.map((kind) => FIX_KINDS.get(kind)) ?? [];
  return [...named.filter((kind) => kind !== undefined), accept];
}

function candidateOf(
  { kind, scope, preferred, safe, spare }: FixKind,
  finding: ReportedFinding,
  title: string,
): FixCandidate {
  const { id, layerId } = finding;
  return {
    id: fixId(id, kind),
    kind,
    title,
    scope,
    ...(layerId && { layerId }),
    finding: id,
    preferred: typeof preferred === 'function' ? preferred(finding) : preferred,
    safe,
    ...(spare && { spare }),
  };
}

/**
 * Makes a change and proves it, by checking the edited text; once, however often it is asked for.
 * @param report on the file of the finding, or on another of the same project
 * @returns why there is no fix, where there is none; undefined where the candidate came out the same as another one
 * @throws Stopped when the run is cancelled
 */
export function proveFix(report: Report, candidate: FixCandidate): Fix | FixRefusal | undefined {
  const kind = FIX_KINDS.get(candidate.kind);
  const place = findingById(report, candidate.finding);
  if (!kind || !place) return refusalOf(candidate, refuse('The drawing has changed since; ask again.'));
  const change = () => isolated(() => kind.prove(place.report, place.finding, candidate.title), internalReason);
  const prove = () => withinWork(WORK[kind.scope] * workOfCheck(place.report.text, place.report.settings), change);
  const proven = place.report.session.remember(`fix ${candidate.id}`, prove);
  if (proven === undefined) return undefined;
  const result = fixResult(place.report, kind, candidate, typeof proven === 'string' ? refuse(proven) : proven);
  const { id, finding } = candidate;
  return isRefusal(result) ? refusalOf(candidate, result) : { ...result, id, finding };
}

/** How many times the work of a check a proof may take, which checks again and again: ten times what fixes of drawings take. */
const WORK: Readonly<Record<FixScope, number>> = { place: 8, layer: 40, file: 40, stack: 40 };

/**
 * What a proof gives, or why there is none where it takes more than so many steps of work.
 * @throws Stopped when the run is cancelled
 */
function withinWork<T>(most: number, prove: () => T): T | string {
  const end = stepsMade() + most;
  let isOver = false;
  // Not "work", with which a check within the proof would go on and call itself unfinished.
  const watch = () => {
    isOver = stepsMade() >= end;
    return isOver ? 'cancelled' : undefined;
  };
  try {
    return underWatch(watch, prove);
  } catch (error) {
    if (error instanceof Stopped && isOver) return 'It would take too much work to find out whether it holds.';
    throw error;
  }
}

/** All candidates for a finding, each proven or refused. */
export function fixesFor(report: Report, finding: ReportedFinding): FixesOfFinding {
  const results = candidatesFor(report, finding).map((candidate) => proveFix(report, candidate));
  return {
    fixes: results.filter((result): result is Fix => result !== undefined && !isRefusal(result)),
    refusals: results.filter((result) => result !== undefined && isRefusal(result)),
  };
}

/** Why a finding cannot be mended, where fixes may be tried and none holds; tries no more than it takes to know. */
export function whyBeyondMending(report: Report, finding: ReportedFinding): readonly FixRefusal[] {
  const refusals: FixRefusal[] = [];
  for (const candidate of candidatesFor(report, finding)) {
    if (candidate.kind === accept.kind) continue;
    const result = proveFix(report, candidate);
    if (result === undefined) continue;
    if (!isRefusal(result)) return [];
    refusals.push(result);
  }
  return refusals;
}

/**
 * Where fixes of several findings are offered together: those of one place first, then of the layer, then of the file
 * and the stack, and last to accept.
 */
export function offerOrder({ kind, scope }: Pick<Fix, 'kind' | 'scope'>): number {
  if (kind === accept.kind) return 3;
  return scope === 'place' ? 0 : scope === 'layer' ? 1 : 2;
}

/**
 * The same for fixes that change the same, from whichever finding they are offered; undefined where none other does.
 */
export function sharedChange({ kind, scope, layerId }: Pick<Fix, 'kind' | 'scope' | 'layerId'>): string | undefined {
  if (scope === 'place') return undefined;
  return scope === 'layer' ? `${kind} ${layerId}` : kind;
}

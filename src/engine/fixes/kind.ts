/** What every kind of fix says of itself, in a file of its own under `kinds`. */

import type { Finding } from '../../checks/finding';
import type { Effect } from '../../checks/meta';
import type { EditResult } from '../../edits/element/result';
import type { Region } from '../../geometry/base/polygon-types';
import type { ReportedFinding } from '../../report/finding-id';
import type { Fix, FixScope } from '../../report/fix';
import { mapResult, type Result, refuse } from '../../report/refusal';
import type { Report } from '../../report/report';
import type { Sheet } from '../../sheet/types';
import { verify } from './verify';

export interface FixKind {
  /** Stable: hosts and the metas of checks refer to it. */
  readonly kind: string;
  readonly scope: FixScope;
  /** Changes nothing that is cut or painted. */
  readonly safe: boolean;
  /** What it may do to the sheet beside mending its finding. */
  readonly effects: readonly Effect[];
  /** What is found after it was there before, but could not be seen: its title says how much comes to light. */
  readonly reveals?: boolean;
  /** Whether it is what most artists want for its findings, or for which of them. */
  readonly preferred: boolean | ((finding: Finding) => boolean);
  /** Where the list of fixes would become long, it may be left out: the higher, the sooner. */
  readonly spare?: number;
  /** Its title for a finding, undefined where it does not apply. Takes no time: nothing is planned, cut or proven. */
  offer(report: Report, finding: Finding): string | undefined;
  /**
   * Makes the change and proves it.
   * @param title as offered
   * @returns why it cannot be made or proven, a sentence alone where that is all there is to say; undefined where it is
   * not needed, being the same as another fix that is offered
   */
  prove(report: Report, finding: ReportedFinding, title: string): Result<ProvenChange> | string | undefined;
}

/** A change that was proven, for the kind of fix that it is of. */
export interface ProvenChange extends Pick<Fix, 'edits' | 'others' | 'bridges' | 'cutAway' | 'brings'> {
  /** Where more is known than when it was offered. */
  readonly title?: string;
}

/** A change to one sheet that has not been proven yet. */
export interface Attempt {
  readonly outcome: EditResult;
  /** Where it may change the openings, in sheet mm. */
  readonly within: Region;
  /** The findings that go with it. */
  readonly gone: readonly Finding[];
  readonly effects?: readonly Effect[];
}

/** @returns what fails, where the change could not be made or does not hold */
export function proveAttempt(
  report: Report,
  { layer }: Sheet,
  { outcome, within, gone, effects = [] }: Attempt,
): Result<ProvenChange> {
  if ('refusal' in outcome) return refuse(outcome.refusal);
  const proof = verify(report, outcome.edits, { gone, within: new Map([[layer.id, within]]), effects });
  return mapResult(proof, ({ brings }) => ({ edits: outcome.edits, brings }));
}

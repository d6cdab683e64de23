/**
 * What is wrong with `tombolo.json` and shows only when the drawings are looked at, at its places in the text: layers
 * that cannot be found, and acceptances that accept nothing, which would hide a fault that comes later.
 */
import { findNodeAtLocation, parseTree } from 'jsonc-parser';
import type { CheckId } from '../../config/check-id';
import type { ConfigProblem } from '../../config/read';
import type { LayerFault, ProjectReport } from '../../report/report';
import type { Wording } from '../../text/wording';
import { HIDES_LATER } from './acceptances';
import { effectiveConfig } from './effective-config';

/** An acceptance of the configuration that accepts nothing. */
export interface IdleAcceptance extends Wording {
  readonly check: CheckId;
}

/** Each at its key. Only of a project that names its files: of others nobody knows whether all were checked. */
export function unusedAcceptances(configText: string, report: ProjectReport): ConfigProblem[] {
  return acceptanceProblems(configText, idleAcceptances(report));
}

/** What `unusedAcceptances` tells, without the places. */
export function idleAcceptances({ settings, files, missing }: ProjectReport): IdleAcceptance[] {
  const { accept, checks, layers } = effectiveConfig(settings);
  if (layers.length === 0 || missing.length > 0) return [];
  const found = new Set(
    [...files.values()].flatMap(({ results }) =>
      results.filter(({ findings }) => findings.length > 0).map(({ check }) => check),
    ),
  );
  return Object.keys(accept)
    .filter((check) => !found.has(check))
    .map((check) => {
      const why = checks[check] === 'off' ? `The check ${check} is off` : `No ${check} in this project any more`;
      return { check, message: `${why}: this acceptance does nothing.`, detail: HIDES_LATER };
    });
}

/** Each at its key in the text, which may be another by now. */
export function acceptanceProblems(configText: string, idle: readonly IdleAcceptance[]): ConfigProblem[] {
  if (idle.length === 0) return [];
  const root = parseTree(configText, [], { allowTrailingComma: true });
  return idle.flatMap(({ check, ...wording }) => {
    const key = root && findNodeAtLocation(root, ['accept', check])?.parent?.children?.[0];
    if (!key) return [];
    const span = { from: key.offset, to: key.offset + key.length };
    return [{ ...wording, severity: 'warning' as const, span }];
  });
}

/** Each fault at every entry that has its `from`. Entries that could not be read at all are reported elsewhere. */
export function layerProblems(configText: string, faults: readonly LayerFault[]): ConfigProblem[] {
  const root = faults.length > 0 ? parseTree(configText, [], { allowTrailingComma: true }) : undefined;
  const entries = (root && findNodeAtLocation(root, ['layers'])?.children) ?? [];
  return entries.flatMap((entry) => {
    const place = findNodeAtLocation(entry, ['from']);
    const fault = faults.find(({ from }) => from === place?.value);
    if (!place || !fault) return [];
    const span = { from: place.offset, to: place.offset + place.length };
    const { from: _, ...told } = fault;
    return [{ ...told, span }];
  });
}

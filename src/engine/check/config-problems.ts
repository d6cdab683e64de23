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
  /** Which one of the check, where it is accepted in parts: counted among all of them. */
  readonly part?: number;
}

/** Each at its key. Only of a project that names its files: of others nobody knows whether all were checked. */
export function unusedAcceptances(configText: string, report: ProjectReport): ConfigProblem[] {
  return acceptanceProblems(configText, idleAcceptances(report));
}

/** What `unusedAcceptances` tells, without the places. */
export function idleAcceptances({ settings, files, missing }: ProjectReport): IdleAcceptance[] {
  const { accept, acceptedIn, checks, layers } = effectiveConfig(settings);
  if (layers.length === 0 || missing.length > 0) return [];
  const found = new Set(
    [...files.values()].flatMap(({ results }) =>
      results.filter(({ findings }) => findings.length > 0).map(({ check }) => check),
    ),
  );
  const idle = (check: CheckId, where: string) => {
    const why = checks[check] === 'off' ? `The check ${check} is off` : `No ${check} ${where} any more`;
    return { check, message: `${why}: this acceptance does nothing.`, detail: HIDES_LATER };
  };
  const everywhere = Object.keys(accept).filter((check) => !found.has(check));
  const used = new Set([...files.values()].flatMap(({ passed }) => passed.accepted));
  const inParts = acceptedIn.flatMap((part, index) => {
    const ordinal = acceptedIn.slice(0, index).filter(({ check }) => check === part.check).length;
    return used.has(part) ? [] : [{ ...idle(part.check, 'there'), part: ordinal }];
  });
  return [...everywhere.map((check) => idle(check, 'in this project')), ...inParts];
}

/** Each at its key in the text, which may be another by now. */
export function acceptanceProblems(configText: string, idle: readonly IdleAcceptance[]): ConfigProblem[] {
  if (idle.length === 0) return [];
  const root = parseTree(configText, [], { allowTrailingComma: true });
  return idle.flatMap(({ check, part, ...wording }) => {
    const entry = root && findNodeAtLocation(root, ['accept', check]);
    const key = part === undefined || entry?.type !== 'array' ? entry?.parent?.children?.[0] : entry.children?.[part];
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

/** Acceptances in `tombolo.json` that accept nothing: they would hide a fault that comes later. */
import { findNodeAtLocation, parseTree } from 'jsonc-parser';
import type { ConfigProblem } from '../../config/read';
import type { ProjectReport } from '../../report/report';
import { effectiveConfig } from './effective-config';

/** Each at its key. Only of a project that names its files: of others nobody knows whether all were checked. */
export function unusedAcceptances(configText: string, { settings, files, missing }: ProjectReport): ConfigProblem[] {
  const { accept, checks, layers } = effectiveConfig(settings);
  const ids = Object.keys(accept);
  if (layers.length === 0 || missing.length > 0) return [];
  const found = new Set(
    [...files.values()].flatMap(({ results }) =>
      results.filter(({ findings }) => findings.length > 0).map(({ check }) => check),
    ),
  );
  const root = parseTree(configText, [], { allowTrailingComma: true });
  return ids
    .filter((id) => !found.has(id))
    .flatMap((id) => {
      const key = root && findNodeAtLocation(root, ['accept', id])?.parent?.children?.[0];
      if (!key) return [];
      const why = checks[id] === 'off' ? `The check ${id} is off.` : `There is no finding of ${id} in this project.`;
      return [
        {
          message: `${why} Take this acceptance out, or it will hide a fault that comes later.`,
          severity: 'warning' as const,
          span: { from: key.offset, to: key.offset + key.length },
        },
      ];
    });
}

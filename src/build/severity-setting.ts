/** The setting `tombolo.severity` with all checks that there are, as package.json and package.nls.json have it. */
import type { CheckMeta } from '../checks/meta';
import { ALL_METAS } from '../engine/check/known-checks';

const KEY = 'tombolo.severity';
const CHOICES = ['error', 'warning', 'info', 'hint', 'off'];

/** What of package.json this is about. */
export interface Manifest {
  readonly contributes: { readonly configuration: { readonly properties: Record<string, unknown> } };
}

const nameOf = (id: string): string => `check.${id}`;

/** Writes the setting into the manifest, and its words into the strings: those of checks that are gone go. */
export function writeSeveritySetting(
  { contributes: { configuration } }: Manifest,
  strings: Record<string, string>,
  checks: readonly CheckMeta[] = ALL_METAS,
): void {
  configuration.properties[KEY] = {
    type: 'object',
    scope: 'window',
    default: {},
    additionalProperties: false,
    properties: Object.fromEntries(
      checks.map(({ id }) => [id, { type: 'string', enum: CHOICES, description: `%${nameOf(id)}%` }]),
    ),
    markdownDescription: '%setting.severity%',
  };
  for (const name of Object.keys(strings)) if (name.startsWith(nameOf(''))) delete strings[name];
  for (const { id, summary } of checks) strings[nameOf(id)] = summary;
}

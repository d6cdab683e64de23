/** Settings of a project, and what they can name. */
import type { Severity } from '../config/check-id';
import { type FigureSources, type Material as Figures, MATERIALS as TABLE } from '../config/material';
import SOURCES from '../config/material-sources.json';
import { DEFAULT_CONFIG as DEFAULTS, type Config as EngineConfig } from '../config/types';
import { readConfig as read } from '../engine/check/known-checks';
import { ALL_METAS } from '../engine/metas';
import { StencilError } from './failure';

/**
 * What a `tombolo.json` says, read: lengths in mm, speeds in mm/s, accelerations in mm/s². {@link readConfig} makes it,
 * {@link DEFAULT_CONFIG} is that of an empty one.
 *
 * @example
 * ```js
 * const config = { ...DEFAULT_CONFIG, width: 148, material: 'card-0.5' };
 * ```
 */
export type Config = EngineConfig;

/**
 * What holds where nothing is stated: lengths in mm, `undefined` where the drawing or the material decides.
 *
 * @example
 * ```js
 * import { check, DEFAULT_CONFIG } from 'tombolo-stencil';
 *
 * check(svgText, { config: { ...DEFAULT_CONFIG, limits: { bridge: 1.2 } } }); // mm
 * ```
 */
export const DEFAULT_CONFIG: Config = DEFAULTS;

/**
 * Reads settings as a `tombolo.json` has them: its text, or the object that it would be. Lengths are written with their
 * unit (`"148mm"`), and come out in mm.
 *
 * @throws StencilError with the first thing that is not understood
 * @example
 * ```js
 * import { check, readConfig } from 'tombolo-stencil';
 *
 * const config = readConfig({ size: { width: '148mm' }, material: 'card-0.5', checks: { sliver: 'off' } });
 * check(svgText, { config });
 * ```
 */
export function readConfig(json: string | object): Config {
  const { config, problems } = read(typeof json === 'string' ? json : JSON.stringify(json ?? null));
  const [first] = problems.filter(({ severity }) => severity === 'error');
  if (first) throw new StencilError(first.message);
  return config;
}

/**
 * What sheets are cut from: thickness, least bridge, least opening and kerf in mm, stiffness in MPa, density in kg/m³, and
 * where each figure comes from.
 *
 * @example
 * ```js
 * const { title, bridge } = MATERIALS['card-0.3'];
 * console.log(`${title}: bridges of at least ${bridge} mm`);
 * ```
 */
export interface Material extends Figures {
  /** For each figure where it comes from. */
  readonly sources: FigureSources;
}

/**
 * The materials that `tombolo.json` can name, by their names; lengths in mm.
 *
 * @example
 * ```js
 * import { MATERIALS } from 'tombolo-stencil';
 *
 * const thin = Object.entries(MATERIALS).filter(([, { thickness }]) => thickness < 0.25); // mm
 * ```
 */
export const MATERIALS: Readonly<Record<string, Material>> = /* @__PURE__ */ Object.fromEntries(
  /* @__PURE__ */ Object.entries(TABLE).map(([name, figures]) => [
    name,
    { ...figures, sources: SOURCES[name as keyof typeof SOURCES] },
  ]),
);

/**
 * What is known of a check before it is run.
 *
 * @example
 * ```js
 * const { id, summary, severity } = CHECKS[0];
 * ```
 */
export interface CheckDescription {
  /** By which `tombolo.json` and findings name it. */
  readonly id: string;
  /** One sentence. */
  readonly summary: string;
  /** How serious its findings are unless the settings say otherwise. */
  readonly severity: Severity;
  /** Whether one click, or {@link fixesFor}, may do something about what it finds. */
  readonly fixable: boolean;
}

/**
 * All checks, in the order in which they are run. Limits stand in the settings, in mm.
 *
 * @example
 * ```js
 * import { CHECKS } from 'tombolo-stencil';
 *
 * console.log(CHECKS.map(({ id }) => id).join('\n'));
 * ```
 */
export const CHECKS: readonly CheckDescription[] = /* @__PURE__ */ ALL_METAS.map(
  ({ id, summary, severity, fixes }) => ({ id, summary, severity, fixable: fixes.length > 0 }),
);

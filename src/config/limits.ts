import { DEFAULT_MATERIAL, MATERIALS, type Material } from './material';
import type { Config } from './types';

/** How fine a stencil may be, in mm at stated scale. */
export interface Limits {
  /** Least width of a bridge, as cut. */
  readonly bridge: number;
  /** Least width of an opening, as cut. */
  readonly opening: number;
  /** How far one sheet may land from where it should. */
  readonly slip: number;
  /** For messages: "0.3 mm card". */
  readonly material: string;
}

/** mm: sheets laid by hand against a corner. Common practice, no source. */
const DEFAULT_SLIP = 0.5;

/** The material that the configuration names: the artist's own first. */
export function materialOf({ material, materials }: Config): Material {
  if (Object.hasOwn(materials, material)) return materials[material] as Material;
  return Object.hasOwn(MATERIALS, material)
    ? (MATERIALS[material] as Material)
    : (MATERIALS[DEFAULT_MATERIAL] as Material);
}

/** What the configuration says, else what is usual for its material. */
export function limitsOf(config: Config): Limits {
  const material = materialOf(config);
  return {
    bridge: config.limits.bridge ?? material.bridge,
    opening: config.limits.opening ?? material.opening,
    slip: config.limits.slip ?? DEFAULT_SLIP,
    material: material.short,
  };
}

/**
 * The width in mm that the tool takes beyond the drawn lines: none where the cut files allow for it. Where it is not
 * stated, a laser takes what is usual for the material, a knife parts without taking anything away.
 */
export function kerfOf(config: Config): number {
  if (config.compensated) return 0;
  return config.kerf ?? (config.tool === 'knife' ? 0 : materialOf(config).kerf);
}

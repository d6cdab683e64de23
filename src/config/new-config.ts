/** The `tombolo.json` that a project begins with. */
import type { CuttingTool } from './types';

/** What the tool takes away along its path. */
export interface Kerf {
  /** A length with its unit. */
  readonly kerf: string;
  /** Whether the cut files, or the program that drives the cutter, allow for it. */
  readonly compensated: boolean;
}

export interface NewConfig {
  /** How wide the artwork is cut, as the artist wrote it; undefined where the file says it well enough. */
  readonly width: string | undefined;
  /** A key of the materials table. */
  readonly material: string;
  readonly tool: CuttingTool;
  readonly kerf?: Kerf;
}

export function newConfigText({ width, material, tool, kerf }: NewConfig): string {
  const size = width !== undefined && { size: { width: width.trim() } };
  const config = { ...size, material, cutter: { tool, ...kerf } };
  return `${JSON.stringify(config, undefined, 2)}\n`;
}

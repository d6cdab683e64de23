/** The `tombolo.json` that a project begins with. */
import type { CuttingTool } from './types';

export interface NewConfig {
  /** How wide the artwork is cut, as the artist wrote it; undefined where the file says it well enough. */
  readonly width: string | undefined;
  /** A key of the materials table. */
  readonly material: string;
  readonly tool: CuttingTool;
}

export function newConfigText({ width, material, tool }: NewConfig): string {
  const config = { ...(width !== undefined && { size: { width: width.trim() } }), material, cutter: { tool } };
  return `${JSON.stringify(config, undefined, 2)}\n`;
}

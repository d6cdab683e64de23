/** `tombolo.json` as the rest of the program sees it. Lengths in mm. `read-config.ts` makes it from text. */
import type { CheckId, Severity } from './check-id';
import type { Reading } from './sheet';
import { DEFAULT_MATERIAL } from './material';

export type Tool = 'laser' | 'knife';

export interface Config {
  readonly width: number | undefined;
  readonly height: number | undefined;
  /** Sheet added around the artwork's frame. */
  readonly margin: number;
  readonly reading: Reading | undefined;
  /** A key of the materials table. */
  readonly material: string;
  readonly bed: readonly [number, number] | undefined;
  /** What cuts: only a laser's fumes make some materials unsafe. */
  readonly tool: Tool;
  readonly kerf: number;
  /** Whether the cut files already allow for the kerf. */
  readonly compensated: boolean;
  readonly limits: { readonly bridge?: number; readonly opening?: number; readonly slip?: number };
  readonly layers: readonly LayerEntry[];
  readonly checks: Readonly<Partial<Record<CheckId, Severity | 'off'>>>;
}

/** One entry of `layers`: `from` is a file, with `#id` for one element of it. */
export interface LayerEntry {
  readonly from: string;
  readonly name: string | undefined;
  readonly paint: string | undefined;
}

export const DEFAULT_CONFIG: Config = {
  width: undefined,
  height: undefined,
  margin: 0,
  reading: undefined,
  material: DEFAULT_MATERIAL,
  bed: undefined,
  tool: 'laser',
  kerf: 0,
  compensated: true,
  limits: {},
  layers: [],
  checks: {},
};

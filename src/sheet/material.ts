import table from './materials.json';

/** What a sheet is made of, and how fine it may be cut. Lengths in mm. The figures' sources stand in `materials.json`. */
export interface Material {
  readonly title: string;
  /** For messages: "0.30 mm card". */
  readonly short: string;
  readonly thickness: number;
  /** Young's modulus in bending, in MPa. */
  readonly stiffness: number;
  /** kg/m³ */
  readonly density: number;
  /** Least width of a bridge that survives cutting, lifting and spraying. */
  readonly bridge: number;
  /** Least width of an opening that takes paint cleanly. */
  readonly opening: number;
  readonly source: string;
  /** Whether a laser may cut it: as usual, only where the workshop agrees, or never. Schools disagree on `ask`. */
  readonly laser: 'usual' | 'ask' | 'never';
}

/** All known materials by the name that `tombolo.json` uses. */
export const MATERIALS = table as Readonly<Record<string, Material>>;

export const DEFAULT_MATERIAL = 'card-0.3';

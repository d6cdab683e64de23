import { NAME_ROOM, shortened } from '../text/wording';
import table from './materials.json';

/** What is said of a material: lengths in mm. */
export interface MaterialFigures {
  readonly title: string;
  readonly thickness: number;
  /** Young's modulus in bending, in MPa. */
  readonly stiffness: number;
  /** kg/m³ */
  readonly density: number;
  /** Least width of a bridge that survives cutting, lifting and spraying. */
  readonly bridge: number;
  /** Least width of an opening that takes paint cleanly. */
  readonly opening: number;
  /** Width that a laser's beam takes away along its path. A knife takes none. */
  readonly kerf: number;
  /** Whether a laser may cut it: as usual, only where the workshop agrees, or never. Schools disagree on `ask`. */
  readonly laser: 'usual' | 'ask' | 'never';
}

/** What a sheet is made of, and how fine it may be cut. The figures' sources stand in `material-sources.json`. */
export interface Material extends MaterialFigures {
  /** For messages: "0.3 mm card". */
  readonly short: string;
}

/** The artist's own material: what is not said is as usual for card, but a laser is asked for first. */
export function ownMaterial(
  figures: Partial<MaterialFigures> & Pick<MaterialFigures, 'title' | 'thickness'>,
): Material {
  const { stiffness, density, bridge, opening, kerf } = MATERIALS[DEFAULT_MATERIAL] as Material;
  const short = `${Number(figures.thickness.toFixed(3))} mm ${shortened(figures.title, NAME_ROOM)}`;
  return { stiffness, density, bridge, opening, kerf, laser: 'ask', ...figures, short };
}

/** For each figure of a material where it comes from. */
export type FigureSources = Readonly<Record<keyof Omit<MaterialFigures, 'title'>, string>>;

/** All materials that come with us, by the name that `tombolo.json` uses; `material-sources.json` says where figures come from. */
export const MATERIALS = table as Readonly<Record<string, Material>>;

export const DEFAULT_MATERIAL = 'card-0.3';

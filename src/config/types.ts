/** `tombolo.json` as the rest of the program sees it. Lengths in mm. `read.ts` makes it from text. */
import { AUTO_STYLES, type BridgeStyles } from './bridge-style';
import type { CheckId, Severity } from './check-id';
import { DEFAULT_MATERIAL, type Material } from './material';

/** The file that says how the drawings in its folder, and below, are cut. */
export const CONFIG_NAME = 'tombolo.json';

/** How a layer is read: filled area is cut away, or stays, or unfilled lines are the cuts. */
export type Reading = 'openings' | 'sheet' | 'outlines';

/** How a file, or a group of it, is taken apart into layers; by its top-level groups where nothing is said. */
export const LAYERINGS = ['by-paint', 'inner-groups', 'one'] as const;
export type Layering = (typeof LAYERINGS)[number];

export type CuttingTool = 'laser' | 'knife';

/** How a layer is painted, as the artist states it. */
export interface PaintSteps {
  readonly coats?: number;
  /** In the artist's words: "10 min". */
  readonly wait?: string;
}

/** For the page that hangs at the wall: of all layers, and of some by name. */
export interface PaintPlan extends PaintSteps {
  /** m² that a can covers once. */
  readonly coverage?: number;
  readonly layers: Readonly<Record<string, PaintSteps>>;
}

export interface Config {
  readonly width: number | undefined;
  readonly height: number | undefined;
  /** Set where whoever asks for the check says the size, for this once. */
  readonly sizeOverridden?: true;
  /** Sheet added around the artwork's frame. */
  readonly margin: number;
  readonly reading: Reading | undefined;
  /** A key of `materials`, or of the table that comes with us. */
  readonly material: string;
  /** The artist's own materials; they win over ours of the same name. */
  readonly materials: Readonly<Record<string, Material>>;
  readonly bed: readonly [number, number] | undefined;
  /** What cuts: only a laser's fumes make some materials unsafe. */
  readonly tool: CuttingTool;
  /** Undefined where it is not stated: then what is usual for tool and material. */
  readonly kerf: number | undefined;
  /** Whether the cut files already allow for the kerf. */
  readonly compensated: boolean;
  /** How fast the tool travels along a cut, in mm/s. */
  readonly speed: number | undefined;
  /** How fast it gets there and stops again, in mm/s². */
  readonly acceleration: number | undefined;
  /** How fast it goes round a right angle, in mm/s. */
  readonly corner: number | undefined;
  /** How fast the acceleration changes, in mm/s³. */
  readonly jerk: number | undefined;
  /** mN·m: of the sheet, across the grain where two were stated. */
  readonly bendingStiffness: number | undefined;
  /** How a strip of the sheet hangs over a table's edge, which tells how stiff it is. */
  readonly droop: Droop | undefined;
  /** The can: how far off it is held, mm, and how hard it blows, N. What is usual where it is not stated. */
  readonly spray: { readonly distance?: number; readonly thrust?: number };
  readonly paint: PaintPlan;
  readonly limits: { readonly bridge?: number; readonly opening?: number; readonly slip?: number };
  /** How bridges are to look, in all layers and in some. */
  readonly bridges: BridgeStyles;
  /** What is painted on, `#rrggbb`. */
  readonly ground: string | undefined;
  readonly layers: readonly LayerEntry[];
  /** For files that do not say it themselves. */
  readonly layering: Layering | undefined;
  readonly checks: Readonly<Partial<Record<CheckId, Severity | 'off'>>>;
  /** Checks whose findings the artist accepts everywhere, each with the reason. */
  readonly accept: Readonly<Partial<Record<CheckId, string>>>;
  /** Checks whose findings are accepted in a part of the project. */
  readonly acceptedIn: readonly PartAcceptance[];
  /** How the layers were separated from a picture. */
  readonly separate: SeparateSettings | undefined;
  /** Findings that were there when the artist drew a line under them. */
  readonly baseline: readonly BaselineEntry[];
  /** Patterns of paths, relative to `tombolo.json`, that are passed over where a folder is checked. */
  readonly ignore: readonly string[];
}

export interface Droop {
  /** mm that hang over the edge. */
  readonly length: number;
  /** mm that the end hangs lower than the table. */
  readonly by: number;
  /** g/m²; the material's where it is not stated. */
  readonly grammage: number | undefined;
}

/** One entry of `layers`: `from` is a file, with `#id` for one element of it. */
export interface LayerEntry {
  readonly from: string;
  readonly name: string | undefined;
  readonly paint: string | undefined;
  /** The name of the layer that it is one painted region with: a second sheet that covers the first one's bridges. */
  readonly with?: string | undefined;
}

/** What the artist said when a picture was separated; what is not stated has its usual value. Lengths in mm. */
export interface SeparateSettings {
  /** The picture's file, seen from the folder of `tombolo.json`. */
  readonly picture?: string;
  readonly colours?: number;
  /** `#rrggbb` */
  readonly paints?: readonly string[];
  readonly detail?: number;
  readonly follow?: number;
  /** Colours, `#rrggbb`, and rectangles, as x, y, width and height from the upper left corner of the print. */
  readonly leaveOut?: readonly (string | LeftOutBox)[];
  readonly outline?: boolean;
  /** Colours that are sprayed in the paint of another one: from which, into which. */
  readonly merged?: readonly MergedColours[];
  /** Paints in the order in which they are sprayed, as far as the artist has chosen it. */
  readonly order?: readonly string[];
  /** What was written, with a stand-in for the text of each file, by which one tells whether it was edited. */
  readonly files: Readonly<Record<string, string>>;
}

export type MergedColours = readonly [from: string, into: string];

export type LeftOutBox = readonly [x: number, y: number, width: number, height: number];

/** A finding by what stays the same while the artist works elsewhere. */
/** What is accepted where all that is stated holds; at least one of file, layer and id is. */
export interface PartAcceptance {
  readonly check: CheckId;
  readonly reason: string;
  /** Relative to `tombolo.json`, with forward slashes. */
  readonly file?: string;
  /** The layer's name. */
  readonly layer?: string;
  /** The id of an element: findings in it and in what it holds. */
  readonly id?: string;
}

export interface BaselineEntry {
  readonly check: CheckId;
  /** Relative to `tombolo.json`, with forward slashes; undefined where it holds for every file. */
  readonly file?: string | undefined;
  /** The layer's name; undefined for findings about a whole file. */
  readonly layer: string | undefined;
  /** Sheet mm; undefined for findings that have no place. */
  readonly at: readonly [number, number] | undefined;
}

export const DEFAULT_CONFIG: Config = {
  width: undefined,
  height: undefined,
  margin: 0,
  reading: undefined,
  material: DEFAULT_MATERIAL,
  materials: {},
  bed: undefined,
  tool: 'laser',
  kerf: undefined,
  compensated: true,
  speed: undefined,
  acceleration: undefined,
  corner: undefined,
  jerk: undefined,
  bendingStiffness: undefined,
  droop: undefined,
  spray: {},
  paint: { layers: {} },
  limits: {},
  bridges: AUTO_STYLES,
  ground: undefined,
  layers: [],
  layering: undefined,
  checks: {},
  accept: {},
  acceptedIn: [],
  separate: undefined,
  baseline: [],
  ignore: [],
};

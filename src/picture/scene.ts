/**
 * What a picture of the stack consists of, whoever paints it: the bench's page, an SVG file or a PNG. Made from our own
 * numbers alone; nothing of the artist's markup goes into it. Lengths in sheet mm, y down.
 */
import type { Matrix, Point } from '../geometry/base/curve-types';
import type { Box } from '../geometry/base/polygon-types';

/** A stack as pictures need it. */
export interface PictureStack {
  /** The sheet's rectangle: frame plus margin. */
  readonly sheet: Box;
  /** In painting order. */
  readonly layers: readonly PictureLayer[];
}

export interface PictureLayer {
  readonly name: string;
  /** `#rrggbb` */
  readonly paint: string;
  /** Path data, to be filled by the even-odd rule. */
  readonly openings: string;
  /** What is sprayed through it, where that is not all of them. */
  readonly sprayed?: string;
  readonly islands: readonly PictureIsland[];
  /** Path data of the lines that are cut, open ones too, where the layer is drawn as such. */
  readonly cutLines?: string;
  /** A point well inside the frame piece; undefined where there is none. */
  readonly label?: Point | undefined;
}

export interface PictureIsland {
  readonly outline: string;
  /** mm² */
  readonly area: number;
  /** A point well inside. */
  readonly label: Point;
}

/** A narrow place of the material. */
export interface PictureNeck {
  /** mm as cut */
  readonly width: number;
  /** The two facing points. */
  readonly from: Point;
  readonly to: Point;
}

/** The ways of looking: what is painted, one sheet, or all of them. */
export type ViewMode = 'print' | 'sheet' | 'sheets';

/** Parts that lie and move together. */
export interface SceneLayer {
  /** Index of the layer; undefined for what belongs to none. */
  readonly layer: number | undefined;
  /** From the sheet's own mm to those of the picture. */
  readonly place: Matrix;
  readonly parts: readonly ScenePart[];
  readonly annotations: readonly Annotation[];
}

export type ScenePartRole =
  | 'shadow'
  | 'ground'
  | 'under'
  | 'card'
  | 'paint'
  | 'island'
  | 'gone'
  | 'fallen'
  | 'cut-line'
  | 'frame'
  | 'bare';

export interface ScenePart {
  readonly role: ScenePartRole;
  readonly outline: string;
  /** `#rrggbb` */
  readonly fill: string;
  /** 0..1 */
  readonly opacity: number;
  /** The slant of the lines across it, in degrees. */
  readonly hatch?: number;
  /** Lines go only so far inside its edge, in mm; all over it where this is missing. */
  readonly rim?: number;
  /** How far it has come away from its place, in mm. */
  readonly fall?: Point;
}

/** Writing on a plate; whoever paints it decides how large letters are. */
export type Annotation =
  | { readonly kind: 'letter'; readonly at: Point; readonly text: string }
  | { readonly kind: 'dimension'; readonly from: Point; readonly to: Point; readonly text: string }
  /** Stands over the point. */
  | { readonly kind: 'caption'; readonly at: Point; readonly text: string; readonly paint: string };

export interface Scene {
  readonly kind: ViewMode;
  /** All that must be seen. */
  readonly box: Box;
  /** From the bottom to the top. */
  readonly sceneLayers: readonly SceneLayer[];
}

/** Loose pieces. */
const LOOSE = '#6d28d9';

export const COLOURS = {
  ground: '#f5f0e4',
  card: '#d8c39b',
  under: '#4a443a',
  shadow: '#000000',
  /** Lines over loose pieces: no paint of the print, and not the red of errors. */
  hatch: LOOSE,
  bare: '#e5007a',
  frame: '#8a8375',
  note: '#1f1b14',
} as const;

/** A loose piece with more than this share of the sheet is marked along its edge only: else it would hide the picture. */
const LARGE = 1 / 3;

/** Of a region's path data the outer ring, which comes first. */
export const outerRing = (outline: string): string => outline.slice(0, outline.indexOf('Z') + 1);

/** How wide that mark is, as a share of the sheet's shorter side. */
const RIM = 0.025;

/** How a loose piece is hatched: all over, or along its edge. */
export function looseHatch(area: number, sheet: Box, hatch: number): Pick<ScenePart, 'hatch' | 'rim'> {
  const [width, height] = [sheet.maxX - sheet.minX, sheet.maxY - sheet.minY];
  return area > LARGE * width * height ? { hatch, rim: RIM * Math.min(width, height) } : { hatch };
}

/** A loose piece in its place. What lies under it is seen through it. */
export function looseInPlace({ outline, area }: PictureIsland, sheet: Box): ScenePart {
  const lines = looseHatch(area, sheet, 45);
  const veil = lines.rim === undefined ? { fill: '#ffffff', opacity: 0.45 } : { fill: 'none', opacity: 1 };
  return { role: 'island', outline, ...veil, ...lines };
}

/** The lines that are cut, where the layer is drawn as such: open ones have no opening that would show them. */
export function cutLineParts({ cutLines = '' }: PictureLayer): ScenePart[] {
  return cutLines === '' ? [] : [{ role: 'cut-line', outline: cutLines, fill: 'none', opacity: 1 }];
}

export function rectangle({ minX, minY, maxX, maxY }: Box): string {
  return `M${minX} ${minY}H${maxX}V${maxY}H${minX}Z`;
}

/** `#rrggbb` as it is; anything else is taken as the colour that stands in for it. */
export function colourOr(colour: string | undefined, fallback: string): string {
  return colour !== undefined && /^#[0-9a-f]{6}$/i.test(colour) ? colour : fallback;
}

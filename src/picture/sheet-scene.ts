/** One sheet, as it comes from the cutter: card with see-through openings, its pieces lettered, its necks measured. */
import type { Point } from '../geometry/base/curve-types';
import { IDENTITY } from '../geometry/base/matrix';
import type { Box } from '../geometry/base/polygon-types';
import {
  type Annotation,
  COLOURS,
  cutLineParts,
  looseHatch,
  type PictureIsland,
  type PictureLayer,
  type PictureNeck,
  type PictureStack,
  rectangle,
  type Scene,
  type ScenePart,
} from './scene';

/** Slants that tell neighbouring pieces apart, in degrees. */
const SLANTS = [45, -45, 0, 90, 22.5, -67.5];

export interface SheetOptions {
  readonly necks?: readonly PictureNeck[];
}

/** @param index of the layer whose sheet it is; a stack without that layer gives an empty picture */
export function sheetScene({ sheet, layers }: PictureStack, index: number, { necks = [] }: SheetOptions = {}): Scene {
  const layer = layers[index];
  if (!layer) return { kind: 'sheet', box: sheet, sceneLayers: [] };
  const outline = rectangle(sheet);
  const parts: ScenePart[] = [
    { role: 'shadow', outline, fill: COLOURS.shadow, opacity: 0.22 },
    { role: 'under', outline, fill: COLOURS.under, opacity: 1 },
    card(outline, layer),
    ...layer.islands.map(gone),
    ...cutLineParts(layer),
    ...layer.islands.map((island, order) => fallen(island, order, sheet)),
    { role: 'frame', outline, fill: COLOURS.frame, opacity: 1 },
  ];
  const frame: Annotation[] = layer.label ? [{ kind: 'letter', at: layer.label, text: pieceLetter(0) }] : [];
  const notes = [...frame, ...layer.islands.map(letterOf), ...necks.map(dimension)];
  return { kind: 'sheet', box: sheet, sceneLayers: [{ layer: index, place: IDENTITY, parts, annotations: notes }] };
}

/** The material with its openings left out. */
export function card(outline: string, { openings }: PictureLayer): ScenePart {
  return { role: 'card', outline: outline + openings, fill: COLOURS.card, opacity: 1 };
}

/** The place that an island has left. */
function gone({ outline }: PictureIsland): ScenePart {
  return { role: 'gone', outline, fill: COLOURS.under, opacity: 1 };
}

/** An island hangs a little out of its place, larger ones farther. */
function fallen({ outline, area }: PictureIsland, order: number, sheet: Box): ScenePart {
  const slant = SLANTS[order % SLANTS.length] as number;
  return {
    role: 'fallen',
    outline,
    fill: COLOURS.card,
    opacity: 1,
    ...looseHatch(area, sheet, slant),
    fall: fallOf(area),
  };
}

function fallOf(area: number): Point {
  const size = Math.sqrt(area);
  return { x: size * 0.06, y: size * 0.14 };
}

/** The frame piece is the first; islands are lettered on from it. */
function letterOf({ label, area }: PictureIsland, order: number): Annotation {
  const { x, y } = fallOf(area);
  return { kind: 'letter', at: { x: label.x + x, y: label.y + y }, text: pieceLetter(order + 1) };
}

/** a, b … z, aa, ab …: findings are numbered, so pieces are not. */
export function pieceLetter(order: number): string {
  const last = String.fromCharCode(97 + (order % 26));
  return order < 26 ? last : pieceLetter(Math.floor(order / 26) - 1) + last;
}

function dimension({ width, from, to }: PictureNeck): Annotation {
  return { kind: 'dimension', from, to, text: width.toFixed(2) };
}

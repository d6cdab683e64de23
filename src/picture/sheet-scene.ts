/** One sheet, as it comes from the cutter: card with see-through openings, its pieces numbered, its necks measured. */
import type { Point } from '../geometry/base/curve-types';
import { IDENTITY } from '../geometry/base/matrix';
import {
  type Annotation,
  COLOURS,
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
    ...layer.islands.map(fallen),
    { role: 'frame', outline, fill: COLOURS.frame, opacity: 1 },
  ];
  const frame: Annotation[] = layer.label ? [{ kind: 'number', at: layer.label, text: '1' }] : [];
  const notes = [...frame, ...layer.islands.map(numberOf), ...necks.map(dimension)];
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
function fallen({ outline, area }: PictureIsland, order: number): ScenePart {
  const size = Math.sqrt(area);
  const slant = SLANTS[order % SLANTS.length] as number;
  return {
    role: 'fallen',
    outline,
    fill: COLOURS.card,
    opacity: 1,
    hatch: slant,
    fall: { x: size * 0.06, y: size * 0.14 },
  };
}

/** The frame piece is the first; islands are counted on from it. */
function numberOf(island: PictureIsland, order: number): Annotation {
  const { x, y } = fallen(island, order).fall as Point;
  const at = { x: island.label.x + x, y: island.label.y + y };
  return { kind: 'number', at, text: String(order + 2) };
}

function dimension({ width, from, to }: PictureNeck): Annotation {
  return { kind: 'dimension', from, to, text: width.toFixed(2) };
}

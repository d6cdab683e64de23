/** All sheets, laid out on a table in painting order: side by side, or each a step beside the one before. */
import type { Point } from '../geometry/base/curve-types';
import { translation } from '../geometry/base/matrix';
import type { Box } from '../geometry/base/polygon-types';
import {
  COLOURS,
  colourOr,
  cutLineParts,
  looseInPlace,
  type PictureStack,
  rectangle,
  type Scene,
  type SceneLayer,
} from './scene';
import { card } from './sheet-scene';

export interface SheetsOptions {
  /** Width over height of the window that they shall fill. */
  readonly aspect?: number;
  /**
   * From 0 (in register) to 1 (clear of each other): a step between one sheet and the next; undefined: side by side.
   */
  readonly apart?: number | undefined;
  readonly isShown?: (layer: number) => boolean;
}

/** Between two sheets, as a share of the sheet's shorter side: room for the name of the sheet below. */
const GAP = 0.2;

export function allSheetsScene(stack: PictureStack, options: SheetsOptions = {}): Scene {
  const { sheet, layers } = stack;
  const shown = layers.map((_, index) => index).filter((index) => options.isShown?.(index) !== false);
  const steps =
    options.apart === undefined
      ? layOutGrid(shown.length, sheet, options.aspect ?? 1.5)
      : layOutSteps(shown.length, sheet, options.apart);
  const plates = shown.map((layer, order) => sheetLayer(stack, layer, steps[order] ?? { x: 0, y: 0 }));
  const [right, lower] = [Math.max(0, ...steps.map(({ x }) => x)), Math.max(0, ...steps.map(({ y }) => y))];
  const room = gapOf(sheet);
  // For the names above, for edges and shadows all round.
  const rim = room / 4;
  const box = {
    minX: sheet.minX - rim,
    minY: sheet.minY - room,
    maxX: sheet.maxX + right + rim,
    maxY: sheet.maxY + lower + rim,
  };
  return { kind: 'sheets', box, sceneLayers: plates };
}

function sheetLayer({ sheet, layers }: PictureStack, index: number, step: Point): SceneLayer {
  const layer = layers[index] as PictureStack['layers'][number];
  const outline = rectangle(sheet);
  const cut = card(outline, layer);
  return {
    layer: index,
    place: translation(step.x, step.y),
    parts: [
      { role: 'shadow', outline: cut.outline, fill: COLOURS.shadow, opacity: 0.22 },
      cut,
      ...cutLineParts(layer),
      ...layer.islands.map((island) => looseInPlace(island, sheet)),
      { role: 'frame', outline, fill: COLOURS.frame, opacity: 1 },
    ],
    annotations: [
      {
        kind: 'caption',
        at: { x: sheet.minX, y: sheet.minY },
        text: `${index + 1}  ${layer.name}`,
        paint: colourOr(layer.paint, '#000000'),
      },
    ],
  };
}

const sizeOf = ({ minX, minY, maxX, maxY }: Box) => ({ width: maxX - minX, height: maxY - minY });

function gapOf(sheet: Box): number {
  const { width, height } = sizeOf(sheet);
  return GAP * Math.min(width, height);
}

/** In rows, with as many columns as show the sheets largest in a window of that aspect. */
function layOutGrid(count: number, sheet: Box, aspect: number): Point[] {
  const { width, height } = sizeOf(sheet);
  const gap = gapOf(sheet);
  const sizeWith = (columns: number) => {
    const rows = Math.ceil(count / columns);
    return Math.min(aspect / (columns * (width + gap)), 1 / (rows * (height + gap)));
  };
  let best = 1;
  for (let columns = 2; columns <= count; columns += 1) if (sizeWith(columns) > sizeWith(best) * 1.0001) best = columns;
  return Array.from({ length: count }, (_, order) => ({
    x: (order % best) * (width + gap),
    y: Math.floor(order / best) * (height + gap),
  }));
}

function layOutSteps(count: number, sheet: Box, apart: number): Point[] {
  const { width, height } = sizeOf(sheet);
  const gap = gapOf(sheet);
  return Array.from({ length: count }, (_, order) => ({
    x: order * apart * (width + gap),
    y: order * apart * 0.6 * (height + gap),
  }));
}

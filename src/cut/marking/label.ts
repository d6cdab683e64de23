/** What is written on a sheet with a pen or a weak beam, where it stays: on the frame piece, clear of every opening. */
import { limitsOf } from '../../config/limits';
import type { Config } from '../../config/types';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { boxesTouch, growBox } from '../../geometry/base/ring';
import { boxOfPolygon, clipToBox, regionContains } from '../../geometry/boolean/index';
import type { Sheet } from '../../sheet/types';
import { oneLine } from '../../text/plain-text';
import { drawable, strokesOfText, widthOfText } from './letters';

/** mm: from letters that are read at arm's length down to the least that a pen draws. Common practice, no source. */
const HEIGHTS = [4, 3, 2.5, 2, 1.5];

/** A longer name is not needed to tell sheets apart. */
const LONGEST_NAME = 24;

export interface Label {
  /** Each a line through points; sheet mm. */
  readonly strokes: readonly (readonly Point[])[];
  readonly box: Box;
}

/** The text of a sheet's label: which way is up, which sheet it is, its name and its paint. */
export function labelText({ layer }: Sheet, { number, count }: { number: number; count: number }): string {
  const name = drawable([...oneLine(layer.name)].slice(0, LONGEST_NAME).join(''));
  const known = name.replace(/[? ]/g, '').length > 0 ? ` ${name}` : '';
  return drawable(`↑ ${number} of ${count}${known} ${layer.paint}`);
}

/** The label, as large as there is room for, rather near the lower edge; undefined where there is none. */
export function labelFor(sheet: Sheet, text: string, config: Config): Label | undefined {
  const clearance = limitsOf(config).bridge;
  for (const height of HEIGHTS) {
    const width = widthOfText(text, height);
    const box = freePlace(sheet, { width, height }, clearance);
    if (box) return { box, strokes: strokesOfText(text, { x: box.minX, y: box.minY }, height) };
  }
  return undefined;
}

/** Row by row from below, in each from the left. */
function freePlace(
  sheet: Sheet,
  { width, height }: { readonly width: number; readonly height: number },
  clearance: number,
): Box | undefined {
  const room = growBox(sheet.frame, -clearance);
  for (let minY = room.maxY - height; minY >= room.minY; minY -= height / 2) {
    for (let minX = room.minX; minX + width <= room.maxX; minX += height) {
      const box = { minX, minY, maxX: minX + width, maxY: minY + height };
      if (isFree(sheet, box, clearance)) return box;
    }
  }
  return undefined;
}

/** Whether a box lies on the frame piece, so far from every opening. */
export function isFree({ openings, pieces }: Sheet, box: Box, clearance: number): boolean {
  const around = growBox(box, clearance);
  const near = openings.filter((opening) => boxesTouch(boxOfPolygon(opening), around));
  if (near.length > 0 && clipToBox(near, around).length > 0) return false;
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return !pieces.some(({ island, polygon }) => island && regionContains([polygon], middle));
}

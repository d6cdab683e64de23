/** What openings leave of a sheet at its own edge, and what comes of a margin that is missing. Sheet mm. */
import { defined } from '../base/defined';
import { FARTHEST } from '../drawing/reach';
import type { Point } from '../geometry/base/curve-types';
import type { Box, Polygon, Ring } from '../geometry/base/polygon-types';
import { boxContainsBox, boxesTouch, boxOfRing, growBox } from '../geometry/base/ring';
import { WRITTEN_STEP } from '../geometry/base/tolerances';
import { boxOfPolygon } from '../geometry/boolean/index';
import { lengthOnFrame } from './pieces';
import type { Piece, Sheet } from './types';

/** An opening that leaves too little of the sheet between itself and the edge. */
export interface EdgeOpening {
  readonly sheet: Sheet;
  readonly opening: Polygon;
  /** Where it comes nearest to the edge. */
  readonly at: Point;
  /** mm of sheet that are left there as cut; 0 where nothing is. */
  readonly rim: number;
  /** At which sides of the sheet, as bits: left 1, right 2, upper 4, lower 8. */
  readonly sides: number;
}

/** From so many on, openings at one side alone speak of a margin that is missing. Common practice, no source. */
const MANY = 3;

/** mm: what is nearer to the edge lies on it. */
const ON_EDGE = WRITTEN_STEP;

/** @param least mm of sheet that must be left as cut: the tool takes half its kerf at the opening, half at the edge */
export function openingsAtEdge(sheet: Sheet, least: number): EdgeOpening[] {
  const { frame, openings, kerf } = sheet;
  const clear = growBox(frame, -least - kerf);
  return openings.flatMap((opening) => {
    if (boxContainsBox(clear, boxOfPolygon(opening))) return [];
    const { at, distance } = nearestToEdge(opening, frame);
    const rim = distance <= ON_EDGE ? 0 : Math.max(0, distance - kerf);
    return rim < least ? [{ sheet, opening, at, rim, sides: sidesNear(boxOfPolygon(opening), clear) }] : [];
  });
}

/**
 * Whether it is the margin that is missing, rather than that an opening lies wrong: where the openings of all layers
 * together come too near to two sides or more, or several do, or those of two layers: the picture itself runs off there. A layer that draws what stays has its rim in the drawing.
 */
export function lacksMargin(found: readonly EdgeOpening[]): boolean {
  if (found.some(({ sheet }) => sheet.layer.reading === 'sheet')) return false;
  const sides = found.reduce((all, each) => all | each.sides, 0);
  const layers = new Set(found.map(({ sheet }) => sheet.layer.id));
  return found.length >= MANY || layers.size > 1 || (sides & (sides - 1)) !== 0;
}

/**
 * How much sheet must be added on every side, in whole mm, so that all openings leave a rim: as far as those that the
 * edge cuts off reach beyond it, and what then comes near to the new edge.
 * @param least mm of sheet that must be left as cut
 * @returns undefined where that would be more than any sheet can have
 */
export function marginNeeded(sheets: readonly Sheet[], least: number): number | undefined {
  const drawn = sheets.map(({ frame, kerf, fills, openings, layer }) => {
    const regions = layer.reading === 'outlines' ? [openings] : fills;
    return { frame, room: least + kerf, boxes: regions.flat().map(boxOfPolygon) };
  });
  for (let margin = 0; ; ) {
    const needed = Math.max(
      0,
      ...drawn.flatMap(({ frame, room, boxes }) => {
        const met = boxes.filter((box) => boxesTouch(box, growBox(frame, margin)));
        return met.map((box) => room + beyond(box, frame));
      }),
    );
    const whole = Math.ceil(needed - ON_EDGE);
    if (whole > FARTHEST) return undefined;
    if (whole <= margin) return margin;
    margin = whole;
  }
}

/** Whether a piece only hangs on nothing because an opening runs off the sheet beside it: the edge is its own. */
export function endsAtEdge({ frame, kerf }: Sheet, { polygon }: Piece): boolean {
  return lengthOnFrame(polygon.outer, growBox(frame, -kerf / 2)) > 0;
}

/** Whether a place lies on the sheet's edge. */
export function isOnEdge({ frame }: Pick<Sheet, 'frame'>, { x, y }: Point): boolean {
  return toEdge(frame, x, y) <= ON_EDGE;
}

/** Whether any of a ring runs along the sheet's edge, or an opening's box comes to it. */
export function meetsEdge({ frame }: Pick<Sheet, 'frame'>, ring: Ring): boolean {
  return !boxContainsBox(growBox(frame, -ON_EDGE), boxOfRing(ring));
}

/** A rectangle's edge is met first at a vertex: its distance is linear along every edge of the opening. */
function nearestToEdge({ outer }: Polygon, frame: Box): { readonly at: Point; readonly distance: number } {
  let [at, distance] = [{ x: 0, y: 0 }, Infinity];
  for (let i = 0; i < outer.length; i += 2) {
    const [x, y] = [defined(outer[i]), defined(outer[i + 1])];
    const away = toEdge(frame, x, y);
    if (away < distance) [at, distance] = [{ x, y }, away];
  }
  return { at, distance };
}

function toEdge(frame: Box, x: number, y: number): number {
  return Math.min(x - frame.minX, frame.maxX - x, y - frame.minY, frame.maxY - y);
}

function sidesNear(box: Box, clear: Box): number {
  const near = [box.minX < clear.minX, box.maxX > clear.maxX, box.minY < clear.minY, box.maxY > clear.maxY];
  return near.reduce((bits, is, side) => bits | (is ? 1 << side : 0), 0);
}

/** mm that a box reaches over the frame; below 0 where it lies within. */
function beyond(box: Box, frame: Box): number {
  return Math.max(frame.minX - box.minX, box.maxX - frame.maxX, frame.minY - box.minY, box.maxY - frame.maxY);
}

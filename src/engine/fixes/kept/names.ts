/** Names for the islands of a drawing that its next build has as well: by the element that draws them, and where in it. */
import type { Bridge } from '../../../edits/plan/types';
import type { Point } from '../../../geometry/base/curve-types';
import type { Box } from '../../../geometry/base/polygon-types';
import { boxOfRing } from '../../../geometry/base/ring';
import { regionContains } from '../../../geometry/boolean/index';
import { attributeOf } from '../../../markup/query';
import { sourcesOf } from '../../../sheet/source-index';
import type { Piece, Sheet } from '../../../sheet/types';

/** Plain data, as plans have it. Sheet mm. */
export interface IslandName {
  /** The layer's name. */
  readonly layer: string;
  /** The id of the element that draws its edge, where that has one. */
  readonly id?: string;
  /** Which of the elements of its layer that is, from nought. */
  readonly ordinal: number;
  /** The box of what the element draws: minX, minY, maxX, maxY. */
  readonly element: readonly number[];
  /** The box of the island. */
  readonly box: readonly number[];
}

export type BoxList = readonly number[];

/** @returns undefined where no element draws its edge */
export function nameOfIsland(sheet: Sheet, island: Piece): IslandName | undefined {
  const { shapes, name: layer } = sheet.layer;
  const source = sourcesOf(sheet).along(island.polygon.outer)[0];
  if (!source) return undefined;
  const { element } = source.shape;
  const elements = [...new Set(shapes.map((shape) => shape.element))];
  const drawn = shapes.flatMap((shape, i) => (shape.element === element ? (sheet.fills[i] ?? []) : []));
  const box = boxOfRing(island.polygon.outer);
  const boxes = drawn.map(({ outer }) => boxOfRing(outer));
  const id = attributeOf(element, 'id')?.value;
  return {
    layer,
    ...(id && { id }),
    ordinal: elements.indexOf(element),
    element: listOf(boxes.length > 0 ? boxRound(boxes) : box),
    box: listOf(box),
  };
}

/** The island that a bridge of a plan holds, as the sheet without the plan has it. */
export function islandOf({ pieces }: Sheet, { island, target }: Bridge): Piece | undefined {
  const loose = pieces.filter((piece) => piece.island);
  const held = [island, target].map(({ label }) => loose.find(({ polygon }) => regionContains([polygon], label)));
  return held.find((each) => each !== undefined);
}

/** Moves a place with a box that was moved and stretched. */
export function movedWith(point: Point, before: BoxList, now: BoxList): Point {
  const along = (value: number, axis: 0 | 1): number => {
    const [from = 0, to = 0] = [before[axis], before[axis + 2]];
    const [start = 0, end = 0] = [now[axis], now[axis + 2]];
    const share = to > from ? (value - from) / (to - from) : 0.5;
    return start + share * (end - start);
  };
  return { x: along(point.x, 0), y: along(point.y, 1) };
}

export function middleOf([minX = 0, minY = 0, maxX = 0, maxY = 0]: BoxList): Point {
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

function listOf({ minX, minY, maxX, maxY }: Box): number[] {
  return [minX, minY, maxX, maxY];
}

function boxRound(boxes: readonly Box[]): Box {
  return {
    minX: Math.min(...boxes.map(({ minX }) => minX)),
    minY: Math.min(...boxes.map(({ minY }) => minY)),
    maxX: Math.max(...boxes.map(({ maxX }) => maxX)),
    maxY: Math.max(...boxes.map(({ maxY }) => maxY)),
  };
}

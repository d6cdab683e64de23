/** Where bridges go: the islands of a layer, tied to the frame, all planned at once. */
import type { Point } from '../geometry/curve';
import { areaOf, intersection } from '../geometry/polygons';
import { add, scale, subtract } from '../geometry/point';
import type { Region } from '../geometry/region';
import { centroidOfRing } from '../geometry/rings';
import { buildSegmentIndex } from '../geometry/segment-index';
import type { Piece, Sheet } from '../sheet/sheet';
import type { Bridge } from './bridge';
import { crossersNear, crossersOf } from './candidates';
import { bridgesFor, chooseCrossers, stripOf } from './choose-crossers';
import { hangingTree } from './hanging-tree';
import { rateCrosser, type RatedCrosser, type Surroundings } from './rate-crosser';
import { stripAlong, type Strip } from './strip';
import { polygonOf } from './strip-reach';

export type { Bridge } from './bridge';

export interface PlanOptions {
  /** mm, as drawn: the least width of a bridge plus the kerf. */
  readonly width: number;
  /** How many for each island; by default its size decides. */
  readonly count?: 'auto' | number;
  /** A place that the artist chose, in sheet mm: the first bridge of each island goes as near to it as can be. */
  readonly near?: Point;
  readonly align?: 'none' | 'vertical';
  /** The shortest ones, wherever they are: an island may hinge. */
  readonly shortestOnly?: boolean;
  /** What later layers paint over, in sheet mm: bridges there leave no bare shadow, so they are preferred. */
  readonly hidden?: Region;
}

export interface BridgePlan {
  /** Islands nearest to the frame first. */
  readonly bridges: readonly Bridge[];
  /** Islands for which no place was found. */
  readonly unbridged: readonly Piece[];
}

/**
 * Plans bridges for the islands asked for, and for those that they hang on on the way to the frame. The same sheet gives
 * the same plan.
 */
export function planBridges(sheet: Sheet, islands: readonly Piece[], options: PlanOptions): BridgePlan {
  const around = surroundingsOf(sheet, options);
  const rated = sheet.pieces.map((piece, number) => (piece.island ? ratedCrossers(sheet, piece, number, options, around) : []));
  const frames = sheet.pieces.flatMap((piece, number) => (piece.island ? [] : [number]));
  const asked = islands.map((island) => sheet.pieces.indexOf(island)).filter((number) => number >= 0);
  const tree = hangingTree(rated, frames, asked);
  const bridges: Bridge[] = [];
  const taken: Strip[] = [];
  const held = new Set(frames);
  const members = new Set([...frames, ...tree]);
  for (const number of tree) {
    const piece = sheet.pieces[number] as Piece;
    const usable = (rated[number] ?? []).filter((crosser) => members.has(crosser.target));
    const chosen = chooseCrossers(usable, choiceFor(piece, options, taken, held));
    taken.push(...chosen.map((crosser) => stripOf(crosser, options.width)));
    bridges.push(...chosen.map((crosser) => bridgeFrom(crosser, piece, sheet, options)));
    if (chosen.length > 0) held.add(number);
  }
  return { bridges, unbridged: islands.filter((island) => !held.has(sheet.pieces.indexOf(island))) };
}

function surroundingsOf(sheet: Sheet, options: PlanOptions): Surroundings {
  return {
    pieces: buildSegmentIndex(sheet.pieces.map((piece) => piece.polygon)),
    drawn: sheet.kerf > 0 ? buildSegmentIndex(sheet.openings) : undefined,
    kerf: sheet.kerf,
    thin: sheet.thinMaterial,
    hidden: options.hidden ?? [],
    align: options.align ?? 'none',
  };
}

function ratedCrossers(
  sheet: Sheet, piece: Piece, number: number, options: PlanOptions, around: Surroundings,
): RatedCrosser[] {
  const { frame } = sheet;
  const limit = Math.hypot(frame.maxX - frame.minX, frame.maxY - frame.minY);
  const found = crossersOf(around.pieces, number, piece.polygon.outer, middleOf(piece), limit);
  const near = options.near ? crossersNear(around.pieces, number, options.near, limit) : [];
  return [...near, ...found]
    .map((crosser) => rateCrosser(crosser, number, options.width, around))
    .filter((crosser) => crosser !== undefined)
    .sort((a, b) => a.cost - b.cost);
}

function middleOf({ polygon, label }: Piece): Point {
  return centroidOfRing(polygon.outer) ?? label;
}

function choiceFor(
  piece: Piece, options: PlanOptions, taken: readonly Strip[], held: ReadonlySet<number>,
): Parameters<typeof chooseCrossers>[1] {
  const { count, width, near, shortestOnly = false } = options;
  return {
    count: typeof count === 'number' ? Math.max(1, Math.round(count)) : bridgesFor(piece),
    width, near, shortestOnly, taken: [...taken], middle: middleOf(piece),
    held: (crosser) => held.has(crosser.target),
  };
}

/** From the pieces as cut back to the drawn edges, half a kerf at either end. */
function bridgeFrom({ from, to, length }: RatedCrosser, island: Piece, sheet: Sheet, options: PlanOptions): Bridge {
  const half = scale(subtract(to, from), Math.min(sheet.kerf / 2, length / 4) / length);
  const ends = { from: add(from, half), to: subtract(to, half) };
  const drawn = length - 2 * Math.min(sheet.kerf / 2, length / 4);
  const bridge = { island, ...ends, width: options.width, length: drawn };
  return options.hidden ? { ...bridge, hiddenShare: hiddenShare(bridge, options.hidden) } : bridge;
}

function hiddenShare({ from, to, width, length }: Bridge, hidden: Region): number {
  const strip = [polygonOf(stripAlong(from, to, width, 0))];
  return intersection(strip, hidden).reduce((sum, polygon) => sum + areaOf(polygon), 0) / (width * length);
}

/** Where bridges go: the islands of a layer, tied to the frame, all planned at once. */

import { defined } from '../../base/defined';
import { DEFAULT_CONFIG } from '../../config/types';
import type { Point } from '../../geometry/base/curve-types';
import type { Region } from '../../geometry/base/polygon-types';
import { boxOfRing } from '../../geometry/base/ring';
import { ON_CURVE } from '../../geometry/base/tolerances';
import { add, distance, interpolate, scale, subtract } from '../../geometry/base/vector';
import { areaOf, intersection } from '../../geometry/boolean/index';
import { buildSegmentIndex, type SegmentIndex } from '../../geometry/spatial/segment-index';
import { bendingOf } from '../../sheet/deflection';
import type { Piece, Sheet } from '../../sheet/types';
import { polygonOf, stripAlong } from '../strip/strip';
import { candidatesNear, candidatesOf } from './candidates';
import { type Design, designOf } from './design/index';
import { groundOf } from './keep-apart';
import { byCost, type ScoredCandidate, type Surroundings, scoreCandidate } from './score';
import { assignAlone, assignBridges } from './search/assign';
import { bodyOf } from './search/body';
import { bridgeCountFor } from './search/count';
import { minimumSpanningTree } from './search/spanning-tree';
import { WEIGHTS } from './search/weights';
import { isTooFar } from './too-far';
import type { Bridge, PlanOptions, Unbridged } from './types';
import { cornerWaysFrom } from './ways/corner-ways';
import { everyWayFrom } from './ways/every-way';

export type { Bridge, PlanOptions, Unbridged } from './types';

/** mm: no bridge is planned that is longer. */
export const LONGEST_BRIDGE = WEIGHTS.longest.value;

export interface BridgePlan {
  /** Islands nearest to the frame first. */
  readonly bridges: readonly Bridge[];
  /** Islands for which no place was found. */
  readonly unbridged: readonly Piece[];
  /** Of each of these why. */
  readonly reasons: ReadonlyMap<Piece, Unbridged>;
}

/** mm */
const ROUNDING = 2 * ON_CURVE;

/**
 * Plans bridges for the islands asked for, and for those that they hang on on the way to the frame. The same sheet
 * gives the same plan.
 */
export function planBridges(sheet: Sheet, islands: readonly Piece[], options: PlanOptions): BridgePlan {
  const asked = islands.map((island) => sheet.pieces.indexOf(island)).filter((number) => number >= 0);
  const { pieces } = sheet;
  const longest = options.near || options.unseen ? Infinity : LONGEST_BRIDGE + sheet.kerf;
  const around = { ...surroundingsOf(sheet, options), longest };
  const ways = options.alone
    ? candidatesFrom(sheet, asked, options, around)
    : candidatesToFrame(sheet, asked, options, around);
  const frames = new Set(pieces.flatMap((piece, number) => (piece.island ? [] : [number])));
  const design = designFor(sheet, options, around.pieces);
  const state = { pieces, ways, options, around, design, asked: new Set(asked), frames };
  const ties = options.alone ? assignAlone(state) : assignBridges(state);
  const tied = new Set(ties.flatMap(({ island, target }) => [island, target]));
  const unbridged = islands.filter((island) => !tied.has(pieces.indexOf(island)));
  return {
    bridges: ties.map((tie) => bridgeFrom(tie, defined(pieces[tie.island]), sheet, options)),
    unbridged,
    reasons: new Map(unbridged.map((island) => [island, reasonFor(sheet, island, around)])),
  };
}

function reasonFor({ pieces, kerf }: Sheet, island: Piece, around: Surroundings): Unbridged {
  return isTooFar(pieces, pieces.indexOf(island), around.pieces, LONGEST_BRIDGE + kerf) ? 'too-far' : 'no-place';
}

/** mm² of an island that one of its bridges holds. */
function heldByOne({ polygon, area }: Piece): number {
  return area / bridgeCountFor(boxOfRing(polygon.outer), area);
}

/** For the pieces asked for the ways across that leave them, for the others none. */
function candidatesFrom(
  sheet: Sheet,
  asked: readonly number[],
  options: PlanOptions,
  around: Surroundings,
): ScoredCandidate[][] {
  return sheet.pieces.map((piece, number) =>
    asked.includes(number) ? scoredCandidates(sheet, piece, number, options, around) : [],
  );
}

/** For each piece the ways across that leave it; only for as many islands as it takes to reach the frame. */
function candidatesToFrame(
  sheet: Sheet,
  asked: readonly number[],
  options: PlanOptions,
  around: Surroundings,
): ScoredCandidate[][] {
  const frames = sheet.pieces.flatMap((piece, number) => (piece.island ? [] : [number]));
  const ways: ScoredCandidate[][] = sheet.pieces.map(() => []);
  const known = new Set(frames);
  for (let next = [...asked]; next.length > 0; ) {
    for (const number of next) {
      ways[number] = scoredCandidates(sheet, defined(sheet.pieces[number]), number, options, around);
      known.add(number);
    }
    const hung = new Set(minimumSpanningTree(ways, frames, [...known]));
    const stuck = [...known].filter((number) => !hung.has(number) && !frames.includes(number));
    next = [...new Set(stuck.flatMap((number) => defined(ways[number]).map(({ target }) => target)))].filter(
      (target) => !known.has(target),
    );
  }
  return ways;
}

/** What ways across are rated by: edges of the pieces, thin places, what later layers cover. */
export function surroundingsOf(sheet: Sheet, options: PlanOptions): Surroundings {
  const pieces = buildSegmentIndex(sheet.pieces.map((piece) => piece.polygon));
  const { apartFrom } = options;
  return {
    pieces,
    drawn: sheet.kerf > 0 ? buildSegmentIndex(sheet.openings) : undefined,
    kerf: sheet.kerf,
    thin: sheet.thinMaterial,
    hidden: options.hidden ?? [],
    hiddenWorth: (options.preferHidden ? WEIGHTS.hiddenFirst : WEIGHTS.hidden).value,
    stand: directionsFor(sheet, options, pieces),
    rule: {
      width: options.width,
      kerf: sheet.kerf,
      bending: options.bending ?? bendingOf(DEFAULT_CONFIG),
      exact: options.exact ?? options.unseen ?? false,
    },
    longest: Infinity,
    lines: sheet.layer.shapes.every(({ part }) => part === 'stroke'),
    held: sheet.pieces.map((piece) => (piece.island ? heldByOne(piece) : 0)),
    taken: apartFrom && groundOf(sheet, apartFrom.bridges, apartFrom.distance, pieces),
  };
}

const UP: Point = { x: 0, y: -1 };
const RIGHT: Point = { x: 1, y: 0 };

/** Who chooses the place, or wants the shortest, wants nothing alike. */
export function designFor(sheet: Sheet, options: PlanOptions, pieces: SegmentIndex): Design | undefined {
  const { near, shortestOnly, unseen } = options;
  return near || shortestOnly || unseen ? undefined : designOf(sheet, pieces);
}

/** What was asked for; else the counters of a word stand as its stems do. */
function directionsFor(sheet: Sheet, options: PlanOptions, pieces: SegmentIndex): Surroundings['stand'] {
  const { align = 'none' } = options;
  if (align !== 'none') return () => (align === 'vertical' ? UP : RIGHT);
  const { rows = [] } = designFor(sheet, options, pieces) ?? {};
  const stems = new Map(rows.flatMap(({ along, counters }) => counters.map(({ piece }) => [piece, along])));
  return (island) => stems.get(island);
}

/** Where a quick search finds no place, every place is looked at, and at last every way. */
export function scoredCandidates(
  sheet: Sheet,
  piece: Piece,
  number: number,
  options: PlanOptions,
  around: Surroundings,
): ScoredCandidate[] {
  const limit = Math.min(diagonalOf(sheet), around.longest);
  const outOfCorners = waysOutOfCorners(limit, piece, number, options, around);
  const usual = [...waysWithin(limit, piece, number, options, around), ...outOfCorners].sort(byCost);
  if (usual.length > 0) return usual;
  const more = options.thorough ? [] : waysWithin(limit, piece, number, { ...options, thorough: true }, around);
  return more.length > 0 ? more : everyWayFrom(piece.polygon.outer, number, limit, options.width, around);
}

/** Only of islands that one bridge does not hold, and where no direction is asked for. */
function waysOutOfCorners(
  limit: number,
  piece: Piece,
  number: number,
  { width, near }: PlanOptions,
  around: Surroundings,
): ScoredCandidate[] {
  const { outer } = piece.polygon;
  if (near || around.stand(number) || bridgeCountFor(boxOfRing(outer), piece.area) < 2) return [];
  return cornerWaysFrom(outer, bodyOf(piece), number, limit, width, around);
}

function waysWithin(
  limit: number,
  piece: Piece,
  number: number,
  options: PlanOptions,
  around: Surroundings,
): ScoredCandidate[] {
  const { pieces, lines } = around;
  const search = { ...options, stand: around.stand(number) };
  const found = candidatesOf(pieces, number, piece.polygon.outer, bodyOf(piece).middle, limit, search, lines);
  const near = options.near ? candidatesNear(pieces, number, options.near, limit, lines) : [];
  return [...near, ...found]
    .flatMap((crosser) => scoreCandidate(crosser, number, options.width, around) ?? [])
    .sort(byCost);
}

function diagonalOf({ frame }: Sheet): number {
  return Math.hypot(frame.maxX - frame.minX, frame.maxY - frame.minY);
}

/** From the pieces as cut back to the drawn edges, half a kerf at either end. */
export function bridgeFrom(
  { from, to, length, target, width }: ScoredCandidate,
  island: Piece,
  sheet: Sheet,
  options: PlanOptions,
): Bridge {
  const half = scale(subtract(to, from), Math.min(sheet.kerf / 2, length / 4) / length);
  const ends = straightenBridge(add(from, half), subtract(to, half));
  const drawn = length - 2 * Math.min(sheet.kerf / 2, length / 4);
  const bridge = { island, target: defined(sheet.pieces[target]), ...ends, width, length: drawn };
  return options.hidden ? { ...bridge, hiddenShare: hiddenShare(bridge, options.hidden) } : bridge;
}

/** Ways that are level or upright but for rounding are made so: the edges of their strips take fewer numbers. */
function straightenBridge(from: Point, to: Point): { from: Point; to: Point } {
  const middle = interpolate(from, to, 0.5);
  if (distance(from, to) < 20 * ROUNDING) return { from, to };
  if (Math.abs(from.x - to.x) < ROUNDING) return { from: { x: middle.x, y: from.y }, to: { x: middle.x, y: to.y } };
  if (Math.abs(from.y - to.y) < ROUNDING) return { from: { x: from.x, y: middle.y }, to: { x: to.x, y: middle.y } };
  return { from, to };
}

function hiddenShare({ from, to, width, length }: Bridge, hidden: Region): number {
  const strip = [polygonOf(stripAlong(from, to, width, 0))];
  return intersection(strip, hidden).reduce((sum, polygon) => sum + areaOf(polygon), 0) / (width * length);
}

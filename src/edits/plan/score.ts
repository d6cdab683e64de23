/** How well a bridge would stand in a place. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Region } from '../../geometry/base/polygon-types';
import { DRAWN_ALIKE, WRITTEN_STEP } from '../../geometry/base/tolerances';
import { add, cross, distance, interpolate, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import { firstHit } from '../../geometry/spatial/raycast';
import type { SegmentIndex } from '../../geometry/spatial/segment-index';
import type { ThinPlace } from '../../sheet/thin-places';
import { calmLength } from './calm';
import type { BridgeCandidate } from './candidates';
import { crossesTaken, keepsApart, type TakenGround } from './keep-apart';
import { type Lane, laneAt } from './lanes';
import { hangsByTip } from './on-tip';
import { WEIGHTS } from './search/weights';
import { bridgeWidth, type WidthRule } from './width';

export interface Surroundings {
  /** Edges of all pieces as cut, numbered as they are. */
  readonly pieces: SegmentIndex;
  /** Edges of the openings as drawn; only where these differ from the pieces' edges. */
  readonly drawn: SegmentIndex | undefined;
  readonly kerf: number;
  readonly thin: readonly ThinPlace[];
  readonly hidden: Region;
  /** By which share of its cost a bridge is cheaper that is hidden. */
  readonly hiddenWorth: number;
  /** For each island whose bridges are to stand in one direction that, of length 1. */
  readonly stand: (island: number) => Point | undefined;
  /** What bridges of another sheet take up: no bridge comes near it. */
  readonly taken: TakenGround | undefined;
  readonly rule: WidthRule;
  /** mm as cut: no bridge is longer. */
  readonly longest: number;
  /** Whether openings are lines with a width. */
  readonly lines: boolean;
  /** For each piece how many mm² of it one of its bridges holds. */
  readonly held: readonly number[];
}

export interface ScoredCandidate extends BridgeCandidate {
  readonly island: number;
  /** mm as drawn. */
  readonly width: number;
  /** mm of a bridge of the least width: its length, made longer by everything that speaks against the place. */
  readonly cost: number;
  /** Whether its ends may lie within the pieces, which are pointed there. */
  readonly rooted?: boolean;
}

/** The cheapest first. */
export function byCost(a: ScoredCandidate, b: ScoredCandidate): number {
  return a.cost - b.cost;
}

/**
 * Where across its width, in widths from the axis, a bridge is looked at; the outermost only for nearby corners. The
 * middle one is a little off, so that it does not run exactly through the corners of pieces that touch in a point.
 */
const LANES = [-0.5, -0.25, 0.01, 0.25, 0.5];
const OUTER_LANES = [-0.8, 0.8];

/** How far the edge at one end may run along the bridge, in widths; a strip reaches one width beyond its ends. */
const MAX_SLANT = 1.05;
/** mm */
const SLACK = DRAWN_ALIKE;

/**
 * Undefined where no bridge can stand: its sides would meet something else, or its end would be too slanted.
 * @param least mm as drawn: what is long or holds much is wider
 * @param steepest how far the edge at an end may run along the bridge, in widths
 */
export function scoreCandidate(
  crosser: BridgeCandidate,
  island: number,
  least: number,
  around: Surroundings,
  steepest = MAX_SLANT,
): ScoredCandidate | undefined {
  if (crosser.length > around.longest) return undefined;
  const holds = Math.max(around.held[island] ?? 0, around.held[crosser.target] ?? 0);
  const width = bridgeWidth(crosser.length - around.kerf, holds, { ...around.rule, width: least });
  const wide = scoreAt(crosser, island, { width, least, steepest }, around);
  if (wide || width === least) return wide;
  const narrow = scoreAt(crosser, island, { width: least, least, steepest }, around);
  return narrow && { ...narrow, cost: (1 + WEIGHTS.tooNarrow.value) * narrow.cost };
}

/** The same place with a bridge of a given width, in mm as drawn. */
export function scoreWithWidth(
  crosser: BridgeCandidate,
  island: number,
  width: number,
  least: number,
  around: Surroundings,
): ScoredCandidate | undefined {
  return scoreAt(crosser, island, { width, least, steepest: MAX_SLANT }, around);
}

interface Measures {
  readonly width: number;
  readonly least: number;
  readonly steepest: number;
}

function scoreAt(
  crosser: BridgeCandidate,
  island: number,
  { width, least, steepest }: Measures,
  around: Surroundings,
): ScoredCandidate | undefined {
  if (around.taken && crossesTaken(crosser, around.taken)) return undefined;
  const lanes: Lane[] = [];
  for (const lane of LANES) {
    checkpoint(10);
    const found = laneAt(crosser, lane * width, island, around.pieces);
    if (!found) return undefined;
    lanes.push(found);
  }
  if (!isOpen(crosser, around)) return undefined;
  if (steepest === MAX_SLANT && hangsByTip(crosser, width, around.thin)) return undefined;
  const slants = [rangeOf(lanes.map((lane) => lane.back)), rangeOf(lanes.map((lane) => lane.ahead))];
  const across = (lanes[2]?.back ?? 0) + (lanes[2]?.ahead ?? 0);
  const slack = SLACK + (steepest > MAX_SLANT ? 2 * defined(LANES[2]) * steepest * width : 0);
  if (Math.max(...slants) > steepest * width || across > crosser.length + slack) return undefined;
  if (around.taken && !keepsApart(crosser, island, width, around.pieces, around.taken)) return undefined;
  const slant = (defined(slants[0]) + defined(slants[1])) / width;
  const outer = OUTER_LANES.map((lane) => laneAt(crosser, lane * width, island, around.pieces));
  const cornered = outer.some((lane) => !lane || isBent(lane, lanes[2], width));
  const stand = around.stand(island);
  const calm = stand ? crosser.length : calmLength(crosser, around.lines);
  const factor =
    (width / least) *
    (1 + WEIGHTS.slantedEnd.value * slant * slant) *
    (cornered ? 1 + WEIGHTS.corner.value : 1) *
    tooLong(crosser.length) *
    supportFactor(crosser, width, around) *
    thinPartFactor(crosser, width, around.thin) *
    slantFactor(crosser, stand) *
    visibilityFactor(crosser, width, around);
  return { ...crosser, island, width, cost: (calm + slant * width) * factor };
}

/** How many times as dear a bridge is that is longer than it had better be. */
export function tooLong(length: number): number {
  return 1 + WEIGHTS.longer.value * Math.max(0, length - WEIGHTS.long.value);
}

function rangeOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

function isBent(lane: Lane, middle: Lane | undefined, width: number): boolean {
  return !middle || Math.abs(lane.back - middle.back) > width / 2 || Math.abs(lane.ahead - middle.ahead) > width / 2;
}

/** Whether the way across meets nothing that is drawn: a neck too thin to survive the cut has no opening. */
function isOpen({ from, to, length }: BridgeCandidate, { drawn, kerf }: Surroundings): boolean {
  if (!drawn) return true;
  const along = scale(subtract(to, from), 1 / length);
  const origin = add(from, scale(along, kerf / 2 + WRITTEN_STEP));
  const hit = firstHit(drawn, origin, along, length);
  return hit !== undefined && Math.abs(hit.distance - (length - kerf)) < kerf + 0.01;
}

/** More than 1 where the material at an end is hardly wider or deeper than the bridge itself. */
function supportFactor({ from, to, length }: BridgeCandidate, width: number, { pieces }: Surroundings): number {
  const along = scale(subtract(to, from), 1 / length);
  const far = missingSupport(pieces, to, along, width);
  const near = missingSupport(pieces, from, scale(along, -1), width);
  return 1 + WEIGHTS.noSupport.value * far + WEIGHTS.noRoot.value * near;
}

/** 0 where there is room of a width behind the end and to both sides, up to 1 where there is none. */
function missingSupport(pieces: SegmentIndex, end: Point, inward: Point, width: number): number {
  const depth = firstHit(pieces, end, inward, width)?.distance ?? width;
  const inside = add(end, scale(inward, depth / 2));
  const side = perpendicular(inward);
  const left = firstHit(pieces, inside, side, width)?.distance ?? width;
  const right = firstHit(pieces, inside, scale(side, -1), width)?.distance ?? width;
  return 1 - Math.min(depth, left + right, width) / width;
}

function thinPartFactor({ from, to }: BridgeCandidate, width: number, thin: readonly ThinPlace[]): number {
  const close = thin.some((part) => {
    const middle = interpolate(part.from, part.to, 0.5);
    return Math.min(distance(middle, from), distance(middle, to)) < width + part.drawnWidth / 2;
  });
  return close ? 1 + WEIGHTS.thinPlace.value : 1;
}

/** Where bridges are to stand in one direction, others cost much more. */
function slantFactor({ from, to, length }: BridgeCandidate, stand: Point | undefined): number {
  return stand ? 1 + (WEIGHTS.notUpright.value * Math.abs(cross(subtract(to, from), stand))) / length : 1;
}

/** Along a bridge, and beside its axis in widths: places at which it is looked whether later paint covers it. */
const SEARCH_ALONG = [0.1, 0.3, 0.5, 0.7, 0.9];
const SEARCH_ACROSS = [-0.75, 0, 0.75];

/**
 * Less than 1 where later paint covers the bridge and a little beside it; more where the edge of that paint runs along
 * the bridge, which would leave a sliver of bare ground.
 */
function visibilityFactor(
  { from, to, length }: BridgeCandidate,
  width: number,
  { hidden, hiddenWorth }: Surroundings,
): number {
  if (hidden.length === 0) return 1;
  const side = scale(perpendicular(scale(subtract(to, from), 1 / length)), width);
  const covered = SEARCH_ALONG.map(
    (t) =>
      SEARCH_ACROSS.filter((lane) => regionContains(hidden, add(interpolate(from, to, t), scale(side, lane)))).length,
  );
  const share = (wanted: (count: number) => boolean): number => covered.filter(wanted).length / covered.length;
  const whole = share((count) => count === SEARCH_ACROSS.length);
  const partly = share((count) => count > 0 && count < SEARCH_ACROSS.length);
  return (1 - hiddenWorth * whole) * (1 + partly);
}

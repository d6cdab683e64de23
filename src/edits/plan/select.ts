/** Which of the places round one island get its bridges. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { boxesTouch, growBox } from '../../geometry/base/ring';
import { distance, interpolate } from '../../geometry/base/vector';
import { areStripsApart, boxOfCorners, type Strip, stripAlong } from '../strip/strip';
import type { ScoredCandidate } from './score';
import type { SymmetricChoice } from './symmetric-sets';

/** Extents in mm and areas in mm² up to which an island gets so many bridges (common practice, no source). */
const ONE_BRIDGE = { extent: 6, area: 20 };
const TWO_BRIDGES = { extent: 60 };
const THREE_BRIDGES = { extent: 120 };

/** The longer side of its box decides: light islands hang on one bridge, large ones would sag on two. */
export function bridgeCountFor(box: Box, area: number): number {
  const extent = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (extent <= ONE_BRIDGE.extent && area <= ONE_BRIDGE.area) return 1;
  if (extent <= TWO_BRIDGES.extent) return 2;
  return extent <= THREE_BRIDGES.extent ? 3 : 4;
}

export interface SelectionOptions {
  /** How many to add. */
  readonly count: number;
  readonly width: number;
  readonly middle: Point;
  readonly near: Point | undefined;
  /** Shortest ones, wherever they are. */
  readonly shortestOnly: boolean;
  /** Strips that are already there. */
  readonly taken: readonly Strip[];
  /** Where it is tied already. */
  readonly given: readonly Point[];
  /** Whether the first bridge may lead there: to something that hangs on the frame already. */
  readonly held: (crosser: ScoredCandidate) => boolean;
}

/** How much farther a place may be than the cheapest before it is not worth a better spread. */
const SPREAD_WEIGHT = 3;
/** A further bridge may cost so many times what the first does, and so many widths besides, before it is left out. */
const MAX_COST = { times: 8, widths: 40 };
/** Only the cheapest few are tried as the first of a set. */
const MAX_STARTS = 12;
/** Two bridges closer than this share of an even spread let the island hinge. */
const MIN_SPREAD = 1 / 3;

/**
 * The cheapest set that is spread round the island's middle, the first from the held ones. Fewer than asked for where
 * there is no room.
 */
export function selectCandidates(crossers: readonly ScoredCandidate[], choice: SelectionOptions): ScoredCandidate[] {
  if (choice.count <= 0) return [];
  const taken = stripsAmong(choice.taken, crossers);
  const free = crossers.filter((crosser) => isClear(crosser, taken, choice.width));
  const starts = choice.near ? sortByDistance(free, choice.near).slice(0, 1) : free;
  let best: { set: ScoredCandidate[]; cost: number } | undefined;
  for (const start of starts.filter(choice.held).sort(compareCost).slice(0, MAX_STARTS)) {
    const set = extendSelection(start, free, choice);
    const cost = sumOfCosts(set) * unevenness(set, choice) * (1 + (choice.count - set.length));
    if (!best || cost < best.cost - 1e-9) best = { set, cost };
  }
  return best?.set ?? [];
}

/** Symmetry is worth so many times the cost of a bridge (common practice, no source). */
const SYMMETRY_WORTH = 2;

/**
 * The best of some sets that are their own mirror image, where it is worth its cost.
 * @param usual what is chosen without regard to symmetry
 */
export function preferSymmetric(
  { sets, isMirrored }: SymmetricChoice,
  usual: readonly ScoredCandidate[],
  choice: SelectionOptions,
): readonly ScoredCandidate[] {
  if (usual.length > 0 && isMirrored(usual)) return usual;
  let best: { set: readonly ScoredCandidate[]; cost: number } | undefined;
  for (const set of sets) {
    if (!set.some(choice.held) || !areClear(set, choice)) continue;
    const cost = (sumOfCosts(set) / set.length) * unevenness(set, { ...choice, count: set.length });
    // The flattening of curves makes no axis better than another.
    if (!best || cost < 0.99 * best.cost) best = { set, cost };
  }
  if (!best || usual.length === 0) return best?.set ?? usual;
  const cost = (sumOfCosts(usual) / usual.length) * unevenness(usual, { ...choice, count: usual.length });
  return best.cost <= SYMMETRY_WORTH * cost ? best.set : usual;
}

/** Whether there is room for all of a set, beside each other and what is there. */
function areClear(set: readonly ScoredCandidate[], { taken, width }: SelectionOptions): boolean {
  const strips = [...stripsAmong(taken, set)];
  for (const way of set) {
    checkpoint(strips.length);
    if (!isClear(way, strips, width)) return false;
    strips.push(stripOf(way, width));
  }
  return true;
}

function sumOfCosts(set: readonly ScoredCandidate[]): number {
  return set.reduce((sum, { cost }) => sum + cost, 0);
}

function compareCost(a: ScoredCandidate, b: ScoredCandidate): number {
  return a.cost - b.cost;
}

function sortByDistance(crossers: readonly ScoredCandidate[], near: Point): ScoredCandidate[] {
  const away = ({ from, to }: ScoredCandidate): number => distance(interpolate(from, to, 0.5), near);
  return [...crossers].sort((a, b) => away(a) - away(b));
}

function extendSelection(
  start: ScoredCandidate,
  free: readonly ScoredCandidate[],
  choice: SelectionOptions,
): ScoredCandidate[] {
  const set = [start];
  const strips = [stripOf(start, choice.width)];
  const dearest = MAX_COST.times * start.cost + MAX_COST.widths * choice.width;
  while (set.length < choice.count) {
    let best: { crosser: ScoredCandidate; cost: number } | undefined;
    checkpoint(4 * free.length + 4);
    for (const crosser of free) {
      const cost = crosser.cost * unevenness([...set, crosser], choice) * (choice.held(crosser) ? 1 : 1.3);
      if (cost >= (best?.cost ?? dearest)) continue;
      if (isClear(crosser, strips, choice.width)) best = { crosser, cost };
    }
    if (!best) break;
    set.push(best.crosser);
    strips.push(stripOf(best.crosser, choice.width));
  }
  return set;
}

/** 1 for an even spread of directions from the middle; grows as any two come closer. */
function unevenness(set: readonly ScoredCandidate[], { middle, count, given, shortestOnly }: SelectionOptions): number {
  const ties = [...given, ...set.map(({ from }) => from)];
  if (ties.length < 2 || shortestOnly) return 1;
  const even = (2 * Math.PI) / (count + given.length);
  const turns = ties.map(({ x, y }) => Math.atan2(y - middle.y, x - middle.x)).sort((a, b) => a - b);
  const before = [defined(turns.at(-1)) - 2 * Math.PI, ...turns];
  const gaps = turns.map((turn, index) => turn - defined(before[index]));
  const share = Math.min(1, Math.min(...gaps) / even);
  return (1 + SPREAD_WEIGHT * (1 - share) ** 2) * (share < MIN_SPREAD ? 4 : 1);
}

/** Of the strips those that may touch one of the ways across. */
function stripsAmong(strips: readonly Strip[], crossers: readonly ScoredCandidate[]): Strip[] {
  const box = boxOfCorners(crossers.flatMap(({ from, to }) => [from, to]));
  return strips.filter(({ corners }) => {
    const around = boxOfCorners(corners);
    const size = around.maxX - around.minX + around.maxY - around.minY;
    return boxesTouch(growBox(around, size), box);
  });
}

function isClear(crosser: ScoredCandidate, strips: readonly Strip[], width: number): boolean {
  const strip = stripOf(crosser, width);
  return strips.every((other) => areStripsApart(strip, other));
}

/** With half a width to spare all round, so that two bridges never share an end. */
export function stripOf({ from, to }: { from: Point; to: Point }, width: number): Strip {
  return stripAlong(from, to, 2 * width, width / 2);
}

/**
 * Where sign painters tie a counter: on one line along the stems, across the stroke above and the stroke below, where
 * both are thin and run squarely across it. Common practice, no source. Sheet mm.
 */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { forEachEdge } from '../../../geometry/base/ring';
import { add, cross, dot, normalise, scale, subtract } from '../../../geometry/base/vector';
import { firstHit } from '../../../geometry/spatial/raycast';
import type { SegmentIndex } from '../../../geometry/spatial/segment-index';
import { boxIn, type Frame } from './frame';
import type { Counter, CounterPlace } from './types';

/** An island of a letter. */
export interface LetterIsland {
  readonly piece: number;
  readonly outer: Ring;
}

/** So many lines across a counter are looked at, evenly; none nearer to its sides than this share of its width. */
const LINES = 33;
const ASIDE = 0.12;
/** mm: nobody ties across a wider stroke. */
const MAX_STROKE = 25;
/** A stroke that runs at 45° to the bridge counts as so much longer. */
const SLANT_WEIGHT = 1.5;
/**
 * Tangents of the angle at an end beyond which a bridge stands badly, and beyond which none stands: in the point of A and
 * on the slope of 4 a slanted end is better than none.
 */
const MAX_SLANT = { calm: 1.2, steep: 8 };
/** A line at the side of a counter counts as so much longer than one through its middle. */
const ASIDE_WEIGHT = 0.8;
/** A line with a way on one side only counts as so much longer than its way. */
const ONE_SIDED = 4;

interface Line {
  readonly at: number;
  readonly cost: number;
  readonly counters: readonly Counter[];
}

/**
 * The line for some counters that stand one above the other in a letter, through all of them: B, 8, g.
 * @param along the stems, upwards
 * @returns none where no bridge along the stems leaves them
 */
export function countersOnLine(
  islands: readonly LetterIsland[],
  along: Point,
  edges: SegmentIndex,
): readonly Counter[] {
  const frame: Frame = { right: { x: -along.y, y: along.x }, up: along };
  const boxes = islands.map(({ outer }) => boxIn(frame, outer));
  const [from, to] = [Math.max(...boxes.map(({ minX }) => minX)), Math.min(...boxes.map(({ maxX }) => maxX))];
  const width = to - from;
  let best: Line | undefined;
  for (let i = 0; i < LINES; i += 1) {
    const share = ASIDE + (1 - 2 * ASIDE) * (i / (LINES - 1));
    const line = lineAt(islands, from + share * width, frame, edges);
    if (!line) continue;
    const off = Math.abs(2 * share - 1);
    const cost = line.cost * (1 + ASIDE_WEIGHT * off * off);
    // Of equal lines the one nearest to the middle stands.
    if (
      !best ||
      cost < best.cost * (1 - 1e-6) ||
      (cost < best.cost * (1 + 1e-6) && isNearer(line.at, best.at, from, to))
    )
      best = { ...line, cost };
  }
  return best?.counters ?? [];
}

/** The same on the line through a point. */
export function countersThrough(
  islands: readonly LetterIsland[],
  point: Point,
  along: Point,
  edges: SegmentIndex,
): readonly Counter[] {
  const frame: Frame = { right: { x: -along.y, y: along.x }, up: along };
  return lineAt(islands, dot(point, frame.right), frame, edges)?.counters ?? [];
}

function isNearer(a: number, b: number, from: number, to: number): boolean {
  const middle = (from + to) / 2;
  return Math.abs(a - middle) < Math.abs(b - middle);
}

function lineAt(islands: readonly LetterIsland[], at: number, frame: Frame, edges: SegmentIndex): Line | undefined {
  let cost = 0;
  const counters: Counter[] = [];
  for (const { piece, outer } of islands) {
    const ends = endsOn(outer, at, frame);
    if (!ends) return undefined;
    const above = wayAcross(edges, piece, ends.upper, frame.up);
    const below = wayAcross(edges, piece, ends.lower, scale(frame.up, -1));
    const ways = [above, below].filter((way) => way !== undefined);
    const calm = ways.filter(({ slant }) => slant <= MAX_SLANT.calm);
    if (calm.length === 0) return undefined;
    cost += calm.reduce((sum, way) => sum + way.cost, 0) * (calm.length === 2 ? 1 : ONE_SIDED);
    const middle = scale(add(ends.upper, ends.lower), 0.5);
    counters.push({ piece, at: middle, places: ways.map(({ place }) => place) });
  }
  return { at, cost, counters };
}

/** Where a line along the stems leaves a counter at its upper and at its lower end. */
function endsOn(outer: Ring, at: number, { right, up }: Frame): { upper: Point; lower: Point } | undefined {
  let [upper, lower] = [-Infinity, Infinity];
  forEachEdge(outer, (x0, y0, x1, y1) => {
    const [a, b] = [x0 * right.x + y0 * right.y - at, x1 * right.x + y1 * right.y - at];
    if (a > 0 === b > 0) return;
    const [ya, yb] = [x0 * up.x + y0 * up.y, x1 * up.x + y1 * up.y];
    const y = ya + (a / (a - b)) * (yb - ya);
    [upper, lower] = [Math.max(upper, y), Math.min(lower, y)];
  });
  const place = (y: number) => add(scale(right, at), scale(up, y));
  return upper > lower ? { upper: place(upper), lower: place(lower) } : undefined;
}

interface WayAcross {
  readonly place: CounterPlace;
  /** Of the more slanted end. */
  readonly slant: number;
  readonly cost: number;
}

function wayAcross(edges: SegmentIndex, piece: number, from: Point, outward: Point): WayAcross | undefined {
  checkpoint(10);
  const inside = subtract(from, scale(outward, 1e-4));
  const own = firstHit(edges, inside, outward, 1e-3);
  const hit = firstHit(edges, add(from, scale(outward, 1e-4)), outward, MAX_STROKE);
  if (!own || !hit || hit.polygon === piece) return undefined;
  const slants = [slantOf(edges, own.edge, outward), slantOf(edges, hit.edge, outward)];
  const slant = Math.max(...slants);
  if (slant > MAX_SLANT.steep) return undefined;
  const length = hit.distance + 1e-4;
  const slanted = slants.reduce((total, slant) => total + slant * slant, 0) / 2;
  return { place: { from, to: hit.point, target: hit.polygon }, slant, cost: length * (1 + SLANT_WEIGHT * slanted) };
}

/** Tangent of the angle between an edge and the square to a way across it. */
function slantOf(edges: SegmentIndex, edge: number, along: Point): number {
  const way = normalise({
    x: defined(edges.x1[edge]) - defined(edges.x0[edge]),
    y: defined(edges.y1[edge]) - defined(edges.y0[edge]),
  });
  if (!way) return 0;
  return Math.abs(dot(way, along)) / Math.max(1e-6, Math.abs(cross(way, along)));
}

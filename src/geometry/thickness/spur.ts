/**
 * Measures of a tip: a thin component with one open chain, which runs round it from the last disc back to that disc.
 */

import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import { visitBox } from './boundary-index';
import { type Chord, type EdgePlace, edgePlace, isClear, isPreferred, lengthOfChord, TIE_TOLERANCE } from './chord';
import { isEdge, squareToEdge } from './tangent-disc';
import { intervalAt, portalsOf, type ThinBoundary, visitIntervals } from './thin-boundary';

/** How far the boundary along the chain goes beyond the last disc that fits, in mm, and where it is farthest from that. */
export function reachOfSpur(thin: ThinBoundary, chain: number): { readonly reach: number; readonly end: Point } {
  const { distance, at } = farthestOf(thin, chain, lastDisc(thin, chain));
  return { reach: distance - thin.radius, end: at };
}

/**
 * The shortest chord across the tip in the half of its reach that is nearer to the thick part, so that a tip that ends
 * in a point has a width, and one that joins the thick part by a fillet has that of its stem.
 */
export function chordOfSpur(thin: ThinBoundary, chain: number): Chord {
  const centre = lastDisc(thin, chain);
  const farthest = farthestOf(thin, chain, centre);
  const limit = (thin.radius + farthest.distance) / 2;
  const search: SpurSearch = {
    thin,
    chain,
    centre,
    limit,
    turn: farthest.order,
    best: endChord(thin, chain),
    least: 0,
  };
  search.least = lengthOfChord(search.best);
  const limits = limitChord(search);
  considerChord(search, limits);
  // As with necks, one end of the shortest chord is a reflex vertex, unless it lies where the search is cut off.
  searchFrom(search, limits.from);
  searchFrom(search, limits.to);
  const { outline } = thin.boundary;
  visitVertices(thin, chain, (vertex) => {
    if (defined(outline.cone[vertex]) > 0) searchFrom(search, edgePlace(outline, vertex, 0));
  });
  return search.best;
}

interface SpurSearch {
  readonly thin: ThinBoundary;
  readonly chain: number;
  /** Of the last disc that fits; places farther from it than `limit` mm do not count. */
  readonly centre: Point;
  readonly limit: number;
  /** Where along the chain its far end lies: one flank comes before, the other after. */
  readonly turn: number;
  best: Chord;
  /** Length of the best, mm. */
  least: number;
}

/** Both portals of a tip are the same disc, but for rounding. */
function lastDisc(thin: ThinBoundary, chain: number): Point {
  const [begin, end] = portalsOf(thin, chain);
  return { x: (begin.x + end.x) / 2, y: (begin.y + end.y) / 2 };
}

/** Place of a stretch in the chain's course. */
function orderOf({ chains, intervals: stretches }: ThinBoundary, chain: number, stretch: number): number {
  const first = defined(chains.first[chain]);
  return stretch >= first ? stretch - first : stretch - first + stretches.from.length;
}

/** Vertices that the chain goes through, those at its ends included. */
function visitVertices(thin: ThinBoundary, chain: number, visit: (vertex: number, order: number) => void): void {
  const { outline } = thin.boundary;
  let before = -1;
  visitIntervals(thin, chain, (stretch) => {
    const element = defined(thin.chains.elementOf[stretch]);
    const vertex = element >> 1;
    const through = !isEdge(element) || thin.intervals.from[stretch] === 0;
    if (through && vertex !== before) visit(vertex, orderOf(thin, chain, stretch));
    if (through) before = vertex;
    if (!isEdge(element) || defined(thin.intervals.to[stretch]) < defined(outline.length[vertex])) return;
    before = defined(outline.next[vertex]);
    visit(before, orderOf(thin, chain, stretch));
  });
}

function farthestOf(thin: ThinBoundary, chain: number, centre: Point): { distance: number; order: number; at: Point } {
  const { x, y } = thin.boundary.outline;
  const farthest = { distance: thin.radius, order: 0, at: centre };
  visitVertices(thin, chain, (vertex, order) => {
    const distance = Math.hypot(defined(x[vertex]) - centre.x, defined(y[vertex]) - centre.y);
    if (distance <= farthest.distance) return;
    farthest.distance = distance;
    farthest.order = order;
    farthest.at = { x: defined(x[vertex]), y: defined(y[vertex]) };
  });
  return farthest;
}

function endChord({ boundary, chains, intervals: stretches }: ThinBoundary, chain: number): Chord {
  const placeOf = (stretch: number, parameter: number): EdgePlace => {
    const element = defined(chains.elementOf[stretch]);
    return edgePlace(boundary.outline, element >> 1, isEdge(element) ? parameter : 0);
  };
  const [first, last] = [defined(chains.first[chain]), defined(chains.last[chain])];
  return { from: placeOf(first, defined(stretches.from[first])), to: placeOf(last, defined(stretches.to[last])) };
}

/** From where the first flank leaves the near half to where the second one comes back into it. */
function limitChord(search: SpurSearch): Chord {
  const { thin, chain, turn } = search;
  let { from, to } = search.best;
  let left = false;
  visitIntervals(thin, chain, (stretch) => {
    const element = defined(thin.chains.elementOf[stretch]);
    if (!isEdge(element)) return;
    const order = orderOf(thin, chain, stretch);
    const crossing = crossingOf(
      search,
      element >> 1,
      defined(thin.intervals.from[stretch]),
      defined(thin.intervals.to[stretch]),
    );
    if (crossing === undefined) return;
    if (order > turn) to = crossing;
    else if (!left) from = crossing;
    left = true;
  });
  return { from, to };
}

/** Where the stretch of the edge goes through the limit, if it does. */
function crossingOf(
  { thin, centre, limit }: SpurSearch,
  edge: number,
  from: number,
  to: number,
): EdgePlace | undefined {
  const { outline } = thin.boundary;
  const isFar = (at: number): boolean => {
    const place = edgePlace(outline, edge, at);
    return Math.hypot(place.x - centre.x, place.y - centre.y) > limit;
  };
  let [low, high] = [from, to];
  const farAtStart = isFar(low);
  if (farAtStart === isFar(high)) return undefined;
  for (let turn = 0; turn < 50; turn += 1) {
    const middle = (low + high) / 2;
    if (isFar(middle) === farAtStart) low = middle;
    else high = middle;
  }
  return edgePlace(outline, edge, farAtStart ? high : low);
}

function searchFrom(search: SpurSearch, from: EdgePlace): void {
  const { boundary } = search.thin;
  const { x, y, polygon, length, alongX, alongY } = boundary.outline;
  const reach = search.least + TIE_TOLERANCE;
  if (isBeyond(search, from.x, from.y)) return;
  visitBox(boundary, from.x - reach, from.y - reach, from.x + reach, from.y + reach, (edge) => {
    if (polygon[edge] !== polygon[from.edge]) return false;
    if (squareToEdge(boundary.outline, edge, from.x, from.y) > reach * reach) return false;
    const along =
      (from.x - defined(x[edge])) * defined(alongX[edge]) + (from.y - defined(y[edge])) * defined(alongY[edge]);
    considerChord(search, {
      from,
      to: edgePlace(boundary.outline, edge, Math.min(defined(length[edge]), Math.max(0, along))),
    });
    return false;
  });
}

function isBeyond({ centre, limit }: SpurSearch, x: number, y: number): boolean {
  return Math.hypot(x - centre.x, y - centre.y) > limit * (1 + 1e-9);
}

function considerChord(search: SpurSearch, chord: Chord): void {
  const length = lengthOfChord(chord);
  if (!isPreferred(chord, length, search.best, search.least) || isBeyond(search, chord.to.x, chord.to.y)) return;
  if (!facesAcross(search, chord) || !isClear(search.thin.boundary, chord)) return;
  search.best = chord;
  search.least = Math.min(search.least, length);
}

/** Whether the chord's ends lie on the chain's two flanks. */
function facesAcross(search: SpurSearch, { from, to }: Chord): boolean {
  return flankOf(search, from) * flankOf(search, to) === -1;
}

/** -1 on the flank before the far end, 1 on that after it, 0 beside the chain. A vertex lies on either of its edges. */
function flankOf({ thin, chain, turn }: SpurSearch, { edge, at }: EdgePlace): number {
  const { length, previous, next } = thin.boundary.outline;
  let stretch = intervalAt(thin, 2 * edge + 1, at);
  if (stretch < 0 && at <= 0)
    stretch = intervalAt(thin, 2 * defined(previous[edge]) + 1, defined(length[defined(previous[edge])]));
  if (stretch < 0 && at >= defined(length[edge])) stretch = intervalAt(thin, 2 * defined(next[edge]) + 1, 0);
  if (stretch < 0 || thin.chains.chainOf[stretch] !== chain) return 0;
  return orderOf(thin, chain, stretch) <= turn ? -1 : 1;
}

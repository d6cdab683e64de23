/** The narrowest place of a thin component: the shortest chord between two of its chains. */

import { defined } from '../../base/defined';
import { SAME_POINT } from '../base/tolerances';
import type { Outline } from './boundary-arrays';
import { visitBox } from './boundary-index';
import { type Chord, edgePlace, isClear, isPreferred, lengthOfChord, TIE_TOLERANCE } from './chord';
import { boundingChord, type Components, rootOf } from './components';
import { isEdge, squareToEdge } from './tangent-disc';
import { intervalAt, type ThinBoundary, touchedInterval, turnTowards, visitIntervals } from './thin-boundary';

/** In mm: ends nearer to each other than this touch, and have no direction. */
const CONTACT = SAME_POINT;

/**
 * The shortest of all chords between different chains has nothing in the disc over it (what lay there would be nearer
 * to one end, and belong to a chain that is nearer to the other), and it stands upright on the boundary at both ends.
 * So one end is a reflex vertex, the other the point of an edge nearest to it, in the cones of both. The chords from
 * all reflex vertices are compared; discs already seen bound the search.
 */
export function narrowestChord(
  thin: ThinBoundary,
  components: Components,
  chains: readonly number[],
): Chord | undefined {
  const bounding = chains.reduce((a, b) => (defined(components.bound[b]) < defined(components.bound[a]) ? b : a));
  if (defined(components.boundInterval[bounding]) < 0) return undefined;
  const search: Search = { thin, components, root: rootOf(components, bounding), best: undefined, least: 0 };
  search.least = defined(components.bound[bounding]) * (1 + 1e-9) + CONTACT;
  for (const chain of chains) {
    visitIntervals(thin, chain, (stretch) => {
      const element = defined(thin.chains.elementOf[stretch]);
      if (!isEdge(element)) searchFrom(search, element >> 1);
    });
  }
  return search.best ?? boundingChord(thin, components, bounding);
}

interface Search {
  readonly thin: ThinBoundary;
  readonly components: Components;
  readonly root: number;
  best: Chord | undefined;
  /** Only chords shorter than this, in mm, are of interest. */
  least: number;
}

function searchFrom(search: Search, vertex: number): void {
  const { boundary } = search.thin;
  const { x, y, previous, polygon } = boundary.outline;
  const [px, py, reach] = [defined(x[vertex]), defined(y[vertex]), search.least + TIE_TOLERANCE];
  visitBox(boundary, px - reach, py - reach, px + reach, py + reach, (edge) => {
    const own = edge === vertex || edge === previous[vertex] || polygon[edge] !== polygon[vertex];
    if (!own) considerEdge(search, vertex, edge);
    return false;
  });
}

function considerEdge(search: Search, vertex: number, edge: number): void {
  const { boundary } = search.thin;
  const { x, y, alongX, alongY, length } = boundary.outline;
  const square = squareToEdge(boundary.outline, edge, defined(x[vertex]), defined(y[vertex]));
  if (square > (search.least + TIE_TOLERANCE) ** 2) return;
  const along =
    (defined(x[vertex]) - defined(x[edge])) * defined(alongX[edge]) +
    (defined(y[vertex]) - defined(y[edge])) * defined(alongY[edge]);
  const at = Math.min(defined(length[edge]), Math.max(0, along));
  const [dx, dy] = [
    defined(x[edge]) + at * defined(alongX[edge]) - defined(x[vertex]),
    defined(y[edge]) + at * defined(alongY[edge]) - defined(y[vertex]),
  ];
  if (square > CONTACT * CONTACT && !isWithinCone(boundary.outline, vertex, dx, dy)) return;
  const chord = { from: edgePlace(boundary.outline, vertex, 0), to: edgePlace(boundary.outline, edge, at) };
  const distance = lengthOfChord(chord);
  if (!isPreferred(chord, distance, search.best, search.least)) return;
  if (!joinsTwoChains(search, chord, distance) || !isClear(boundary, chord)) return;
  search.best = chord;
  search.least = Math.min(search.least, distance);
}

/** Whether a disc that touches the vertex may lie in that direction, give or take a rounding error. */
function isWithinCone({ alongX, alongY, previous }: Outline, vertex: number, dx: number, dy: number): boolean {
  const before = defined(previous[vertex]);
  const slack = 1e-3 * Math.sqrt(dx * dx + dy * dy);
  return (
    dx * defined(alongX[before]) + dy * defined(alongY[before]) >= -slack &&
    dx * defined(alongX[vertex]) + dy * defined(alongY[vertex]) <= slack
  );
}

function joinsTwoChains({ thin, components, root }: Search, { from, to }: Chord, distance: number): boolean {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const touching = distance < CONTACT;
  const start = touching ? touchingInterval(thin, from.edge) : intervalInCone(thin, from.edge, dx, dy);
  if (start < 0) return false;
  const { alongX, alongY } = thin.boundary.outline;
  if (!touching && defined(alongY[to.edge]) * dx - defined(alongX[to.edge]) * dy < -1e-9 * distance) return false;
  const end = touchedInterval(thin, to.edge, to.at, -dx, -dy);
  if (end < 0) return false;
  const [first, second] = [defined(thin.chains.chainOf[start]), defined(thin.chains.chainOf[end])];
  return first !== second && rootOf(components, first) === root && rootOf(components, second) === root;
}

function intervalInCone(thin: ThinBoundary, vertex: number, dx: number, dy: number): number {
  return intervalAt(thin, 2 * vertex, turnTowards(thin, vertex, dx, dy));
}

function touchingInterval({ intervals: stretches }: ThinBoundary, vertex: number): number {
  const first = defined(stretches.first[2 * vertex]);
  return first < defined(stretches.first[2 * vertex + 1]) ? first : -1;
}

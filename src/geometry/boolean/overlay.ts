/**
 * Regions from rings that cross, touch and coincide at will. All decisions are exact on an integer grid: edges are cut
 * where they meet, each face of the plane gets its winding numbers, and the borders between filled and empty faces are
 * traced. (The clipping libraries at hand lose or double area where several edges pass through one vertex.)
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { FillRule, Ring } from '../base/polygon-types';
import { edgesIn, signedArea } from '../base/ring';
import { clipRings, type Operation } from './clipper';
import { EdgeList, orientation } from './edge-set';
import { fromGrid, toGrid } from './grid';
import { buildPlanarGraph, numberVertices, type PlanarGraph } from './half-edges';
import { snapRound } from './snap-rounding';
import { computeEdgeWindings } from './winding-numbers';

/** However few its edges are. */
const STEPS_PER_OVERLAY = 300;

/** Whether a face is filled, from how often the first and the second set of rings wind round it. */
type Filled = (first: number, second: number) => boolean;

/**
 * Union, difference and intersection of rings in mm: subject and clip rings are each read by the fill rule, then
 * combined on the grid of 0.1 µm. The result is as `overlayRings` says; the clipping library steps in should the
 * overlay's rounding ever not come to rest.
 */
export function combineRings(
  operation: Operation,
  subject: readonly Ring[],
  clip: readonly Ring[],
  fillRule: FillRule,
): Ring[] {
  const usable = (rings: readonly Ring[]): Ring[] =>
    rings.map((ring) => toGrid(ring)).filter((ring) => ring.length >= 6);
  const result = overlayRings(usable(subject), usable(clip), isFilledBy(operation, fillRule));
  return result ? result.map((ring) => fromGrid(ring)) : clipRings(operation, subject, clip, fillRule);
}

function isFilledBy(operation: Operation, fillRule: FillRule): Filled {
  const inside = fillRule === 'nonzero' ? (turns: number) => turns !== 0 : (turns: number) => (turns & 1) !== 0;
  switch (operation) {
    case 'union':
      return (first, second) => inside(first) || inside(second);
    case 'difference':
      return (first, second) => inside(first) && !inside(second);
    case 'intersection':
      return (first, second) => inside(first) && inside(second);
  }
}

/**
 * What a ring in mm fills by itself, by the nonzero rule; undefined where it winds round one place this way and round
 * another that way, so that together with others it might leave open what it fills alone.
 */
export function fillOfOneWayRing(ring: Ring): Ring[] | undefined {
  let [least, most] = [0, 0];
  const filled = overlayRings([toGrid(ring)], [], (turns) => {
    [least, most] = [Math.min(least, turns), Math.max(most, turns)];
    return turns !== 0;
  });
  return least < 0 && most > 0 ? undefined : filled?.map((each) => fromGrid(each));
}

/**
 * Rings on the integer grid, of positive area round what is filled, of negative area round its holes. They cross
 * nothing and touch in points only; where filled faces touch in a point, the rings part them.
 * Undefined when rounding does not come to rest, which no known input brings about.
 */
export function overlayRings(first: readonly Ring[], second: readonly Ring[], filled: Filled): Ring[] | undefined {
  checkpoint(STEPS_PER_OVERLAY);
  const edges = new EdgeList(edgesIn(first) + edgesIn(second));
  for (const ring of first) edges.pushRing(ring, 1, 0);
  for (const ring of second) edges.pushRing(ring, 0, 1);
  const noded = snapRound(edges);
  if (!noded) return undefined;
  const vertices = numberVertices(noded.edges);
  const alone = first.length + second.length === 1 ? (first[0] ?? second[0]) : undefined;
  // A ring that meets itself nowhere, as most do, loses no edge and passes each vertex once.
  if (
    alone &&
    !noded.wasSplit &&
    2 * noded.edges.ax.length === alone.length &&
    2 * vertices.x.length === alone.length
  ) {
    const sense = Math.sign(signedArea(alone));
    return filled(sense * first.length, sense * second.length) ? [turnedOutwards(alone)] : [];
  }
  const graph = buildPlanarGraph(noded.edges, vertices);
  const windings = computeEdgeWindings(noded, graph);
  return traceBorders(graph, (face) => filled(defined(windings.first[face]), defined(windings.second[face])));
}

/** Turned so that its area is positive, and without vertices on straight courses; begun where `traceBorders` begins. */
function turnedOutwards(ring: Ring): Ring {
  const size = ring.length;
  const points: number[] = [];
  if (signedArea(ring) > 0) {
    pushTurn(points, defined(ring[size - 2]), defined(ring[size - 1]));
    for (let at = 0; at + 2 < size; at += 2) pushTurn(points, defined(ring[at]), defined(ring[at + 1]));
  } else {
    pushTurn(points, defined(ring[0]), defined(ring[1]));
    for (let at = size - 2; at > 0; at -= 2) pushTurn(points, defined(ring[at]), defined(ring[at + 1]));
  }
  return withoutStraightEnds(points);
}

/** @param isFilled whether the face on the left of a half-edge (y up) is filled */
export function traceBorders(graph: PlanarGraph, isFilled: (halfEdge: number) => boolean): Ring[] {
  const border = new Uint8Array(graph.halfEdges);
  for (let halfEdge = 0; halfEdge < graph.halfEdges; halfEdge += 1) {
    if (isFilled(halfEdge) && !isFilled(halfEdge ^ 1)) border[halfEdge] = 1;
  }
  const rings: Ring[] = [];
  checkpoint(graph.halfEdges);
  for (let start = 0; start < graph.halfEdges; start += 1) {
    if (border[start] === 1) rings.push(traceRing(graph, border, start));
  }
  return rings.filter((ring) => ring.length >= 6);
}

/** Takes the half-edges it passes off the list. Turning clockwise round each vertex keeps to one filled wedge. */
function traceRing(graph: PlanarGraph, border: Uint8Array, start: number): Ring {
  const points: number[] = [];
  let at = start;
  do {
    checkpoint(2);
    border[at] = 0;
    const vertex = defined(graph.origin[at]);
    pushTurn(points, defined(graph.x[vertex]), defined(graph.y[vertex]));
    let next = defined(graph.next[at]);
    while (border[next] === 0 && next !== start) {
      checkpoint();
      next = defined(graph.next[next ^ 1]);
    }
    at = next;
  } while (at !== start);
  return withoutStraightEnds(points);
}

/** Adds the point; the one before it goes when it lies straight between its neighbours. */
function pushTurn(points: number[], x: number, y: number): void {
  const size = points.length;
  if (size >= 4) {
    const ax = defined(points[size - 4]);
    const ay = defined(points[size - 3]);
    if (isStraight(ax, ay, defined(points[size - 2]), defined(points[size - 1]), x, y)) points.length = size - 2;
  }
  points.push(x, y);
}

function isStraight(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): boolean {
  return orientation(ax, ay, bx, by, cx, cy) === 0 && (bx - ax) * (cx - bx) + (by - ay) * (cy - by) > 0;
}

function withoutStraightEnds(points: number[]): Ring {
  const at = (index: number): [number, number] => [defined(points[2 * index]), defined(points[2 * index + 1])];
  const last = (): number => points.length / 2 - 1;
  if (last() > 2 && isStraight(...at(last() - 1), ...at(last()), ...at(0))) points.length -= 2;
  if (last() > 2 && isStraight(...at(last()), ...at(0), ...at(1))) points.splice(0, 2);
  return Float64Array.from(points);
}

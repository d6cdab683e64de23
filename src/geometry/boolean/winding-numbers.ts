/** How often the two sets of rings wind round each face of a planar graph. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { findRoot, uniteSets } from '../spatial/clusters';
import type { Edges } from './edge-set';
import { orientation } from './edge-set';
import type { PlanarGraph } from './half-edges';
import type { SnappedEdges } from './snap-rounding';

/** Of the face on the left of each half-edge. */
export interface EdgeWindings {
  readonly first: Int32Array;
  readonly second: Int32Array;
}

/**
 * A ray to the left tells which face each connected component of edges lies in; from there the windings follow across the
 * edges. What the ray meets first reaches further left than the component, and so is known before it.
 */
export function computeEdgeWindings(noded: SnappedEdges, graph: PlanarGraph): EdgeWindings {
  const { x, y } = graph;
  const { edges } = noded;
  const windings = { first: new Int32Array(graph.halfEdges), second: new Int32Array(graph.halfEdges) };
  const done = new Uint8Array(graph.halfEdges);
  const begins = leftmostOfComponents(graph).sort((a, b) => defined(x[a]) - defined(x[b]));
  const leftmost = x[begins[0] ?? 0] ?? 0;
  for (const vertex of begins) {
    const edge = edgeLeftOf(noded, defined(x[vertex]), defined(y[vertex]), leftmost);
    const face = 2 * edge + (edge >= 0 && isRising(edges.ay, edges.by, edge) ? 1 : 0);
    const outside = [windings.first[face] ?? 0, windings.second[face] ?? 0] as const;
    propagateWindings(noded, graph, windings, done, defined(graph.last[vertex]), outside);
  }
  return windings;
}

function leftmostOfComponents(graph: PlanarGraph): number[] {
  const { x, y, origin } = graph;
  const parents = new Int32Array(x.length);
  for (let vertex = 0; vertex < x.length; vertex += 1) parents[vertex] = vertex;
  checkpoint(graph.halfEdges / 4);
  for (let halfEdge = 0; halfEdge < graph.halfEdges; halfEdge += 2) {
    uniteSets(parents, defined(origin[halfEdge]), defined(origin[halfEdge + 1]));
  }
  const roots: number[] = [];
  const leftmost = new Int32Array(x.length).fill(-1);
  checkpoint(x.length);
  for (let vertex = 0; vertex < x.length; vertex += 1) {
    const root = findRoot(parents, vertex);
    const best = defined(leftmost[root]);
    if (best < 0) roots.push(root);
    const further = best < 0 || defined(x[vertex]) < defined(x[best]);
    if (further || (x[vertex] === x[best] && defined(y[vertex]) < defined(y[best]))) leftmost[root] = vertex;
  }
  return roots.map((root) => defined(leftmost[root]));
}

/** Grid units: how far to the left is looked first for what lies there; each time it fails, twice as far on. */
const FIRST_STEP = 10_000;

/**
 * The edge that a ray to the left meets first, just above y; −1 where there is none.
 * @param leftmost the least x of all vertices
 */
function edgeLeftOf({ edges, finder }: SnappedEdges, x: number, y: number, leftmost: number): number {
  let nearest = -1;
  const consider = (edge: number): boolean => {
    if (isLeftOf(edges, edge, x, y) && (nearest < 0 || isRightOf(edges, edge, nearest))) nearest = edge;
    return false;
  };
  for (let right = x, step = FIRST_STEP; right > leftmost; right -= step, step *= 2) {
    finder?.search(right - step, y, right, y, consider);
    // What crosses the ray further left than was looked may have others before it there. One unit for rounding.
    if (nearest >= 0 && crossingOf(edges, nearest, y) > right - step + 1) break;
  }
  return nearest;
}

/** Whether a horizontal line just above y crosses the edge, left of (x, y). */
function isLeftOf({ ax, ay, bx, by }: Edges, edge: number, x: number, y: number): boolean {
  if (defined(ay[edge]) > y === defined(by[edge]) > y) return false;
  const side = orientation(defined(ax[edge]), defined(ay[edge]), defined(bx[edge]), defined(by[edge]), x, y);
  return isRising(ay, by, edge) ? side < 0 : side > 0;
}

function isRising(ay: Float64Array, by: Float64Array, edge: number): boolean {
  return defined(by[edge]) > defined(ay[edge]);
}

/**
 * Which of two edges that a horizontal line crosses is further right. As they meet in ends alone, an end that both reach
 * the height of tells; where it is the end of both, the other end does.
 */
function isRightOf(edges: Edges, edge: number, other: number): boolean {
  const low = lowEndOf(edges, edge)[1] >= lowEndOf(edges, other)[1];
  const below = low ? sideOf(edges, other, lowEndOf(edges, edge)) : -sideOf(edges, edge, lowEndOf(edges, other));
  if (below !== 0) return below > 0;
  const high = highEndOf(edges, edge)[1] <= highEndOf(edges, other)[1];
  return (high ? sideOf(edges, other, highEndOf(edges, edge)) : -sideOf(edges, edge, highEndOf(edges, other))) > 0;
}

function lowEndOf({ ax, ay, bx, by }: Edges, edge: number): readonly [number, number] {
  return isRising(ay, by, edge) ? [defined(ax[edge]), defined(ay[edge])] : [defined(bx[edge]), defined(by[edge])];
}

function highEndOf({ ax, ay, bx, by }: Edges, edge: number): readonly [number, number] {
  return isRising(ay, by, edge) ? [defined(bx[edge]), defined(by[edge])] : [defined(ax[edge]), defined(ay[edge])];
}

/** Positive for points to the right of the edge. */
function sideOf(edges: Edges, edge: number, [x, y]: readonly [number, number]): number {
  const [lowX, lowY] = lowEndOf(edges, edge);
  const [highX, highY] = highEndOf(edges, edge);
  return -orientation(lowX, lowY, highX, highY, x, y);
}

/** Grid units: about where a horizontal line crosses the edge. */
function crossingOf({ ax, ay, bx, by }: Edges, edge: number, y: number): number {
  return (
    defined(ax[edge]) +
    ((y - defined(ay[edge])) / (defined(by[edge]) - defined(ay[edge]))) * (defined(bx[edge]) - defined(ax[edge]))
  );
}

/** Round the cycle of `start`, then across each of its edges to the cycle on the other side, and so on. */
function propagateWindings(
  noded: SnappedEdges,
  graph: PlanarGraph,
  windings: EdgeWindings,
  done: Uint8Array,
  start: number,
  outside: readonly [number, number],
): void {
  const { first, second } = windings;
  [first[start], second[start]] = outside;
  const waiting = [start];
  for (let seed = waiting.pop(); seed !== undefined; seed = waiting.pop()) {
    if (done[seed] === 1) continue;
    const inFirst = defined(first[seed]);
    const inSecond = defined(second[seed]);
    for (let at = seed; done[at] !== 1; at = defined(graph.next[at])) {
      checkpoint();
      done[at] = 1;
      first[at] = inFirst;
      second[at] = inSecond;
      const twin = at ^ 1;
      if (done[twin] === 1) continue;
      const edge = at >> 1;
      const sign = (at & 1) === 0 ? 1 : -1;
      first[twin] = inFirst - sign * defined(noded.edges.first[edge]);
      second[twin] = inSecond - sign * defined(noded.edges.second[edge]);
      waiting.push(twin);
    }
  }
}

/** How often the two sets of rings wind round each face of a planar graph. */
import { findRoot, uniteSets } from '../spatial/clusters';
import type { PlanarGraph } from './half-edges';
import { orientation } from './orientation';
import type { SnappedEdges } from './snap-rounding';

/** Of the face on the left of each half-edge. */
export interface EdgeWindings {
  readonly first: Int32Array;
  readonly second: Int32Array;
}

/**
 * One ray tells the windings outside each connected component of edges; from there they follow across the edges.
 */
export function computeEdgeWindings(noded: SnappedEdges, graph: PlanarGraph): EdgeWindings {
  const windings = { first: new Int32Array(graph.halfEdges), second: new Int32Array(graph.halfEdges) };
  const done = new Uint8Array(graph.halfEdges);
  for (const vertex of leftmostOfComponents(graph)) {
    const outside = windingLeftOf(noded, graph.x[vertex] ?? 0, graph.y[vertex] ?? 0);
    propagateWindings(noded, graph, windings, done, graph.last[vertex] ?? 0, outside);
  }
  return windings;
}

function leftmostOfComponents(graph: PlanarGraph): number[] {
  const { x, y, origin } = graph;
  const parents = Int32Array.from(x.keys());
  for (let halfEdge = 0; halfEdge < graph.halfEdges; halfEdge += 2) {
    uniteSets(parents, origin[halfEdge] ?? 0, origin[halfEdge + 1] ?? 0);
  }
  const leftmost = new Map<number, number>();
  for (let vertex = 0; vertex < x.length; vertex += 1) {
    const root = findRoot(parents, vertex);
    const best = leftmost.get(root);
    const [vx, vy] = [x[vertex] ?? 0, y[vertex] ?? 0];
    const further = best === undefined || vx < (x[best] ?? 0) || (vx === x[best] && vy < (y[best] ?? 0));
    if (further) leftmost.set(root, vertex);
  }
  return [...leftmost.values()];
}

/** Just left of the leftmost vertex of a component: the sum over all edges that a ray from the far left crosses. */
function windingLeftOf(noded: SnappedEdges, x: number, y: number): readonly [number, number] {
  const { edges, boxes } = noded;
  let [first, second] = [0, 0];
  boxes?.search(-Infinity, y, x, y, (edge) => {
    const [ax, ay, bx, by] = [edges.ax[edge] ?? 0, edges.ay[edge] ?? 0, edges.bx[edge] ?? 0, edges.by[edge] ?? 0];
    if (ay > y === by > y) return false;
    const rising = by > ay;
    const side = orientation(ax, ay, bx, by, x, y);
    if (rising ? side >= 0 : side <= 0) return false;
    first += rising ? -(edges.first[edge] ?? 0) : (edges.first[edge] ?? 0);
    second += rising ? -(edges.second[edge] ?? 0) : (edges.second[edge] ?? 0);
    return false;
  });
  return [first, second];
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
    const [inFirst, inSecond] = [first[seed] ?? 0, second[seed] ?? 0];
    for (let at = seed; done[at] !== 1; at = graph.next[at] ?? seed) {
      done[at] = 1;
      first[at] = inFirst;
      second[at] = inSecond;
      const twin = at ^ 1;
      if (done[twin] === 1) continue;
      const [edge, sign] = [at >> 1, (at & 1) === 0 ? 1 : -1];
      first[twin] = inFirst - sign * (noded.edges.first[edge] ?? 0);
      second[twin] = inSecond - sign * (noded.edges.second[edge] ?? 0);
      waiting.push(twin);
    }
  }
}

/** How often the two sets of rings wind round each face of a planar graph. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
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
    const outside = windingLeftOf(noded, defined(graph.x[vertex]), defined(graph.y[vertex]));
    propagateWindings(noded, graph, windings, done, defined(graph.last[vertex]), outside);
  }
  return windings;
}

function leftmostOfComponents(graph: PlanarGraph): number[] {
  const { x, y, origin } = graph;
  const parents = Int32Array.from(x.keys());
  for (let halfEdge = 0; halfEdge < graph.halfEdges; halfEdge += 2) {
    uniteSets(parents, defined(origin[halfEdge]), defined(origin[halfEdge + 1]));
  }
  const leftmost = new Map<number, number>();
  for (let vertex = 0; vertex < x.length; vertex += 1) {
    checkpoint(4);
    const root = findRoot(parents, vertex);
    const best = leftmost.get(root);
    const [vx, vy] = [defined(x[vertex]), defined(y[vertex])];
    const further = best === undefined || vx < defined(x[best]) || (vx === x[best] && vy < defined(y[best]));
    if (further) leftmost.set(root, vertex);
  }
  return [...leftmost.values()];
}

/** Just left of the leftmost vertex of a component: the sum over all edges that a ray from the far left crosses. */
function windingLeftOf(noded: SnappedEdges, x: number, y: number): readonly [number, number] {
  const { edges, boxes } = noded;
  let [first, second] = [0, 0];
  boxes?.search(-Infinity, y, x, y, (edge) => {
    const [ax, ay, bx, by] = [
      defined(edges.ax[edge]),
      defined(edges.ay[edge]),
      defined(edges.bx[edge]),
      defined(edges.by[edge]),
    ];
    if (ay > y === by > y) return false;
    const rising = by > ay;
    const side = orientation(ax, ay, bx, by, x, y);
    if (rising ? side >= 0 : side <= 0) return false;
    first += rising ? -defined(edges.first[edge]) : defined(edges.first[edge]);
    second += rising ? -defined(edges.second[edge]) : defined(edges.second[edge]);
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
    const [inFirst, inSecond] = [defined(first[seed]), defined(second[seed])];
    for (let at = seed; done[at] !== 1; at = defined(graph.next[at])) {
      checkpoint();
      done[at] = 1;
      first[at] = inFirst;
      second[at] = inSecond;
      const twin = at ^ 1;
      if (done[twin] === 1) continue;
      const [edge, sign] = [at >> 1, (at & 1) === 0 ? 1 : -1];
      first[twin] = inFirst - sign * defined(noded.edges.first[edge]);
      second[twin] = inSecond - sign * defined(noded.edges.second[edge]);
      waiting.push(twin);
    }
  }
}

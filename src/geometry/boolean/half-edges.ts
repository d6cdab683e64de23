/**
 * The plane as edges that meet only in their ends divide it. Half-edge 2i runs along edge i, 2i + 1 against it; each
 * half-edge has a face on its left (y up), and the half-edges round one side of a face form a cycle.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { type Edges, hashPoint, orientation, tableSize } from './edge-set';

export interface PlanarGraph {
  readonly halfEdges: number;
  /** Of each half-edge: the vertex it starts from. */
  readonly origin: Int32Array;
  /** Of each half-edge: the next one along the face on its left. */
  readonly next: Int32Array;
  /** Of each vertex. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Of each vertex: its outgoing half-edge of the largest angle in (−π, π] of which −π/2 is the smallest. */
  readonly last: Int32Array;
}

export function buildPlanarGraph(edges: Edges, { origin, x, y } = numberVertices(edges)): PlanarGraph {
  const halfEdges = 2 * edges.ax.length;
  const { starts, outgoing } = gatherOutgoing(origin, x.length);
  const next = new Int32Array(halfEdges);
  const last = new Int32Array(x.length);
  for (let vertex = 0; vertex < x.length; vertex += 1) {
    const from = defined(starts[vertex]);
    const end = defined(starts[vertex + 1]);
    checkpoint(4);
    sortByAngle(outgoing, from, end, { origin, x, y });
    let clockwise = defined(outgoing[end - 1]);
    last[vertex] = clockwise;
    for (let place = from; place < end; place += 1) {
      const halfEdge = defined(outgoing[place]);
      next[halfEdge ^ 1] = clockwise;
      clockwise = halfEdge;
    }
  }
  return { halfEdges, origin, next, x, y, last };
}

export function numberVertices(edges: Edges): Pick<PlanarGraph, 'origin' | 'x' | 'y'> {
  const count = edges.ax.length;
  const origin = new Int32Array(2 * count);
  const x = new Float64Array(2 * count);
  const y = new Float64Array(2 * count);
  let size = 0;
  const slots = new Int32Array(tableSize(2 * count)).fill(-1);
  const mask = slots.length - 1;
  const numberOf = (px: number, py: number): number => {
    let slot = hashPoint(px, py) & mask;
    for (let vertex = defined(slots[slot]); vertex >= 0; vertex = defined(slots[slot])) {
      if (x[vertex] === px && y[vertex] === py) return vertex;
      slot = (slot + 1) & mask;
    }
    slots[slot] = size;
    x[size] = px;
    y[size] = py;
    size += 1;
    return size - 1;
  };
  for (let edge = 0; edge < count; edge += 1) {
    checkpoint(4);
    origin[2 * edge] = numberOf(defined(edges.ax[edge]), defined(edges.ay[edge]));
    origin[2 * edge + 1] = numberOf(defined(edges.bx[edge]), defined(edges.by[edge]));
  }
  return { origin, x: x.subarray(0, size), y: y.subarray(0, size) };
}

/** Half-edges grouped by origin: those of vertex v are outgoing[starts[v] … starts[v + 1] − 1]. */
function gatherOutgoing(origin: Int32Array, vertices: number): { starts: Int32Array; outgoing: Int32Array } {
  checkpoint(origin.length / 8);
  const starts = new Int32Array(vertices + 1);
  for (const vertex of origin) starts[vertex + 1] = defined(starts[vertex + 1]) + 1;
  for (let vertex = 0; vertex < vertices; vertex += 1) {
    starts[vertex + 1] = defined(starts[vertex + 1]) + defined(starts[vertex]);
  }
  const outgoing = new Int32Array(origin.length);
  const filled = starts.slice();
  origin.forEach((vertex, halfEdge) => {
    const place = defined(filled[vertex]);
    outgoing[place] = halfEdge;
    filled[vertex] = place + 1;
  });
  return { starts, outgoing };
}

type Vertices = Pick<PlanarGraph, 'origin' | 'x' | 'y'>;

/** So many are put in order one by one: two at most vertices, and `sort` makes arrays for each. */
const FEW = 8;

/** The half-edges from one vertex, at the places from `from` up to, not including, `end`: anticlockwise (y up). */
function sortByAngle(outgoing: Int32Array, from: number, end: number, vertices: Vertices): void {
  if (end - from > FEW) {
    outgoing.subarray(from, end).sort((p, q) => compareAngles(p, q, vertices));
    return;
  }
  for (let place = from + 1; place < end; place += 1) {
    const moved = defined(outgoing[place]);
    let free = place;
    for (; free > from && compareAngles(defined(outgoing[free - 1]), moved, vertices) > 0; free -= 1) {
      outgoing[free] = defined(outgoing[free - 1]);
    }
    outgoing[free] = moved;
  }
}

/**
 * Half-edges along their edge (even) point to greater x, or straight up: they fill the angles from −π/2 (excluded) to π/2,
 * those against it (odd) the other half turn, so the order of oddness comes first.
 */
function compareAngles(p: number, q: number, { origin, x, y }: Vertices): number {
  checkpoint();
  if ((p & 1) !== (q & 1)) return (p & 1) - (q & 1);
  const from = defined(origin[p]);
  const toP = defined(origin[p ^ 1]);
  const toQ = defined(origin[q ^ 1]);
  return -orientation(
    defined(x[from]),
    defined(y[from]),
    defined(x[toP]),
    defined(y[toP]),
    defined(x[toQ]),
    defined(y[toQ]),
  );
}

/**
 * Directed edges on an integer grid, each with what it adds to the two winding numbers (of a first and a second set of
 * rings) when it is crossed. Equal edges are kept once, their contributions summed; those that add nothing are dropped.
 * On which side of an edge a point lies is decided exactly.
 */
import { orient2d } from 'robust-predicates';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Ring } from '../base/polygon-types';

export interface Edges {
  /** Start, end: start before end in the order of x, then y. */
  readonly ax: number[];
  readonly ay: number[];
  readonly bx: number[];
  readonly by: number[];
  /** The winding number on the left (of a → b, y up) less that on the right. */
  readonly first: number[];
  readonly second: number[];
  /** 1 for edges whose crossings with others are not known yet. */
  readonly dirty: number[];
}

export function noEdges(): Edges {
  return { ax: [], ay: [], bx: [], by: [], first: [], second: [], dirty: [] };
}

/** Edges without length are left out. */
export function pushEdge(
  edges: Edges,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  first: number,
  second: number,
  fresh: number,
): void {
  if (ax === bx && ay === by) return;
  const forward = ax < bx || (ax === bx && ay < by);
  edges.ax.push(forward ? ax : bx);
  edges.ay.push(forward ? ay : by);
  edges.bx.push(forward ? bx : ax);
  edges.by.push(forward ? by : ay);
  edges.first.push(forward ? first : -first);
  edges.second.push(forward ? second : -second);
  edges.dirty.push(fresh);
}

/** The ring's coordinates must be integers already. */
export function pushRing(edges: Edges, ring: Ring, first: number, second: number): void {
  const size = ring.length;
  checkpoint(size);
  let [x0, y0] = [defined(ring[size - 2]), defined(ring[size - 1])];
  for (let index = 0; index + 1 < size; index += 2) {
    const [x1, y1] = [defined(ring[index]), defined(ring[index + 1])];
    pushEdge(edges, x0, y0, x1, y1, first, second, 1);
    x0 = x1;
    y0 = y1;
  }
}

/** Sums equal edges. A sum of edges that were all looked at before need not be looked at again. */
export function mergeEqualEdges(edges: Edges): Edges {
  const count = edges.ax.length;
  const slots = new Int32Array(tableSize(count)).fill(-1);
  const leaders: number[] = [];
  for (let edge = 0; edge < count; edge += 1) {
    checkpoint(8);
    const slot = slotOf(edges, edge, slots);
    const leader = defined(slots[slot]);
    if (leader < 0) {
      slots[slot] = edge;
      leaders.push(edge);
    } else {
      edges.first[leader] = defined(edges.first[leader]) + defined(edges.first[edge]);
      edges.second[leader] = defined(edges.second[leader]) + defined(edges.second[edge]);
      edges.dirty[leader] = Math.min(defined(edges.dirty[leader]), defined(edges.dirty[edge]));
    }
  }
  return pick(
    edges,
    leaders.filter((edge) => edges.first[edge] !== 0 || edges.second[edge] !== 0),
  );
}

export function tableSize(count: number): number {
  return 2 ** Math.ceil(Math.log2(2 * count + 2));
}

/** Open addressing: the slot that holds an equal edge, else the first free one. */
function slotOf(edges: Edges, edge: number, slots: Int32Array): number {
  const mask = slots.length - 1;
  const [ax, ay, bx, by] = [
    defined(edges.ax[edge]),
    defined(edges.ay[edge]),
    defined(edges.bx[edge]),
    defined(edges.by[edge]),
  ];
  let slot = (hashPoint(ax, ay) + Math.imul(hashPoint(bx, by), 31)) & mask;
  for (;;) {
    const other = defined(slots[slot]);
    if (other < 0) return slot;
    const sameStart = edges.ax[other] === ax && edges.ay[other] === ay;
    if (sameStart && edges.bx[other] === bx && edges.by[other] === by) return slot;
    slot = (slot + 1) & mask;
  }
}

/** Of two integers, mixed so that neighbours on the grid fall apart. */
export function hashPoint(x: number, y: number): number {
  let hash = Math.imul(x | 0, 0x9e3779b1) ^ Math.imul(y | 0, 0x85ebca77);
  hash ^= hash >>> 15;
  hash = Math.imul(hash, 0x2c1b3c6d);
  return hash ^ (hash >>> 13);
}

function pick(edges: Edges, kept: readonly number[]): Edges {
  const of = (values: readonly number[]): number[] => {
    checkpoint(kept.length);
    return kept.map((edge) => defined(values[edge]));
  };
  return {
    ax: of(edges.ax),
    ay: of(edges.ay),
    bx: of(edges.bx),
    by: of(edges.by),
    first: of(edges.first),
    second: of(edges.second),
    dirty: of(edges.dirty),
  };
}

/**
 * Positive when c lies on that side of the line from a to b to which a quarter turn from +x to +y points (clockwise on
 * the screen), 0 exactly when the three are on one line. Shewchuk's adaptive predicate (robust-predicates).
 */
export function orientation(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return -orient2d(ax, ay, bx, by, cx, cy);
}

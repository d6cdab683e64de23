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
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  /** The winding number on the left (of a → b, y up) less that on the right. */
  readonly first: Float64Array;
  readonly second: Float64Array;
  /** 1 for edges whose crossings with others are not known yet. */
  readonly dirty: Uint8Array;
  /** The edge that it is a piece of, among those that were indexed last: see `EdgeFinder`. Ascending. */
  readonly owner: Int32Array;
}

/** Edges as they are gathered, in arrays that are made once and never grow. */
export class EdgeList {
  private readonly edges: Edges;
  private count = 0;

  /** @param capacity so many edges at most */
  constructor(capacity: number) {
    const memory = new ArrayBuffer(BYTES_PER_EDGE * capacity);
    const numbers = (place: number) => new Float64Array(memory, 8 * place * capacity, capacity);
    this.edges = {
      ax: numbers(0),
      ay: numbers(1),
      bx: numbers(2),
      by: numbers(3),
      first: numbers(4),
      second: numbers(5),
      owner: new Int32Array(memory, 48 * capacity, capacity),
      dirty: new Uint8Array(memory, 52 * capacity, capacity),
    };
  }

  /** Edges without length are left out. */
  push(ax: number, ay: number, bx: number, by: number, first: number, second: number, fresh: number, owner = 0): void {
    if (ax === bx && ay === by) return;
    const { edges, count } = this;
    const forward = ax < bx || (ax === bx && ay < by);
    edges.ax[count] = forward ? ax : bx;
    edges.ay[count] = forward ? ay : by;
    edges.bx[count] = forward ? bx : ax;
    edges.by[count] = forward ? by : ay;
    edges.first[count] = forward ? first : -first;
    edges.second[count] = forward ? second : -second;
    edges.dirty[count] = fresh;
    edges.owner[count] = owner;
    this.count = count + 1;
  }

  /** The ring's coordinates must be integers already. */
  pushRing(ring: Ring, first: number, second: number): void {
    const size = ring.length;
    checkpoint(size);
    let x0 = defined(ring[size - 2]);
    let y0 = defined(ring[size - 1]);
    for (let index = 0; index + 1 < size; index += 2) {
      const x1 = defined(ring[index]);
      const y1 = defined(ring[index + 1]);
      this.push(x0, y0, x1, y1, first, second, 1);
      x0 = x1;
      y0 = y1;
    }
  }

  /**
   * Sums equal edges, and ends the list: what comes of it takes its place. A sum of edges that were all looked at before
   * need not be looked at again.
   */
  merge(): Edges {
    const { edges, count } = this;
    const { first, second, dirty } = edges;
    const slots = new Int32Array(tableSize(count)).fill(-1);
    let leaders = 0;
    for (let edge = 0; edge < count; edge += 1) {
      checkpoint(4);
      const slot = slotOf(edges, edge, slots);
      const leader = defined(slots[slot]);
      if (leader < 0) {
        moveEdge(edges, edge, leaders);
        slots[slot] = leaders;
        leaders += 1;
      } else {
        first[leader] = defined(first[leader]) + defined(first[edge]);
        second[leader] = defined(second[leader]) + defined(second[edge]);
        dirty[leader] = Math.min(defined(dirty[leader]), defined(dirty[edge]));
      }
    }
    return withoutIdle(edges, leaders);
  }
}

/** Seven numbers, one of them an integer, and a byte. */
const BYTES_PER_EDGE = 53;

function moveEdge({ ax, ay, bx, by, first, second, dirty, owner }: Edges, from: number, to: number): void {
  if (from === to) return;
  ax[to] = defined(ax[from]);
  ay[to] = defined(ay[from]);
  bx[to] = defined(bx[from]);
  by[to] = defined(by[from]);
  first[to] = defined(first[from]);
  second[to] = defined(second[from]);
  dirty[to] = defined(dirty[from]);
  owner[to] = defined(owner[from]);
}

/** The edges up to `count` that add anything. */
function withoutIdle(edges: Edges, count: number): Edges {
  const { ax, ay, bx, by, first, second, dirty, owner } = edges;
  let kept = 0;
  checkpoint(count / 8);
  for (let edge = 0; edge < count; edge += 1) {
    if (first[edge] === 0 && second[edge] === 0) continue;
    moveEdge(edges, edge, kept);
    kept += 1;
  }
  return {
    ax: ax.subarray(0, kept),
    ay: ay.subarray(0, kept),
    bx: bx.subarray(0, kept),
    by: by.subarray(0, kept),
    first: first.subarray(0, kept),
    second: second.subarray(0, kept),
    dirty: dirty.subarray(0, kept),
    owner: owner.subarray(0, kept),
  };
}

export function tableSize(count: number): number {
  return 2 ** Math.ceil(Math.log2(2 * count + 2));
}

/** Open addressing: the slot that holds an equal edge, else the first free one. */
function slotOf({ ax, ay, bx, by }: Edges, edge: number, slots: Int32Array): number {
  const mask = slots.length - 1;
  const fromX = defined(ax[edge]);
  const fromY = defined(ay[edge]);
  const toX = defined(bx[edge]);
  const toY = defined(by[edge]);
  let slot = (hashPoint(fromX, fromY) + Math.imul(hashPoint(toX, toY), 31)) & mask;
  for (;;) {
    const other = defined(slots[slot]);
    if (other < 0) return slot;
    if (ax[other] === fromX && ay[other] === fromY && bx[other] === toX && by[other] === toY) return slot;
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

/**
 * Positive when c lies on that side of the line from a to b to which a quarter turn from +x to +y points (clockwise on
 * the screen), 0 exactly when the three are on one line. Shewchuk's adaptive predicate (robust-predicates).
 */
export function orientation(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return -orient2d(ax, ay, bx, by, cx, cy);
}

/**
 * The nearest chords of a ring from one of its vertices, those to the vertex's own neighbourhood left out. The edges of
 * the ring are held by a tree of boxes in their own order, so that runs of edges too near along the ring are passed
 * over as one, and so are those too far off.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { nearestOnEdge } from '../base/ring';
import type { SegmentIndex } from '../spatial/segment-index';
import type { ArcLengthRing } from './ring-arclength';

/** Edges in the least boxes. */
const LEAF = 8;

export interface ChordQuery {
  /** The edge at whose start the chords begin. */
  readonly edge: number;
  /** mm: ends lie on edges at least so far along the ring from the edge … */
  readonly minGap: number;
  /** … and whose boxes come so near to its start. */
  readonly maxDistance: number;
  /** So many at most. */
  readonly maxCount: number;
  /** Whether one may end on another edge: at its nearest place, t of the way along it and so many mm off. */
  readonly mayEnd: (other: number, t: number, distance: number) => boolean;
}

export class NearestChords {
  /** Node 1 holds all leaves, node i what 2·i and 2·i + 1 hold; leaf k is node `leaves` + k. Four numbers a box. */
  private readonly boxes: Float64Array;
  private readonly leaves: number;
  private readonly nearest: { edge: number; square: number }[] = [];

  private readonly index: SegmentIndex;
  private readonly ring: ArcLengthRing;

  constructor(index: SegmentIndex, ring: ArcLengthRing) {
    this.index = index;
    this.ring = ring;

    this.leaves = 2 ** Math.ceil(Math.log2(Math.max(1, Math.ceil(ring.size / LEAF))));
    this.boxes = new Float64Array(8 * this.leaves);
    checkpoint(8 * this.leaves);
    for (let leaf = 0; leaf < this.leaves; leaf += 1) this.fillLeaf(leaf);
    for (let node = this.leaves - 1; node > 0; node -= 1) this.join(node);
  }

  private fillLeaf(leaf: number): void {
    const { x0, y0, x1, y1 } = this.index;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    const end = this.ring.first + Math.min(this.ring.size, LEAF * (leaf + 1));
    for (let edge = this.ring.first + LEAF * leaf; edge < end; edge += 1) {
      minX = Math.min(minX, defined(x0[edge]), defined(x1[edge]));
      minY = Math.min(minY, defined(y0[edge]), defined(y1[edge]));
      maxX = Math.max(maxX, defined(x0[edge]), defined(x1[edge]));
      maxY = Math.max(maxY, defined(y0[edge]), defined(y1[edge]));
    }
    this.boxes.set([minX, minY, maxX, maxY], 4 * (this.leaves + leaf));
  }

  private join(node: number): void {
    const { boxes } = this;
    for (let side = 0; side < 4; side += 1) {
      const [one, other] = [defined(boxes[8 * node + side]), defined(boxes[8 * node + 4 + side])];
      boxes[4 * node + side] = side < 2 ? Math.min(one, other) : Math.max(one, other);
    }
  }

  /** Edges by the distance of their nearest places, those first. */
  search(query: ChordQuery): number[] {
    this.nearest.length = 0;
    this.visit(1, 0, this.leaves, query);
    return this.nearest.map(({ edge }) => edge);
  }

  /** The node that holds the leaves from `low` up to, not including, `high`. */
  private visit(node: number, low: number, high: number, query: ChordQuery): void {
    const square = this.squareToBox(node, query.edge);
    if (square > query.maxDistance * query.maxDistance || square >= this.farthest(query.maxCount)) return;
    if (this.isTooNear(LEAF * low, LEAF * high, query)) return;
    if (high - low === 1) {
      checkpoint(12);
      const end = Math.min(this.ring.size, LEAF * high);
      for (let i = LEAF * low; i < end; i += 1) this.consider(this.ring.first + i, query);
      return;
    }
    const middle = (low + high) / 2;
    const isLeftNearer = this.squareToBox(2 * node, query.edge) <= this.squareToBox(2 * node + 1, query.edge);
    if (isLeftNearer) this.visit(2 * node, low, middle, query);
    this.visit(2 * node + 1, middle, high, query);
    if (!isLeftNearer) this.visit(2 * node, low, middle, query);
  }

  /**
   * Whether all edges from one place in the ring up to another are nearer along it than they may be; or there are none.
   */
  private isTooNear(from: number, to: number, { edge, minGap: leastGap }: ChordQuery): boolean {
    const { ring } = this;
    if (from >= ring.size) return true;
    const [first, last] = [ring.first + from, ring.first + Math.min(ring.size, to) - 1];
    // What leads from one near edge to another stays near, or goes all round what is far.
    return (
      ring.gapBetween(edge, first) < leastGap &&
      ring.gapBetween(edge, last) < leastGap &&
      ring.placeOf(last, 0.5) - ring.placeOf(first, 0.5) < ring.length - 2 * leastGap
    );
  }

  /** mm²: what lies farther off is not among the nearest. */
  private farthest(most: number): number {
    return this.nearest[most - 1]?.square ?? Infinity;
  }

  private squareToBox(node: number, edge: number): number {
    const { boxes, index } = this;
    const x = defined(index.x0[edge]);
    const y = defined(index.y0[edge]);
    const dx = Math.max(defined(boxes[4 * node]) - x, x - defined(boxes[4 * node + 2]), 0);
    const dy = Math.max(defined(boxes[4 * node + 1]) - y, y - defined(boxes[4 * node + 3]), 0);
    return dx * dx + dy * dy;
  }

  private consider(other: number, query: ChordQuery): void {
    if (this.ring.gapBetween(query.edge, other) < query.minGap) return;
    const { x0, y0, x1, y1 } = this.index;
    const x = defined(x0[query.edge]);
    const y = defined(y0[query.edge]);
    const aside = Math.max(
      Math.min(defined(x0[other]), defined(x1[other])) - x,
      x - Math.max(defined(x0[other]), defined(x1[other])),
      0,
    );
    const above = Math.max(
      Math.min(defined(y0[other]), defined(y1[other])) - y,
      y - Math.max(defined(y0[other]), defined(y1[other])),
      0,
    );
    if (aside * aside + above * above > query.maxDistance * query.maxDistance) return;
    const t = nearestOnEdge(x, y, defined(x0[other]), defined(y0[other]), defined(x1[other]), defined(y1[other]));
    const dx = defined(x0[other]) + t * (defined(x1[other]) - defined(x0[other])) - x;
    const dy = defined(y0[other]) + t * (defined(y1[other]) - defined(y0[other])) - y;
    const square = dx * dx + dy * dy;
    if (square < this.farthest(query.maxCount) && query.mayEnd(other, t, Math.sqrt(square)))
      this.insert(other, square, query.maxCount);
  }

  private insert(edge: number, square: number, most: number): void {
    let at = this.nearest.length;
    while (at > 0 && defined(this.nearest[at - 1]).square > square) at -= 1;
    this.nearest.splice(at, 0, { edge, square });
    if (this.nearest.length > most) this.nearest.pop();
  }
}

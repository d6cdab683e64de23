/**
 * Which edges come near to each other, while they are cut. What a cut leaves of an edge lies in the box of that edge: so
 * where few were cut, the index of the edges before tells where the pieces are, and none is made anew.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { SequenceIndex } from '../spatial/sequence-index';
import type { Edges } from './edge-set';

/** Of the edges: where fewer are cut, their index still serves. */
const FEW = 1 / 16;

export class EdgeFinder {
  private readonly edges: Edges;
  private readonly index: SequenceIndex;
  /** Piece p of the indexed edge i has a number from starts[i] up to, not including, starts[i + 1]; none where all are whole. */
  private readonly starts: Int32Array | undefined;
  private readonly owners: number[] = [];

  private constructor(edges: Edges, index: SequenceIndex, starts?: Int32Array) {
    this.edges = edges;
    this.index = index;
    this.starts = starts;
  }

  /** Of edges that were not cut yet, of which there is at least one. Makes each of them its own owner. */
  static of(edges: Edges): EdgeFinder {
    for (let edge = 0; edge < edges.owner.length; edge += 1) edges.owner[edge] = edge;
    return new EdgeFinder(edges, new SequenceIndex(sidesOf(edges)));
  }

  /**
   * Of the edges after some were cut.
   * @param cuts so many times
   * @returns undefined where none is left
   */
  after(edges: Edges, cuts: number): EdgeFinder | undefined {
    const count = edges.ax.length;
    if (count === 0) return undefined;
    return cuts < FEW * count
      ? new EdgeFinder(edges, this.index, startsOf(edges, this.index.count))
      : EdgeFinder.of(edges);
  }

  /**
   * The numbers of all edges whose boxes touch that of one of them, itself among them, ascending.
   * @param found is overwritten: the numbers stand at its beginning
   * @returns how many
   */
  near(edge: number, found: number[]): number {
    const { starts, owners, edges } = this;
    if (!starts) return this.index.near(edge, found);
    const minX = defined(edges.ax[edge]);
    const maxX = defined(edges.bx[edge]);
    const minY = lowOf(edges, edge);
    const maxY = highOf(edges, edge);
    const candidates = this.index.near(defined(edges.owner[edge]), owners);
    let count = 0;
    for (let place = 0; place < candidates; place += 1) {
      const owner = defined(owners[place]);
      const end = defined(starts[owner + 1]);
      checkpoint();
      for (let piece = defined(starts[owner]); piece < end; piece += 1) {
        if (!touches(edges, piece, minX, minY, maxX, maxY)) continue;
        found[count] = piece;
        count += 1;
      }
    }
    return count;
  }

  /** The same of edges that were not cut yet, without those up to it. */
  nearAfter(edge: number, found: number[]): number {
    return this.index.nearAfter(edge, found);
  }

  /** Calls back with the edges whose boxes touch the box until one answers true. */
  search(minX: number, minY: number, maxX: number, maxY: number, visit: (edge: number) => boolean): void {
    const { starts, edges } = this;
    if (!starts) {
      this.index.search(minX, minY, maxX, maxY, visit);
      return;
    }
    this.index.search(minX, minY, maxX, maxY, (owner) => {
      const end = defined(starts[owner + 1]);
      for (let piece = defined(starts[owner]); piece < end; piece += 1) {
        if (touches(edges, piece, minX, minY, maxX, maxY) && visit(piece)) return true;
      }
      return false;
    });
  }
}

function sidesOf(edges: Edges): Float64Array {
  const count = edges.ax.length;
  const sides = new Float64Array(4 * count);
  for (let edge = 0; edge < count; edge += 1) {
    sides[4 * edge] = defined(edges.ax[edge]);
    sides[4 * edge + 1] = lowOf(edges, edge);
    sides[4 * edge + 2] = defined(edges.bx[edge]);
    sides[4 * edge + 3] = highOf(edges, edge);
  }
  return sides;
}

/** @param indexed so many edges had an owner each */
function startsOf({ owner }: Edges, indexed: number): Int32Array {
  const starts = new Int32Array(indexed + 1);
  let edge = 0;
  checkpoint(indexed);
  for (let each = 0; each <= indexed; each += 1) {
    while (edge < owner.length && defined(owner[edge]) < each) edge += 1;
    starts[each] = edge;
  }
  return starts;
}

function lowOf({ ay, by }: Edges, edge: number): number {
  return Math.min(defined(ay[edge]), defined(by[edge]));
}

function highOf({ ay, by }: Edges, edge: number): number {
  return Math.max(defined(ay[edge]), defined(by[edge]));
}

function touches(edges: Edges, edge: number, minX: number, minY: number, maxX: number, maxY: number): boolean {
  if (defined(edges.ax[edge]) > maxX || defined(edges.bx[edge]) < minX) return false;
  return lowOf(edges, edge) <= maxY && highOf(edges, edge) >= minY;
}

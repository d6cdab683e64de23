/**
 * The borders between labels as a planar map: arcs that run from junction to junction, each with one label on its left and
 * another on its right. Whatever is made of an arc is made once, for both sides, so that no gap can come between them.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { SoftLabels } from '../raster';
import { CrossingGrid } from './crossings';

export interface Arc {
  /** The edges that it crosses, in its course. */
  readonly edges: Int32Array;
  /** x0, y0, x1, y1, … in pixels, the junctions at its ends included; the first point again where it closes. */
  readonly points: Float64Array;
  /** The labels beside it, seen in its course, y down. */
  readonly left: number;
  readonly right: number;
  /** Cells of the junctions where it begins and ends; -1 where it closes. */
  readonly from: number;
  readonly to: number;
  /** The sides through which it leaves the one and comes into the other. */
  readonly fromSide: number;
  readonly toSide: number;
}

export interface PlanarMap {
  readonly grid: CrossingGrid;
  readonly arcs: readonly Arc[];
  /** By cell, in pixels. */
  readonly junctions: ReadonlyMap<number, Point>;
}

export function planarMap(soft: SoftLabels): PlanarMap {
  return new MapTracer(soft).whole;
}

/** In a cell with four crossings, through which side a border leaves that came in by another: round the odd corners. */
const ROUND_B_AND_D = [1, 0, 3, 2] as const;
const ROUND_A_AND_C = [3, 2, 1, 0] as const;

const JUNCTION = -1;

/** Follows borders: of all labels, and of some when more pixels are theirs. */
export class MapTracer {
  readonly whole: PlanarMap;
  private readonly grid: CrossingGrid;
  private readonly edges: readonly number[];
  /** 1 for edges that are still to be put into an arc. */
  private readonly open: Uint8Array;
  private arcs: Arc[] = [];
  private readonly junctions = new Map<number, Point>();

  constructor(soft: SoftLabels) {
    this.grid = new CrossingGrid(soft);
    this.open = new Uint8Array(2 * this.grid.regions.length);
    this.edges = this.crossedEdges();
    for (const edge of this.edges) this.open[edge] = 1;
    this.whole = this.trace(Int32Array.from(this.edges));
  }

  /**
   * Hands over the map of the borders round some regions, where pixels belong to a region of their own. The map holds only
   * meanwhile; its arcs stay. Junctions lie where they do in the whole map, and arcs run as they do there.
   */
  withRegion<T>(
    region: number,
    pixels: readonly number[],
    isInside: (region: number) => boolean,
    use: (map: PlanarMap) => T,
  ): T {
    const { grid } = this;
    const before = grid.mark(pixels, region);
    const edges: number[] = [];
    const want = (edge: number): void => {
      const [one, other] = [grid.regionBefore(edge), grid.regionAfter(edge)];
      if (one === other || this.open[edge] === 1 || !(isInside(one) || isInside(other))) return;
      this.open[edge] = 1;
      edges.push(edge);
    };
    this.edges.forEach(want);
    for (const pixel of pixels) grid.forEdgesRound(pixel, want);
    const map = this.trace(Int32Array.from(edges).sort());
    const result = use(map);
    grid.unmark(pixels, before);
    return result;
  }

  /** @param edges ascending, all that are open: all of each border that they are of */
  private trace(edges: Int32Array): PlanarMap {
    this.arcs = [];
    const cells = new Int32Array(2 * edges.length);
    edges.forEach((edge, i) => {
      cells[2 * i] = edge >> 1;
      cells[2 * i + 1] = edge & 1 ? (edge >> 1) - 1 : (edge >> 1) - this.grid.across;
    });
    // In the order of cells, an arc begins at the same end in every map that has it.
    for (const cell of cells.sort()) this.startAt(cell);
    for (const edge of edges) if (this.open[edge] === 1) this.walk(edge >> 1, edge & 1 ? 3 : 0, -1);
    return { grid: this.grid, arcs: this.arcs, junctions: this.junctions };
  }

  private crossedEdges(): number[] {
    const { regions, across } = this.grid;
    const edges: number[] = [];
    for (let at = 0; at + across < regions.length; at += 1) {
      if (at % across === 0) checkpoint(across);
      const region = regions[at];
      // The last pixel of a row and the first of the next both lie on the rim.
      if (regions[at + 1] !== region) edges.push(2 * at);
      if (regions[at + across] !== region) edges.push(2 * at + 1);
    }
    return edges;
  }

  /** Follows the borders that leave a junction, where the cell is one. */
  private startAt(cell: number): void {
    if (!this.isJunction(cell)) return;
    this.place(cell);
    for (let side = 0; side < 4; side += 1) {
      const edge = this.grid.edgeOf(cell, side);
      if (this.open[edge] === 1) this.walk(cell, side, cell);
    }
  }

  private place(cell: number): void {
    if (!this.junctions.has(cell)) this.junctions.set(cell, this.grid.placeOf(cell));
  }

  private isJunction(cell: number): boolean {
    for (let side = 0; side < 4; side += 1) {
      if (this.grid.isCrossed(this.grid.edgeOf(cell, side))) return this.exit(cell, side) === JUNCTION;
    }
    return false;
  }

  /** The side through which a border goes on that came in through another. */
  private exit(cell: number, side: number): number {
    const { regions, across } = this.grid;
    const a = regions[cell];
    const b = regions[cell + 1];
    const c = regions[cell + across + 1];
    const d = regions[cell + across];
    const top = a !== b;
    const right = b !== c;
    const bottom = c !== d;
    const count = Number(top) + Number(right) + Number(bottom) + Number(d !== a);
    if (count === 3 || (count === 2 && this.grid.isFrameCorner(cell))) return JUNCTION;
    if (count === 2) {
      if (top && side !== 0) return 0;
      if (right && side !== 1) return 1;
      return bottom && side !== 2 ? 2 : 3;
    }
    if (a !== c && b !== d) return JUNCTION;
    const joins = a === c && b === d ? this.grid.joinsFirstDiagonal(cell) : a === c;
    return defined((joins ? ROUND_B_AND_D : ROUND_A_AND_C)[side]);
  }

  /** @param from the junction where it starts, or -1 */
  private walk(start: number, fromSide: number, from: number): void {
    const first = this.grid.edgeOf(start, fromSide);
    const edges: number[] = [];
    let [cell, side, to] = [start, fromSide, -1];
    for (let edge = first; ; ) {
      checkpoint();
      this.open[edge] = 0;
      edges.push(edge);
      cell = this.grid.beyond(cell, side);
      const entry = (side + 2) % 4;
      const next = this.exit(cell, entry);
      side = next === JUNCTION ? entry : next;
      if (next === JUNCTION) {
        to = cell;
        break;
      }
      edge = this.grid.edgeOf(cell, side);
      if (edge === first) break;
    }
    if (to >= 0) this.place(to);
    const left = this.grid.regionAt(start, fromSide);
    const right = this.grid.regionAt(start, (fromSide + 1) % 4);
    const points = this.pointsOf(edges, from, to);
    this.arcs.push({ edges: Int32Array.from(edges), points, left, right, from, to, fromSide, toSide: side });
  }

  private pointsOf(edges: readonly number[], from: number, to: number): Float64Array {
    const points: number[] = [];
    const add = (cell: number): void => {
      const place = this.junctions.get(cell);
      if (place) points.push(place.x, place.y);
    };
    add(from);
    for (const edge of edges) points.push(this.grid.x(edge), this.grid.y(edge));
    add(to);
    if (to < 0) points.push(defined(points[0]), defined(points[1]));
    return Float64Array.from(points);
  }
}

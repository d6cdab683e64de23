/** Loops: along a ring from one place to another, then straight back. A chord and its ring make two of them. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Box } from '../base/polygon-types';
import type { Outline } from './boundary-arrays';
import type { Boundary } from './boundary-index';
import { type EdgePlace, edgePlace } from './chord';

export class BoundaryLoop {
  readonly ring: number;
  private readonly start: number;
  private readonly size: number;
  /** How many edges after the first one the loop's last edge comes. */
  private readonly lastStep: number;
  private readonly outline: Outline;
  readonly from: EdgePlace;
  readonly to: EdgePlace;

  constructor(outline: Outline, from: EdgePlace, to: EdgePlace) {
    this.outline = outline;
    this.from = from;
    this.to = to;
    this.ring = defined(outline.ring[from.edge]);
    this.start = defined(outline.ringStart[this.ring]);
    this.size = defined(outline.ringStart[this.ring + 1]) - this.start;
    const steps = (to.edge - from.edge + this.size) % this.size;
    this.lastStep = steps === 0 && to.at < from.at ? this.size : steps;
  }

  /** Pieces of edges that the loop runs along. */
  get pieces(): number {
    return this.lastStep + 1;
  }

  edgeOf(piece: number): number {
    return this.start + ((this.from.edge - this.start + piece) % this.size);
  }

  /** The ends of a piece, mm from its edge's start. */
  spanOf(piece: number): [number, number] {
    const from = piece === 0 ? this.from.at : 0;
    return [from, piece === this.lastStep ? this.to.at : defined(this.outline.length[this.edgeOf(piece)])];
  }

  /** In mm²; `sums` as made by `sweptAreas` for the ring. */
  area(sums: Float64Array): number {
    const { outline, start, from, to } = this;
    const origin = edgePlace(outline, start, 0);
    const swept = (place: EdgePlace): number => {
      const before = edgePlace(outline, place.edge, 0);
      return defined(sums[place.edge - start]) + crossFrom(origin, before, place);
    };
    const round = this.lastStep >= this.size || to.edge < from.edge ? defined(sums[this.size]) : 0;
    return (swept(to) - swept(from) + round + crossFrom(origin, to, from)) / 2;
  }

  box(): Box {
    const { x, y } = this.outline;
    const { from, to } = this;
    let [minX, minY] = [Math.min(from.x, to.x), Math.min(from.y, to.y)];
    let [maxX, maxY] = [Math.max(from.x, to.x), Math.max(from.y, to.y)];
    checkpoint(this.pieces);
    for (let piece = 1; piece < this.pieces; piece += 1) {
      const vertex = this.edgeOf(piece);
      minX = Math.min(minX, defined(x[vertex]));
      minY = Math.min(minY, defined(y[vertex]));
      maxX = Math.max(maxX, defined(x[vertex]));
      maxY = Math.max(maxY, defined(y[vertex]));
    }
    return { minX, minY, maxX, maxY };
  }

  /** By the parity of crossings with a ray to the right; `crossing` are the ring's edges that cross it, in order. */
  contains(point: Point, crossing: readonly number[]): boolean {
    let inside = crossesRay(point, this.to, this.from);
    for (const piece of new Set([0, this.lastStep])) {
      const [low, high] = this.spanOf(piece);
      const edge = this.edgeOf(piece);
      if (crossesRay(point, edgePlace(this.outline, edge, low), edgePlace(this.outline, edge, high))) inside = !inside;
    }
    const between = this.lastStep > 1 ? this.countBetween(crossing) : 0;
    return between % 2 === 1 ? !inside : inside;
  }

  /** How many of the edges lie after the loop's first and before its last. */
  private countBetween(edges: readonly number[]): number {
    const [first, last] = [this.from.edge, this.to.edge];
    const [after, before] = [lowerBound(edges, first + 1), lowerBound(edges, last)];
    return last > first ? before - after : edges.length - after + before;
  }
}

/** How many of the numbers, in order, are less than the limit. */
function lowerBound(numbers: readonly number[], limit: number): number {
  let [low, high] = [0, numbers.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (defined(numbers[middle]) < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The edges of a ring that a ray from the point to the right crosses, in order. */
export function edgesAcrossRay({ outline, edges }: Boundary, ring: number, point: Point): number[] {
  const { x, y, next } = outline;
  const found: number[] = [];
  edges.search(point.x, point.y, Infinity, point.y, (edge) => {
    const end = defined(next[edge]);
    const crosses =
      outline.ring[edge] === ring &&
      crossesRay(point, { x: defined(x[edge]), y: defined(y[edge]) }, { x: defined(x[end]), y: defined(y[end]) });
    if (crosses) found.push(edge);
    return false;
  });
  return found.sort((a, b) => a - b);
}

/** Twice the area swept from the ring's first vertex up to each of its vertices, and all round at the end; mm². */
export function sweptAreas({ x, y, ringStart }: Outline, ring: number): Float64Array {
  const [start, end] = [defined(ringStart[ring]), defined(ringStart[ring + 1])];
  checkpoint(end - start);
  const sums = new Float64Array(end - start + 1);
  for (let vertex = start; vertex + 1 < end; vertex += 1) {
    const [ax, ay] = [defined(x[vertex]) - defined(x[start]), defined(y[vertex]) - defined(y[start])];
    const [bx, by] = [defined(x[vertex + 1]) - defined(x[start]), defined(y[vertex + 1]) - defined(y[start])];
    sums[vertex - start + 1] = defined(sums[vertex - start]) + ax * by - ay * bx;
  }
  sums[end - start] = defined(sums[end - start - 1]);
  return sums;
}

function crossFrom(origin: Point, a: Point, b: Point): number {
  return (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x);
}

function crossesRay({ x, y }: Point, a: Point, b: Point): boolean {
  return a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x);
}

/**
 * Runs: elements that follow each other, and whose discs lie so close together that one search of the index tells for
 * all of them what may reach into their discs. Where that is nothing but the run's own part of the ring, and that part
 * keeps to one direction, only the tips of corners are thin there.
 */

import { defined } from '../../base/defined';
import { type Boundary, visitBox } from './boundary-index';
import { squareToEdge } from './tangent-disc';

/** How far the centres of one run of elements may be from their middle, in radii, and how many vertices it may have. */
const MAX_SPREAD = 1;
const MAX_VERTICES = 24;

export class EdgeRun {
  /** Edges that may reach into discs of the run; the first `count` count, once `search` was called. */
  readonly found: number[] = [];
  count = 0;
  /** Whether the run's elements can share a search. */
  isShared = false;
  /** Whether one search of all obstacles is likely to be worth its while; it stands from one run to the next. */
  isWanted = false;
  /** The first vertex, and the one after the last edge. */
  first = 0;
  end = 0;
  private isSearched = false;
  /** The box round the centres of the run's discs, its middle, and how far from that they are at most; mm. */
  private minX = 0;
  private minY = 0;
  private maxX = 0;
  private maxY = 0;
  private x = 0;
  private y = 0;
  private spread = 0;
  private readonly visit = (edge: number): boolean => {
    const reach = this.radius + this.spread;
    if (squareToEdge(this.boundary.outline, edge, this.x, this.y) < reach * reach) {
      this.found[this.count] = edge;
      this.count += 1;
    }
    return false;
  };

  private readonly boundary: Boundary;
  private readonly radius: number;
  private readonly steepest: number;

  /**
   * @param radius mm: of the discs
   * @param steepest the cosine of the angle that edges may make with the course of a plain run
   */
  constructor(boundary: Boundary, radius: number, steepest: number) {
    this.boundary = boundary;
    this.radius = radius;
    this.steepest = steepest;
  }

  /** Begins a run at the vertex, of one ring and of one edge at least. */
  start(vertex: number): void {
    const { ring, ringStart } = this.boundary.outline;
    const last = Math.min(defined(ringStart[defined(ring[vertex]) + 1]), vertex + MAX_VERTICES);
    this.minX = this.minY = Infinity;
    this.maxX = this.maxY = -Infinity;
    this.isSearched = false;
    this.first = this.end = vertex;
    while (this.end < last && this.takeIn(this.end)) this.end += 1;
    this.isShared = this.end > vertex;
    if (!this.isShared) this.end = vertex + 1;
  }

  /** Whether the centres of the vertex's cone and edge are near enough to the others; if so they belong to the run. */
  private takeIn(vertex: number): boolean {
    const { x, y, next, cone } = this.boundary.outline;
    const { minX, minY, maxX, maxY } = this;
    // The centres of a cone lie on an arc, which bulges beyond its ends.
    const bulge = defined(cone[vertex]) > 0 ? this.radius * (1 - Math.cos(defined(cone[vertex]) / 2)) : 0;
    this.widen(defined(x[vertex]), defined(y[vertex]), defined(this.boundary.outline.previous[vertex]), bulge);
    this.widen(defined(x[vertex]), defined(y[vertex]), vertex, bulge);
    this.widen(defined(x[defined(next[vertex])]), defined(y[defined(next[vertex])]), vertex, 0);
    const width = this.maxX - this.minX;
    const height = this.maxY - this.minY;
    const spread = Math.sqrt(width * width + height * height) / 2;
    if (spread > MAX_SPREAD * this.radius) {
      Object.assign(this, { minX, minY, maxX, maxY });
      return false;
    }
    this.spread = spread;
    this.x = (this.minX + this.maxX) / 2;
    this.y = (this.minY + this.maxY) / 2;
    return true;
  }

  /** By the centre of the disc that touches at (x, y) with the normal of the edge. */
  private widen(x: number, y: number, edge: number, margin: number): void {
    const { alongX, alongY } = this.boundary.outline;
    const centreX = x - this.radius * defined(alongY[edge]);
    const centreY = y + this.radius * defined(alongX[edge]);
    if (centreX - margin < this.minX) this.minX = centreX - margin;
    if (centreY - margin < this.minY) this.minY = centreY - margin;
    if (centreX + margin > this.maxX) this.maxX = centreX + margin;
    if (centreY + margin > this.maxY) this.maxY = centreY + margin;
  }

  /** Fills `found`, the first time in a run. */
  search(): void {
    if (this.isSearched) return;
    this.isSearched = true;
    this.count = 0;
    const reach = this.radius + this.spread;
    visitBox(this.boundary, this.x - reach, this.y - reach, this.x + reach, this.y + reach, this.visit);
  }

  /**
   * Whether all that may reach into discs of the run belongs to one part of its own ring along which every edge keeps
   * to one direction within `steepest`. Such a part is the graph of a function, and the region lies above it. What is
   * thin between two places that touch one disc is then thin throughout, and goes no deeper below the disc than the
   * corner does that two edges of the steepest slope make: see README.md.
   */
  isPlain(): boolean {
    if (!this.isShared) return false;
    this.search();
    const { polygon, ring, ringStart } = this.boundary.outline;
    const { first } = this;
    const size = defined(ringStart[defined(ring[first]) + 1]) - defined(ringStart[defined(ring[first])]);
    let back = 1;
    let ahead = this.end - first - 1;
    for (let at = 0; at < this.count; at += 1) {
      const edge = defined(this.found[at]);
      if (polygon[edge] !== polygon[first]) continue;
      if (ring[edge] !== ring[first]) return false;
      const along = (edge - first + size) % size;
      if (along > size / 2) back = Math.max(back, size - along);
      else ahead = Math.max(ahead, along);
    }
    return back + ahead < size - 1 && this.keepsDirection(back, ahead);
  }

  /** From so many edges before the run's first one to so many after it. */
  private keepsDirection(back: number, ahead: number): boolean {
    const { x, y, alongX, alongY, next, previous } = this.boundary.outline;
    let start = this.first;
    for (let step = 0; step < back; step += 1) start = defined(previous[start]);
    let end = defined(next[this.first]);
    for (let step = 0; step < ahead; step += 1) end = defined(next[end]);
    const dx = defined(x[end]) - defined(x[start]);
    const dy = defined(y[end]) - defined(y[start]);
    const least = this.steepest * Math.sqrt(dx * dx + dy * dy);
    for (let edge = start; edge !== end; edge = defined(next[edge])) {
      if (!(defined(alongX[edge]) * dx + defined(alongY[edge]) * dy > least)) return false;
    }
    return true;
  }
}

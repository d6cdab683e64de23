/**
 * Which stretches of one element other parts of the boundary reach into the tangent discs of: the ends in closed form.
 */

import { defined } from '../../base/defined';
import { NO_WIDTH } from '../base/tolerances';
import type { Outline } from './boundary-arrays';
import { type Boundary, visitBox } from './boundary-index';
import type { EdgeRun } from './edge-run';
import {
  type BlockedInterval,
  type BoundaryPoint,
  blockedInCone,
  blockedOnEdge,
  boundaryPointAt,
  isEdge,
  isHarmless,
  sizeOf,
  squareToEdge,
} from './tangent-disc';

/** In mm and radians: stretches with less between them are one. */
export const JOINT = NO_WIDTH;

/** The blocked stretches of one element at a time, in order and apart. */
export class BlockedIntervals {
  count = 0;
  readonly from: number[] = [];
  readonly to: number[] = [];
  private element = 0;
  private size = 0;
  private radius = 0;
  /** Middle of the line or arc of centres, and the square of how near to it an obstacle must come to matter. */
  private x = 0;
  private y = 0;
  private square = 0;
  /** The last edge that blocked a whole element: it, or one beside it, commonly blocks the next as well. */
  private hint = -1;
  private readonly blocked: BlockedInterval = { from: 0, to: 0 };
  private readonly place: BoundaryPoint = { x: 0, y: 0, normalX: 0, normalY: 0 };
  private readonly visit = (obstacle: number): boolean => this.consider(obstacle);

  private readonly boundary: Boundary;

  constructor(boundary: Boundary) {
    this.boundary = boundary;
  }

  /** `run` is the one that the element belongs to, if any. */
  find(element: number, radius: number, run?: EdgeRun): void {
    const { outline } = this.boundary;
    this.element = element;
    this.size = sizeOf(outline, element);
    this.radius = radius;
    this.count = 0;
    const { place } = this;
    boundaryPointAt(outline, element, this.size / 2, place);
    this.x = place.x + radius * place.normalX;
    this.y = place.y + radius * place.normalY;
    const spread = isEdge(element) ? this.size / 2 : (radius * this.size) / 2;
    this.square = (radius + spread) * (radius + spread);
    if (this.considerHint(outline)) return;
    // Where one edge blocks an element whole, a search of its own ends as soon as it meets such an edge: only once that
    // has failed is it likely that the run's elements need all obstacles.
    if (!run?.isShared || !run.isWanted) {
      this.search();
      if (run) run.isWanted = !this.isWhole();
      return;
    }
    run.search();
    for (let at = 0; at < run.count; at += 1) {
      if (this.consider(defined(run.found[at]))) return;
    }
  }

  private search(): void {
    const { place, radius, element } = this;
    boundaryPointAt(this.boundary.outline, element, 0, place);
    const ax = place.x + radius * place.normalX;
    const ay = place.y + radius * place.normalY;
    boundaryPointAt(this.boundary.outline, element, this.size, place);
    const bx = place.x + radius * place.normalX;
    const by = place.y + radius * place.normalY;
    const margin = radius + (isEdge(element) ? 0 : radius * (1 - Math.cos(this.size / 2)));
    const minX = Math.min(ax, bx) - margin;
    const minY = Math.min(ay, by) - margin;
    visitBox(this.boundary, minX, minY, Math.max(ax, bx) + margin, Math.max(ay, by) + margin, this.visit);
  }

  private considerHint({ next, previous }: Outline): boolean {
    const { hint } = this;
    if (hint < 0) return false;
    return this.consider(hint) || this.consider(defined(previous[hint])) || this.consider(defined(next[hint]));
  }

  /** True when the whole element is blocked. */
  private consider(obstacle: number): boolean {
    const { outline } = this.boundary;
    if (squareToEdge(outline, obstacle, this.x, this.y) >= this.square) return false;
    const own = this.element >> 1;
    if (outline.polygon[obstacle] !== outline.polygon[own] || isHarmless(outline, this.element, obstacle)) return false;
    const { blocked } = this;
    if (isEdge(this.element)) {
      if (!blockedOnEdge(outline, own, obstacle, this.radius, blocked)) return false;
      this.add(blocked.from, blocked.to);
    } else {
      if (!blockedInCone(outline, own, obstacle, this.radius, blocked)) return false;
      for (let turn = -2 * Math.PI; turn < 7; turn += 2 * Math.PI) this.add(blocked.from + turn, blocked.to + turn);
    }
    if (!this.isWhole()) return false;
    this.hint = obstacle;
    return true;
  }

  private isWhole(): boolean {
    return this.count === 1 && defined(this.from[0]) <= 0 && defined(this.to[0]) >= this.size;
  }

  private add(from: number, to: number): void {
    let [low, high] = [from <= JOINT ? 0 : from, to >= this.size - JOINT ? this.size : to];
    if (low >= high) return;
    let at = 0;
    while (at < this.count && defined(this.to[at]) < low - JOINT) at += 1;
    let end = at;
    for (; end < this.count && defined(this.from[end]) <= high + JOINT; end += 1) {
      low = Math.min(low, defined(this.from[end]));
      high = Math.max(high, defined(this.to[end]));
    }
    this.replace(at, end, low, high);
  }

  /** Puts one stretch in the place of those from `at` up to, not including, `end`. */
  private replace(at: number, end: number, low: number, high: number): void {
    if (end === at) {
      for (let move = this.count; move > at; move -= 1) {
        this.from[move] = defined(this.from[move - 1]);
        this.to[move] = defined(this.to[move - 1]);
      }
      this.count += 1;
    } else if (end > at + 1) {
      for (let move = end; move < this.count; move += 1) {
        this.from[at + 1 + move - end] = defined(this.from[move]);
        this.to[at + 1 + move - end] = defined(this.to[move]);
      }
      this.count -= end - at - 1;
    }
    this.from[at] = low;
    this.to[at] = high;
  }
}

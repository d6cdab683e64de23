/**
 * Where the boundary is thin: the stretches of each element on which the disc of a given radius that touches there from
 * within is reached into by some other part of the boundary. All ends are in closed form.
 */
import { visitBox, type Boundary } from './boundary';
import type { Outline } from './outline';
import {
  blockedInCone,
  blockedOnEdge,
  isEdge,
  isHarmless,
  placeAt,
  sizeOf,
  squareToEdge,
  type Place,
  type Stretch,
} from './tangent-disc';

/** In mm and radians: stretches with less between them are one. */
export const JOINT = 1e-7;

/** How far the centres of one run of elements may be from its first, in radii, and how many vertices it may have. */
const RUN_SPREAD = 0.75;
const RUN_LENGTH = 12;

/** In radians: half a turn, less what rounding may make of it. */
const MOST_TURN = Math.PI - 1e-6;

export interface Stretches {
  /** Element e has the stretches from first[e] up to, not including, first[e + 1]. */
  readonly first: Int32Array;
  readonly from: Float64Array;
  readonly to: Float64Array;
}

class GrowingFloats {
  values = new Float64Array(1024);
  size = 0;

  push(value: number): void {
    if (this.size === this.values.length) {
      const larger = new Float64Array(2 * this.size);
      larger.set(this.values);
      this.values = larger;
    }
    this.values[this.size] = value;
    this.size += 1;
  }
}

/** Polygons marked in `skip` get none. */
export function findStretches(boundary: Boundary, radius: number, skip: Uint8Array): Stretches {
  const { count: vertices, polygon, ring, ringStart } = boundary.outline;
  const first = new Int32Array(2 * vertices + 1);
  const [from, to] = [new GrowingFloats(), new GrowingFloats()];
  const blocking = new BlockedStretches(boundary);
  const runs = new Runs(boundary, radius);
  for (let vertex = 0, runEnd = 0; vertex < vertices; vertex += 1) {
    const skipped = skip[polygon[vertex]!] === 1;
    if (vertex >= runEnd) {
      runEnd = skipped ? ringStart[ring[vertex]! + 1]! : runs.start(vertex);
      if (!skipped && runs.isWanted && runs.isClear()) {
        first.fill(from.size, 2 * vertex, 2 * runEnd);
        vertex = runEnd - 1;
        continue;
      }
    }
    for (let element = 2 * vertex; element <= 2 * vertex + 1; element += 1) {
      first[element] = from.size;
      if (skipped || sizeOf(boundary.outline, element) === 0) continue;
      blocking.find(element, radius, runs);
      for (let at = 0; at < blocking.count; at += 1) {
        from.push(blocking.from[at]!);
        to.push(blocking.to[at]!);
      }
    }
  }
  first[2 * vertices] = from.size;
  return { first, from: from.values.subarray(0, from.size), to: to.values.subarray(0, to.size) };
}

/**
 * Stretches of boundary so short that one search for obstacles does for all their elements: the centres of their discs
 * lie close to each other.
 */
class Runs {
  /** Edges that may reach into discs of the run. */
  readonly found: number[] = [];
  count = 0;
  /** Whether the run's elements can share a search, whether they should, and whether it was made. */
  isShared = false;
  isWanted = false;
  private isSearched = false;
  /** The first vertex, and the one after the last edge. */
  private vertex = 0;
  private end = 0;
  /** mm: how far the centres are from the first at most. */
  private spread = 0;
  private readonly place: Place = { x: 0, y: 0, normalX: 0, normalY: 0 };
  private x = 0;
  private y = 0;
  private readonly visit = (edge: number): boolean => {
    const reach = this.radius + this.spread;
    if (squareToEdge(this.boundary.outline, edge, this.x, this.y) < reach * reach) {
      this.found[this.count] = edge;
      this.count += 1;
    }
    return false;
  };

  constructor(
    private readonly boundary: Boundary,
    private readonly radius: number,
  ) {}

  /** Begins a run at the vertex and gives the vertex after its last edge. */
  start(vertex: number): number {
    const { outline } = this.boundary;
    const { place, radius } = this;
    placeAt(outline, 2 * vertex, 0, place);
    this.x = place.x + radius * place.normalX;
    this.y = place.y + radius * place.normalY;
    const last = Math.min(outline.ringStart[outline.ring[vertex]! + 1]!, vertex + RUN_LENGTH);
    this.spread = 0;
    let end = vertex;
    for (; end < last; end += 1) {
      const spread = this.spreadOf(end);
      if (spread > RUN_SPREAD * radius) break;
      this.spread = Math.max(this.spread, spread);
    }
    this.isShared = end > vertex;
    this.isSearched = false;
    this.vertex = vertex;
    this.end = Math.max(end, vertex + 1);
    return this.end;
  }

  /**
   * Whether all that may reach into discs of the run is of its own ring, and turns away from the inside all along, by
   * less than half a turn in all: then it lies behind the tangent at each place, and reaches into no disc there.
   */
  isClear(): boolean {
    if (!this.isShared) return false;
    this.search();
    const { polygon, ring, ringStart } = this.boundary.outline;
    const { vertex } = this;
    const size = ringStart[ring[vertex]! + 1]! - ringStart[ring[vertex]!]!;
    let [back, ahead] = [1, this.end - vertex - 1];
    for (let at = 0; at < this.count; at += 1) {
      const edge = this.found[at]!;
      if (polygon[edge] !== polygon[vertex]) continue;
      if (ring[edge] !== ring[vertex]) return false;
      const along = (edge - vertex + size) % size;
      if (along > size / 2) back = Math.max(back, size - along);
      else ahead = Math.max(ahead, along);
    }
    return back + ahead < size && this.turnsAway(back, ahead);
  }

  /** From so many edges before the run's first vertex to so many after it. */
  private turnsAway(back: number, ahead: number): boolean {
    const { cone, next, previous } = this.boundary.outline;
    let turn = 0;
    for (let step = 0, at = this.vertex; step < back; step += 1, at = previous[at]!) {
      if (cone[at] === 0) return false;
      turn += cone[at]!;
    }
    for (let step = 0, at = next[this.vertex]!; step < ahead; step += 1, at = next[at]!) {
      if (cone[at] === 0) return false;
      turn += cone[at]!;
    }
    return turn < MOST_TURN;
  }

  /** Fills `found`, the first time in a run. */
  search(): void {
    if (this.isSearched) return;
    this.isSearched = true;
    this.count = 0;
    const reach = this.radius + this.spread;
    visitBox(this.boundary, this.x - reach, this.y - reach, this.x + reach, this.y + reach, this.visit);
  }

  /** mm: how far the centres of the vertex's cone and edge are from the run's first at most. */
  private spreadOf(vertex: number): number {
    const { outline } = this.boundary;
    const cone = outline.cone[vertex]!;
    const bulge = cone > 0 ? this.radius * (1 - Math.cos(cone / 2)) : 0;
    const turned = Math.max(this.distanceTo(2 * vertex, 0), this.distanceTo(2 * vertex + 1, 0)) + bulge;
    return Math.max(turned, this.distanceTo(2 * vertex + 1, outline.length[vertex]!));
  }

  private distanceTo(element: number, parameter: number): number {
    const { place, radius } = this;
    placeAt(this.boundary.outline, element, parameter, place);
    const [dx, dy] = [place.x + radius * place.normalX - this.x, place.y + radius * place.normalY - this.y];
    return Math.sqrt(dx * dx + dy * dy);
  }
}

/** The blocked stretches of one element at a time, in order and apart. */
export class BlockedStretches {
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
  private readonly blocked: Stretch = { from: 0, to: 0 };
  private readonly place: Place = { x: 0, y: 0, normalX: 0, normalY: 0 };
  private readonly visit = (obstacle: number): boolean => this.consider(obstacle);

  constructor(private readonly boundary: Boundary) {}

  /** `run` is the one that the element belongs to, if any. */
  find(element: number, radius: number, run?: Runs): void {
    const { outline } = this.boundary;
    this.element = element;
    this.size = sizeOf(outline, element);
    this.radius = radius;
    this.count = 0;
    const { place } = this;
    placeAt(outline, element, this.size / 2, place);
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
      if (this.consider(run.found[at]!)) return;
    }
  }

  private search(): void {
    const { place, radius, element } = this;
    placeAt(this.boundary.outline, element, 0, place);
    const [ax, ay] = [place.x + radius * place.normalX, place.y + radius * place.normalY];
    placeAt(this.boundary.outline, element, this.size, place);
    const [bx, by] = [place.x + radius * place.normalX, place.y + radius * place.normalY];
    const margin = radius + (isEdge(element) ? 0 : radius * (1 - Math.cos(this.size / 2)));
    const [minX, minY] = [Math.min(ax, bx) - margin, Math.min(ay, by) - margin];
    visitBox(this.boundary, minX, minY, Math.max(ax, bx) + margin, Math.max(ay, by) + margin, this.visit);
  }

  private considerHint({ next, previous }: Outline): boolean {
    const { hint } = this;
    if (hint < 0) return false;
    return this.consider(hint) || this.consider(previous[hint]!) || this.consider(next[hint]!);
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
    return this.count === 1 && this.from[0]! <= 0 && this.to[0]! >= this.size;
  }

  private add(from: number, to: number): void {
    let [low, high] = [from <= JOINT ? 0 : from, to >= this.size - JOINT ? this.size : to];
    if (low >= high) return;
    let at = 0;
    while (at < this.count && this.to[at]! < low - JOINT) at += 1;
    let end = at;
    for (; end < this.count && this.from[end]! <= high + JOINT; end += 1) {
      low = Math.min(low, this.from[end]!);
      high = Math.max(high, this.to[end]!);
    }
    this.replace(at, end, low, high);
  }

  /** Puts one stretch in the place of those from `at` up to, not including, `end`. */
  private replace(at: number, end: number, low: number, high: number): void {
    if (end === at) {
      for (let move = this.count; move > at; move -= 1) {
        this.from[move] = this.from[move - 1]!;
        this.to[move] = this.to[move - 1]!;
      }
      this.count += 1;
    } else if (end > at + 1) {
      for (let move = end; move < this.count; move += 1) {
        this.from[at + 1 + move - end] = this.from[move]!;
        this.to[at + 1 + move - end] = this.to[move]!;
      }
      this.count -= end - at - 1;
    }
    this.from[at] = low;
    this.to[at] = high;
  }
}

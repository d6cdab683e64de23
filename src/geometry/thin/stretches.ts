/**
 * Where the boundary is thin: the stretches of each element on which the disc of a given radius that touches there from
 * within is reached into by some other part of the boundary. All ends are in closed form.
 */
import { visitBox, type Boundary } from './boundary';
import type { Outline } from './outline';
import { blockedInCone, blockedOnEdge, isEdge, isHarmless, placeAt, sizeOf, type Place, type Stretch } from './tangent-disc';

/** In mm and radians: stretches with less between them are one. */
export const JOINT = 1e-7;

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
  const { count: vertices, polygon } = boundary.outline;
  const elements = 2 * vertices;
  const first = new Int32Array(elements + 1);
  const [from, to] = [new GrowingFloats(), new GrowingFloats()];
  const blocking = new BlockedStretches(boundary);
  for (let element = 0; element < elements; element += 1) {
    first[element] = from.size;
    if (skip[polygon[element >> 1]!] === 1 || sizeOf(boundary.outline, element) === 0) continue;
    const { count } = blocking.find(element, radius);
    for (let at = 0; at < count; at += 1) {
      from.push(blocking.from[at]!);
      to.push(blocking.to[at]!);
    }
  }
  first[elements] = from.size;
  return { first, from: from.values.subarray(0, from.size), to: to.values.subarray(0, to.size) };
}

/** The blocked stretches of one element at a time, in order and apart. */
export class BlockedStretches {
  count = 0;
  readonly from: number[] = [];
  readonly to: number[] = [];
  private element = 0;
  private size = 0;
  private radius = 0;
  /** The last edge that blocked a whole element: it, or one beside it, commonly blocks the next as well. */
  private hint = -1;
  private readonly blocked: Stretch = { from: 0, to: 0 };
  private readonly place: Place = { x: 0, y: 0, normalX: 0, normalY: 0 };
  private readonly visit = (obstacle: number): boolean => this.consider(obstacle);

  constructor(private readonly boundary: Boundary) {}

  find(element: number, radius: number): this {
    const { outline } = this.boundary;
    this.element = element;
    this.size = sizeOf(outline, element);
    this.radius = radius;
    this.count = 0;
    if (this.considerHint(outline)) return this;
    const { place } = this;
    placeAt(outline, element, 0, place);
    const [ax, ay] = [place.x + radius * place.normalX, place.y + radius * place.normalY];
    placeAt(outline, element, this.size, place);
    const [bx, by] = [place.x + radius * place.normalX, place.y + radius * place.normalY];
    const bulge = isEdge(element) ? 0 : radius * (1 - Math.cos(this.size / 2));
    const margin = radius + bulge;
    const [minX, minY] = [Math.min(ax, bx) - margin, Math.min(ay, by) - margin];
    visitBox(this.boundary, minX, minY, Math.max(ax, bx) + margin, Math.max(ay, by) + margin, this.visit);
    return this;
  }

  private considerHint({ next, previous }: Outline): boolean {
    const { hint } = this;
    if (hint < 0) return false;
    return this.consider(hint) || this.consider(previous[hint]!) || this.consider(next[hint]!);
  }

  /** True when the whole element is blocked. */
  private consider(obstacle: number): boolean {
    const { outline } = this.boundary;
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
    if (this.count !== 1 || this.from[0]! > 0 || this.to[0]! < this.size) return false;
    this.hint = obstacle;
    return true;
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

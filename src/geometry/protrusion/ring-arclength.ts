/** A ring measured along its course, so that what a chord cuts off it is known without walking along it. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Ring } from '../base/polygon-types';
import { interpolate } from '../base/vector';
import { buildSegmentIndex, type SegmentIndex } from '../spatial/segment-index';

/** A stretch of a ring, in mm from its start; it goes over the start where `end` is less than `start`. */
export interface RingInterval {
  readonly start: number;
  readonly end: number;
}

export function arcLengthRingsOf(index: SegmentIndex): ArcLengthRing[] {
  const rings: ArcLengthRing[] = [];
  for (let edge = 0; edge < index.count; edge += rings.at(-1)?.size ?? 1) rings.push(new ArcLengthRing(index, edge));
  return rings;
}

/** A single ring with the index of its edges; undefined where it has none. */
export function arcLengthRing(ring: Ring): { readonly index: SegmentIndex; readonly ring: ArcLengthRing } | undefined {
  const index = buildSegmentIndex([{ outer: ring, holes: [] }]);
  const [first] = arcLengthRingsOf(index);
  return first && { index, ring: first };
}

export class ArcLengthRing {
  readonly number: number;
  readonly polygon: number;
  readonly size: number;
  /** Before each edge and at the end: mm of course, and twice the area swept from the ring's first point. */
  private readonly along: Float64Array;
  private readonly swept: Float64Array;

  private readonly index: SegmentIndex;
  readonly first: number;

  /** @param first the number of the ring's first edge */
  constructor(index: SegmentIndex, first: number) {
    this.index = index;
    this.first = first;
    this.number = defined(index.ring[first]);
    this.polygon = defined(index.polygon[first]);
    let size = 1;
    while (first + size < index.count && index.ring[first + size] === this.number) size += 1;
    this.size = size;
    this.along = new Float64Array(size + 1);
    this.swept = new Float64Array(size + 1);
    checkpoint(4 * size);
    for (let i = 0; i < size; i += 1) {
      const [a, b] = this.endsOf(i);
      this.along[i + 1] = this.alongAt(i) + Math.hypot(b.x - a.x, b.y - a.y);
      this.swept[i + 1] = this.sweptAt(i) + this.sweep(a, b);
    }
  }

  /** mm */
  get length(): number {
    return this.alongAt(this.size);
  }

  /** mm from the ring's start. */
  placeOf(edge: number, t: number): number {
    const i = edge - this.first;
    return this.alongAt(i) + t * (this.alongAt(i + 1) - this.alongAt(i));
  }

  lengthBetween(start: number, end: number): number {
    return end >= start ? end - start : end - start + this.length;
  }

  /** mm, about: the way along the ring between two of its edges, the shorter way round. */
  gapBetween(edge: number, other: number): number {
    const { along } = this;
    const i = edge - this.first;
    const j = other - this.first;
    const gap = Math.abs(defined(along[j]) + defined(along[j + 1]) - defined(along[i]) - defined(along[i + 1])) / 2;
    return Math.min(gap, defined(along[this.size]) - gap);
  }

  pointAt(place: number): Point {
    const i = this.edgeAt(place);
    const [a, b] = this.endsOf(i);
    const size = this.alongAt(i + 1) - this.alongAt(i);
    return interpolate(a, b, size > 0 ? (place - this.alongAt(i)) / size : 0);
  }

  /**
   * Whether the boundary from `start` to `end` and the chord back enclose a part of the region rather than the rest of
   * it: of an outer ring the smaller side; of a hole the side that does not go round the hole.
   */
  cutsOff(start: number, end: number): boolean {
    return this.isPart(this.sweptBetween(start, end), this.sweptAt(this.size));
  }

  /**
   * Whether a chord from the start of an edge to a place of another one cuts off a part of the region with so many mm
   * of boundary; the same as `cutsOff` and `lengthBetween` say, but quick.
   */
  mayCutOff(edge: number, other: number, t: number, least: number): boolean {
    const { x0, y0, x1, y1 } = this.index;
    const i = edge - this.first;
    const j = other - this.first;
    const originX = defined(x0[this.first]);
    const originY = defined(y0[this.first]);
    const ax = defined(x0[edge]) - originX;
    const ay = defined(y0[edge]) - originY;
    const cx = defined(x0[other]) - originX;
    const cy = defined(y0[other]) - originY;
    const bx = cx + t * (defined(x1[other]) - defined(x0[other]));
    const by = cy + t * (defined(y1[other]) - defined(y0[other]));
    const whole = defined(this.swept[this.size]);
    const swept =
      defined(this.swept[j]) + cx * by - cy * bx + (bx * ay - by * ax) - defined(this.swept[i]) + (j < i ? whole : 0);
    const far =
      defined(this.along[j]) + t * (defined(this.along[j + 1]) - defined(this.along[j])) - defined(this.along[i]);
    const length = j < i ? far + this.length : far;
    return (
      (length >= least && this.isPart(swept, whole)) ||
      (this.length - length >= least && this.isPart(whole - swept, whole))
    );
  }

  private isPart(area: number, whole: number): boolean {
    return area > 0 && (whole < 0 || area <= whole / 2);
  }

  /** Points of the boundary from `start` to `end`: all vertices, or about `most` of them. */
  *pointsBetween(start: number, end: number, most: number): Iterable<Point> {
    const from = this.edgeAt(start);
    const steps = (this.edgeAt(end) - from + this.size) % this.size || (end < start ? this.size : 0);
    const stride = Math.max(1, Math.floor(steps / most));
    for (let step = 1; step <= steps; step += stride) yield this.endsOf((from + step) % this.size)[0];
  }

  /** Whether two stretches have nothing in common but ends. */
  areApart(a: RingInterval, b: RingInterval): boolean {
    const inside = (place: number, { start, end }: RingInterval) =>
      this.lengthBetween(start, place) < this.lengthBetween(start, end);
    return !inside(a.start, b) && !inside(b.start, a);
  }

  private sweptBetween(start: number, end: number): number {
    const upTo = (place: number) => {
      const i = this.edgeAt(place);
      return this.sweptAt(i) + this.sweep(this.endsOf(i)[0], this.pointAt(place));
    };
    const round = end < start ? this.sweptAt(this.size) : 0;
    return upTo(end) - upTo(start) + round + this.sweep(this.pointAt(end), this.pointAt(start));
  }

  private edgeAt(place: number): number {
    let [low, high] = [0, this.size - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.alongAt(middle) <= place) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  private endsOf(i: number): [Point, Point] {
    const { x0, y0, x1, y1 } = this.index;
    const edge = this.first + i;
    return [
      { x: defined(x0[edge]), y: defined(y0[edge]) },
      { x: defined(x1[edge]), y: defined(y1[edge]) },
    ];
  }

  private sweep(a: Point, b: Point): number {
    const [x, y] = [defined(this.index.x0[this.first]), defined(this.index.y0[this.first])];
    return (a.x - x) * (b.y - y) - (a.y - y) * (b.x - x);
  }

  private alongAt(i: number): number {
    return defined(this.along[i]);
  }

  private sweptAt(i: number): number {
    return defined(this.swept[i]);
  }
}

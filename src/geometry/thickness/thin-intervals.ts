/**
 * Where the boundary is thin: the stretches of each element on which the disc of a given radius that touches there from
 * within is reached into by some other part of the boundary.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { BlockedIntervals, JOINT } from './blocked-intervals';
import type { Outline } from './boundary-arrays';
import type { Boundary } from './boundary-index';
import { EdgeRun } from './edge-run';
import { sizeOf } from './tangent-disc';

export interface ThinIntervals {
  /** Element e has the stretches from first[e] up to, not including, first[e + 1]. */
  readonly first: Int32Array;
  readonly from: Float64Array;
  readonly to: Float64Array;
}

export interface ThinIntervalSearch {
  /** mm: of the discs */
  readonly radius: number;
  /** Polygons marked here get none. */
  readonly skip: Uint8Array;
  /** mm: chains that end where they begin, and go no farther beyond the disc there, need not be found. */
  readonly leastReach: number;
}

/** Of each chain, as `chains.ts` has them, all stretches or none. */
export function findThinIntervals(boundary: Boundary, search: ThinIntervalSearch): ThinIntervals {
  const finding = new ThinIntervalFinder(boundary, search);
  finding.findBesidePlainRuns();
  finding.followIntoPlainRuns();
  return finding.result();
}

/** Room for rounding: corners this little less deep than they may be are looked at. */
const ROOM = 0.99;

/**
 * The cosine of the slope whose corners go `leastReach` mm beyond a disc: two edges of the slope φ on either side of a
 * vertex touch it r / cos φ from the vertex.
 */
function steepestSlope({ radius, leastReach }: ThinIntervalSearch): number {
  return radius / (radius + ROOM * Math.max(0, leastReach));
}

class ThinIntervalFinder {
  private readonly outline: Outline;
  private readonly blocking: BlockedIntervals;
  /** 1 for elements that were looked at. */
  private readonly done: Uint8Array;
  /** Element e has `count[e]` stretches from `start[e]` on, in the order in which elements were looked at. */
  private readonly start: Int32Array;
  private readonly count: Int32Array;
  private readonly from = new GrowingFloats();
  private readonly to = new GrowingFloats();

  private readonly boundary: Boundary;
  private readonly search: ThinIntervalSearch;

  constructor(boundary: Boundary, search: ThinIntervalSearch) {
    this.boundary = boundary;
    this.search = search;

    this.outline = boundary.outline;
    this.blocking = new BlockedIntervals(boundary);
    this.done = new Uint8Array(2 * this.outline.count);
    this.start = new Int32Array(2 * this.outline.count);
    this.count = new Int32Array(2 * this.outline.count);
  }

  findBesidePlainRuns(): void {
    const { outline, search } = this;
    const run = new EdgeRun(this.boundary, search.radius, steepestSlope(search));
    for (let vertex = 0; vertex < outline.count; vertex = run.end) {
      if (search.skip[defined(outline.polygon[vertex])] === 1) {
        run.end = defined(outline.ringStart[defined(outline.ring[vertex]) + 1]);
        continue;
      }
      checkpoint(4);
      run.start(vertex);
      if (run.isWanted && run.isPlain()) continue;
      for (let element = 2 * vertex; element < 2 * run.end; element += 1) this.find(element, run);
    }
  }

  /** What joins a chain that was found. */
  followIntoPlainRuns(): void {
    for (let element = 0; element < this.done.length; element += 1) {
      if (this.count[element] === 0) continue;
      this.follow(element, 1);
      this.follow(element, -1);
    }
  }

  /** Looks at the elements before or after this one for as long as the thin boundary goes on without a gap. */
  private follow(from: number, step: 1 | -1): void {
    for (let element = from; this.reachesEnd(element, step); ) {
      checkpoint();
      element = this.neighbour(element, step);
      if (this.done[element] === 1) return;
      this.find(element);
    }
  }

  private reachesEnd(element: number, step: 1 | -1): boolean {
    const [start, count] = [defined(this.start[element]), defined(this.count[element])];
    if (count === 0) return false;
    if (step < 0) return defined(this.from.values[start]) <= JOINT;
    return defined(this.to.values[start + count - 1]) >= sizeOf(this.outline, element) - JOINT;
  }

  /** The next element of the ring, or the one before, that has a size. */
  private neighbour(element: number, step: 1 | -1): number {
    const { ring, ringStart } = this.outline;
    const [low, high] = [
      2 * defined(ringStart[defined(ring[element >> 1])]),
      2 * defined(ringStart[defined(ring[element >> 1]) + 1]),
    ];
    let next = element;
    do {
      next += step;
      if (next < low) next = high - 1;
      if (next === high) next = low;
    } while (sizeOf(this.outline, next) === 0);
    return next;
  }

  private find(element: number, run?: EdgeRun): void {
    this.done[element] = 1;
    if (sizeOf(this.outline, element) === 0) return;
    checkpoint(24);
    const { blocking } = this;
    blocking.find(element, this.search.radius, run);
    this.start[element] = this.from.size;
    this.count[element] = blocking.count;
    for (let at = 0; at < blocking.count; at += 1) {
      this.from.push(defined(blocking.from[at]));
      this.to.push(defined(blocking.to[at]));
    }
  }

  /** In the order of the elements. */
  result(): ThinIntervals {
    const first = new Int32Array(this.count.length + 1);
    const [from, to] = [new Float64Array(this.from.size), new Float64Array(this.to.size)];
    let size = 0;
    this.count.forEach((count, element) => {
      first[element] = size;
      for (let at = defined(this.start[element]); at < defined(this.start[element]) + count; at += 1, size += 1) {
        from[size] = defined(this.from.values[at]);
        to[size] = defined(this.to.values[at]);
      }
    });
    first[this.count.length] = size;
    return { first, from, to };
  }
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

/** Where each contour is entered: it is left where it was entered, so that one of its points stands for it. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';

/** The length of a way, from its two legs. */
export type Distance = (dx: number, dy: number) => number;

export class Entries {
  readonly count: number;
  private readonly distance: Distance;
  /** The points of contour c are those from first[c] up to, not including, first[c + 1]. */
  private readonly first: Int32Array;
  private readonly xs: Float64Array;
  private readonly ys: Float64Array;
  /** By contour, the point that is entered now. */
  private readonly chosen: Int32Array;

  /** @param contours for each the points at which it can be entered, of one at least */
  constructor(contours: readonly (readonly Point[])[], distance: Distance) {
    this.count = contours.length;
    this.distance = distance;
    this.first = new Int32Array(contours.length + 1);
    contours.forEach((points, i) => (this.first[i + 1] = defined(this.first[i]) + points.length));
    const all = contours.flat();
    this.xs = Float64Array.from(all, ({ x }) => x);
    this.ys = Float64Array.from(all, ({ y }) => y);
    this.chosen = this.first.slice(0, -1);
  }

  /** The number of the point that is entered, among the contour's own. */
  entryOf(contour: number): number {
    return defined(this.chosen[contour]) - defined(this.first[contour]);
  }

  x(contour: number): number {
    return defined(this.xs[defined(this.chosen[contour])]);
  }

  y(contour: number): number {
    return defined(this.ys[defined(this.chosen[contour])]);
  }

  /** Between the entries of two contours. */
  between(a: number, b: number): number {
    const [i, j] = [this.chosen[a] as number, this.chosen[b] as number];
    return this.distance(
      (this.xs[i] as number) - (this.xs[j] as number),
      (this.ys[i] as number) - (this.ys[j] as number),
    );
  }

  snapshot(): Int32Array {
    return this.chosen.slice();
  }

  restore(snapshot: Int32Array): void {
    this.chosen.set(snapshot);
  }

  /** Back to a point that was chosen before. */
  setRaw(contour: number, raw: number): void {
    this.chosen[contour] = raw;
  }

  raw(contour: number): number {
    return this.chosen[contour] as number;
  }

  /** Enters a contour where the ways from one contour and to another are shortest; the gain in length. */
  reenter(contour: number, before: number, after: number): number {
    const [start, end] = [this.first[contour] as number, this.first[contour + 1] as number];
    if (end - start === 1) return 0;
    const { xs, ys, distance } = this;
    const [b, a] = [this.chosen[before] as number, this.chosen[after] as number];
    const [bx, by, ax, ay] = [xs[b] as number, ys[b] as number, xs[a] as number, ys[a] as number];
    const length = (i: number): number => {
      const [x, y] = [xs[i] as number, ys[i] as number];
      return distance(x - bx, y - by) + distance(x - ax, y - ay);
    };
    const now = this.chosen[contour] as number;
    const old = length(now);
    let [best, shortest] = [now, old];
    for (let i = start; i < end; i += 1) {
      const each = length(i);
      if (each < shortest) [best, shortest] = [i, each];
    }
    this.chosen[contour] = best;
    return old - shortest;
  }

  /** The length of the closed tour as its contours are entered now. */
  lengthOf(order: readonly number[]): number {
    return order.reduce((sum, contour, i) => sum + this.between(contour, defined(order[(i + 1) % order.length])), 0);
  }

  /**
   * Chooses all entries anew, the best that there are for this order: the shortest way through the layers of a graph, once
   * for each point of the contour that has fewest. Its length.
   */
  chooseFor(order: readonly number[]): number {
    const sizeOf = (contour: number) => defined(this.first[contour + 1]) - defined(this.first[contour]);
    const start = order.reduce((least, contour, i) => (sizeOf(contour) < sizeOf(defined(order[least])) ? i : least), 0);
    const round = [...order.slice(start), ...order.slice(0, start)];
    const head = defined(round[0]);
    let [best, shortest]: [Int32Array | undefined, number] = [undefined, Infinity];
    for (let point = defined(this.first[head]); point < defined(this.first[head + 1]); point += 1) {
      const way = this.shortestFrom(point, round);
      if (way.length < shortest) [best, shortest] = [way.points, way.length];
    }
    round.forEach((contour, i) => (this.chosen[contour] = defined(defined(best)[i])));
    return shortest;
  }

  private shortestFrom(point: number, round: readonly number[]): { points: Int32Array; length: number } {
    const { first, xs, ys, distance } = this;
    let [low, high, costs] = [point, point + 1, Float64Array.of(0)];
    const backs: Int32Array[] = [];
    for (let i = 1; i <= round.length; i += 1) {
      const contour = defined(round[i % round.length]);
      const [nextLow, nextHigh] =
        i === round.length ? [point, point + 1] : [first[contour] as number, first[contour + 1] as number];
      const next = new Float64Array(nextHigh - nextLow).fill(Infinity);
      const back = new Int32Array(nextHigh - nextLow);
      checkpoint(high - low);
      for (let to = nextLow; to < nextHigh; to += 1) {
        const [x, y] = [xs[to] as number, ys[to] as number];
        for (let from = low; from < high; from += 1) {
          const cost = (costs[from - low] as number) + distance((xs[from] as number) - x, (ys[from] as number) - y);
          if (cost >= (next[to - nextLow] as number)) continue;
          next[to - nextLow] = cost;
          back[to - nextLow] = from;
        }
      }
      backs.push(back);
      [low, high, costs] = [nextLow, nextHigh, next];
    }
    const points = new Int32Array(round.length);
    let at = point;
    for (let i = round.length; i >= 1; i -= 1) {
      const start = i === round.length ? point : defined(first[defined(round[i])]);
      at = defined(defined(backs[i - 1])[at - start]);
      points[i - 1] = at;
    }
    return { points, length: defined(costs[0]) };
  }
}

/** A closed tour through numbered stops, changed by turning stretches round, each of which can be taken back. */
import { defined } from '../../base/defined';

/** A stretch of positions that was turned round. */
interface Turn {
  readonly from: number;
  readonly to: number;
}

export class Tour {
  readonly count: number;
  private readonly stops: Int32Array;
  private readonly positions: Int32Array;
  private readonly turns: Turn[] = [];
  /** Whether the first position never moves, so that the course has a direction. */
  private readonly anchored: boolean;

  constructor(order: readonly number[], anchored: boolean) {
    this.count = order.length;
    this.anchored = anchored;
    this.stops = Int32Array.from(order);
    this.positions = new Int32Array(order.length);
    for (const [position, stop] of order.entries()) this.positions[stop] = position;
  }

  at(position: number): number {
    return defined(this.stops[position]);
  }

  positionOf(stop: number): number {
    return defined(this.positions[stop]);
  }

  next(stop: number): number {
    const position = this.positionOf(stop) + 1;
    return this.at(position === this.count ? 0 : position);
  }

  previous(stop: number): number {
    const position = this.positionOf(stop);
    return this.at(position === 0 ? this.count - 1 : position - 1);
  }

  /** All stops, from one of them on. */
  orderFrom(stop: number): number[] {
    const start = this.positionOf(stop);
    return [...this.stops.subarray(start), ...this.stops.subarray(0, start)];
  }

  /** Puts a–c and b–d in the place of the neighbours a–b and c–d; both pairs are given in the same direction. */
  exchange(a: number, b: number, c: number, d: number): void {
    if (this.next(a) === b) this.turn(this.positionOf(b), this.positionOf(c));
    else this.turn(this.positionOf(a), this.positionOf(d));
  }

  /** A mark to which `undoTo` leads back. */
  get mark(): number {
    return this.turns.length;
  }

  undoTo(mark: number): void {
    while (this.turns.length > mark) {
      const { from, to } = this.turns.pop() as Turn;
      this.reverse(from, to);
    }
  }

  /** What was changed till now stays. */
  keep(): void {
    this.turns.length = 0;
  }

  /** The positions that have changed since the mark, at least: from the first to the last. */
  changedSince(mark: number): Turn {
    let [from, to] = [this.count, -1];
    for (const turn of this.turns.slice(mark)) {
      from = Math.min(from, turn.from);
      to = Math.max(to, turn.to);
    }
    return { from, to };
  }

  /** Turns the stretch between two positions round, or what lies outside it, which comes to the same tour. */
  private turn(from: number, to: number): void {
    const count = this.count;
    const inner = ((to - from + count) % count) + 1;
    const swap = this.anchored ? from > to || from === 0 : 2 * inner > count;
    const [first, last] = swap ? [(to + 1) % count, (from - 1 + count) % count] : [from, to];
    if (swap && inner === count) return;
    this.turns.push({ from: first, to: last });
    this.reverse(first, last);
  }

  private reverse(from: number, to: number): void {
    const { stops, positions, count } = this;
    let [i, j] = [from, to];
    for (let swaps = (((to - from + count) % count) + 1) >> 1; swaps > 0; swaps -= 1) {
      const [a, b] = [defined(stops[i]), defined(stops[j])];
      stops[i] = b;
      positions[b] = i;
      stops[j] = a;
      positions[a] = j;
      i = i + 1 === count ? 0 : i + 1;
      j = j === 0 ? count - 1 : j - 1;
    }
  }
}

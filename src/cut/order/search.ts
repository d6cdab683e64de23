/**
 * Shortens a tour: 2-opt and Or-opt on lists of neighbours with don't-look marks (J. L. Bentley, "Fast algorithms for
 * geometric traveling salesman problems", ORSA Journal on Computing 4, 1992; from memory), and kicks by double bridges
 * among near places that are taken back where they gain nothing (O. Martin, S. W. Otto, E. W. Felten, "Large-step Markov
 * chains for the traveling salesman problem", Complex Systems 5, 1991; from memory). Each contour that comes between
 * others is entered anew where that is nearest to them.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { TIE } from '../../geometry/base/tolerances';
import type { Entries } from './entries';
import type { Tour } from './tour';

export interface SearchRules {
  /** By contour, the one that must come later; −1 for none. Undefined where there is none at all. */
  readonly parents: Int32Array | undefined;
  /** Two contours that stay neighbours. */
  readonly linked: readonly [number, number] | undefined;
}

/** Places that a kick exchanges lie within so many positions. */
const KICK_REACH = 50;

/** So many contours at most are moved together. */
const LONGEST_SEGMENT = 3;

/** A stretch of the tour, read onward or backward: p a…e n, with `length` contours from a to e. */
interface Segment {
  readonly a: number;
  readonly e: number;
  readonly p: number;
  readonly n: number;
  readonly length: number;
  readonly onward: boolean;
}

/** Less than any way is long: a link that costs it is never given up. */
const UNBREAKABLE = -1e12;

export class TourSearch {
  private readonly queue: number[] = [];
  private readonly queued: Uint8Array;
  private readonly reentered: { readonly contour: number; readonly raw: number }[] = [];
  /** What has been gained since the last kick. */
  private gained = 0;

  private readonly tour: Tour;
  private readonly entries: Entries;
  private readonly rules: SearchRules;
  private readonly neighbours: readonly Int32Array[];

  constructor(tour: Tour, entries: Entries, rules: SearchRules, neighbours: readonly Int32Array[]) {
    [this.tour, this.entries, this.rules, this.neighbours] = [tour, entries, rules, neighbours];
    this.queued = new Uint8Array(tour.count);
  }

  /** Until no move gains anything. */
  improveAll(): void {
    for (let i = 0; i < this.tour.count; i += 1) this.look(this.tour.at(i));
    this.improve();
    this.tour.keep();
    this.reentered.length = 0;
  }

  /** @param random numbers from 0 up to, not including, 1 */
  kick(random: () => number): void {
    const { tour } = this;
    const reach = Math.min(tour.count - 2, KICK_REACH);
    if (reach < 3) return;
    const start = Math.floor(random() * tour.count);
    const cuts = [0, 0, 0].map(() => 1 + Math.floor(random() * reach)).sort((a, b) => a - b) as [
      number,
      number,
      number,
    ];
    if (cuts[0] === cuts[1] || cuts[1] === cuts[2]) return;
    const [a, b1, b2, c1, c2, d] = [cuts[0] - 1, cuts[0], cuts[1] - 1, cuts[1], cuts[2] - 1, cuts[2]].map((offset) =>
      tour.at((start + offset) % tour.count),
    ) as [number, number, number, number, number, number];
    this.gained = 0;
    if (!this.swapNeighbours([a, b1, b2, c1, c2, d])) return;
    this.improve();
    if (this.gained < TIE) this.undo();
    tour.keep();
    this.reentered.length = 0;
  }

  /** a b1…b2 c1…c2 d becomes a c1…c2 b1…b2 d. */
  private swapNeighbours(places: readonly [number, number, number, number, number, number]): boolean {
    const [a, b1, b2, c1, c2, d] = places;
    const { tour } = this;
    if (this.isLinked(a, b1) || this.isLinked(b2, c1) || this.isLinked(c2, d)) return false;
    const gain =
      this.way(a, b1) + this.way(b2, c1) + this.way(c2, d) - this.way(a, c1) - this.way(c2, b1) - this.way(b2, d);
    tour.exchange(a, b1, c2, d);
    if (c1 !== c2) tour.exchange(a, c2, c1, b2);
    if (b1 !== b2) tour.exchange(c2, b2, b1, d);
    if (!this.isAllowed(0)) {
      tour.undoTo(0);
      return false;
    }
    this.gained += gain;
    this.settle(places);
    return true;
  }

  private undo(): void {
    this.tour.undoTo(0);
    while (this.reentered.length > 0) {
      const { contour, raw } = this.reentered.pop() as { contour: number; raw: number };
      this.entries.setRaw(contour, raw);
    }
  }

  private improve(): void {
    for (let contour = this.queue.pop(); contour !== undefined; contour = this.queue.pop()) {
      this.queued[contour] = 0;
      checkpoint(20);
      while (this.improveAt(contour));
    }
  }

  private improveAt(contour: number): boolean {
    return (
      this.exchangeAt(contour, true) ||
      this.exchangeAt(contour, false) ||
      this.moveFrom(contour, true) ||
      this.moveFrom(contour, false)
    );
  }

  /** 2-opt: the way from a on, or to a, is exchanged for one to a neighbour. */
  private exchangeAt(a: number, onward: boolean): boolean {
    const { tour } = this;
    const s = this.beyond(a, onward);
    const now = this.way(a, s);
    for (const b of defined(this.neighbours[a])) {
      const direct = this.way(a, b);
      if (direct >= now) break;
      const t = this.beyond(b, onward);
      if (b === s || t === a) continue;
      const gain = now + this.way(b, t) - direct - this.way(s, t);
      if (gain <= TIE) continue;
      const mark = tour.mark;
      tour.exchange(a, s, b, t);
      if (this.isTaken(mark, gain, [a, s, b, t])) return true;
    }
    return false;
  }

  /** Or-opt: a stretch that begins with a, of up to three, goes between a neighbour of a and one beside that. */
  private moveFrom(a: number, onward: boolean): boolean {
    const { tour } = this;
    const p = this.beyond(a, !onward);
    let e = a;
    for (let length = 1; length <= LONGEST_SEGMENT && length < tour.count - 2; length += 1) {
      const n = this.beyond(e, onward);
      if (n === p) break;
      const freed = this.way(p, a) + this.way(e, n) - this.way(p, n);
      if (freed > TIE && this.placeSegment({ a, e, p, n, length, onward }, freed)) return true;
      e = n;
    }
    return false;
  }

  private placeSegment(segment: Segment, freed: number): boolean {
    const { a, e, p, n, onward } = segment;
    for (const b of defined(this.neighbours[a])) {
      const direct = this.way(a, b);
      if (direct >= freed) break;
      if (this.isIn(segment, b)) continue;
      for (let side = 0; side < 2; side += 1) {
        const behind = side === 0;
        const c = this.beyond(b, behind === onward);
        if (this.isIn(segment, c) || (b === p && c === n) || (b === n && c === p)) continue;
        const gain = freed + this.way(b, c) - direct - this.way(e, c);
        if (gain <= TIE) continue;
        const mark = this.tour.mark;
        this.move(segment, b, c, behind);
        if (this.isTaken(mark, gain, [p, n, a, e, b, c])) return true;
      }
    }
    return false;
  }

  private isIn({ a, length, onward }: Segment, stop: number): boolean {
    const { tour } = this;
    const ahead = (tour.positionOf(stop) - tour.positionOf(a)) * (onward ? 1 : -1);
    return (ahead < 0 ? ahead + tour.count : ahead) < length;
  }

  private beyond(stop: number, onward: boolean): number {
    return onward ? this.tour.next(stop) : this.tour.previous(stop);
  }

  /** p a…e n and b c (c behind b if `behind`) become p n and b a…e c, in whatever direction the tour is read. */
  private move({ a, e, p, n }: Segment, b: number, c: number, behind: boolean): void {
    const { tour } = this;
    if (behind) {
      // p a…e n … b c: turned as a whole it is p b … n e…a c; then b … n is turned back, and a…e.
      tour.exchange(p, a, b, c);
      tour.exchange(p, b, n, e);
      if (a !== e) tour.exchange(b, e, a, c);
    } else {
      // c b is met in the other direction: p a…e n … c b becomes p n … c e…a b.
      tour.exchange(p, a, c, b);
      tour.exchange(p, c, n, e);
    }
  }

  /** Keeps a move, unless it goes against the rules. */
  private isTaken(mark: number, gain: number, ends: readonly number[]): boolean {
    if (!this.isAllowed(mark)) {
      this.tour.undoTo(mark);
      return false;
    }
    this.gained += gain;
    this.settle(ends);
    return true;
  }

  private settle(ends: readonly number[]): void {
    for (const contour of ends) {
      const raw = this.entries.raw(contour);
      const [before, after] = [this.tour.previous(contour), this.tour.next(contour)];
      this.gained += this.entries.reenter(contour, before, after);
      if (this.entries.raw(contour) !== raw) {
        this.reentered.push({ contour, raw });
        this.look(before);
        this.look(after);
      }
      this.look(contour);
    }
  }

  private look(contour: number): void {
    if (this.queued[contour]) return;
    this.queued[contour] = 1;
    this.queue.push(contour);
  }

  /** What lies inside comes before what it lies in: looked at where something has moved since the mark. */
  private isAllowed(mark: number): boolean {
    const { tour, rules } = this;
    if (!rules.parents) return true;
    const { from, to } = tour.changedSince(mark);
    for (let position = from; position <= to; position += 1) {
      const parent = rules.parents[tour.at(position)] as number;
      if (parent >= 0 && tour.positionOf(parent) < position) return false;
    }
    return true;
  }

  private isLinked(a: number, b: number): boolean {
    const { linked } = this.rules;
    return linked !== undefined && ((linked[0] === a && linked[1] === b) || (linked[0] === b && linked[1] === a));
  }

  private way(a: number, b: number): number {
    return this.isLinked(a, b) ? UNBREAKABLE : this.entries.between(a, b);
  }
}

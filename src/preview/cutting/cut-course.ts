/** The way of the tool over a sheet, from where it lies at rest, cut after cut, and back. Sheet mm. */
import type { Point } from '../../geometry/base/curve-types';
import type { CutOrder, OrderedCut } from '../../protocol/cutting';

export interface CoursePlace {
  /** How many cuts are done. */
  readonly done: number;
  /** The part of the next one that is done: points of a line; empty on the way to it. */
  readonly begun: readonly Point[];
  readonly tool: Point;
}

interface Leg {
  readonly cut: OrderedCut;
  /** mm on the whole way, where the tool sets out for the cut, begins it, and ends it. */
  readonly out: number;
  readonly start: number;
  readonly end: number;
}

export class CutCourse {
  readonly cuts: readonly OrderedCut[];
  private readonly legs: readonly Leg[];
  private readonly home: Point;
  private known: { readonly cut: OrderedCut; readonly points: readonly Point[] } | undefined;

  constructor({ cuts, home }: Pick<CutOrder, 'cuts' | 'home'>) {
    this.cuts = cuts;
    this.home = home;
    let [at, way] = [home, 0];
    this.legs = cuts.map((cut) => {
      const out = way;
      const start = out + distance(at, cut.from);
      way = start + cut.length;
      at = cut.to;
      return { cut, out, start, end: way };
    });
  }

  /** mm of all cuts and the ways to them; the way back is not shown. */
  get length(): number {
    return this.legs.at(-1)?.end ?? 0;
  }

  /** mm on the whole way at which so many cuts are done. */
  after(done: number): number {
    return done <= 0 ? 0 : (this.legs[Math.min(done, this.legs.length) - 1]?.end ?? 0);
  }

  at(way: number): CoursePlace {
    const done = this.legs.findIndex(({ end }) => end > way + 1e-9);
    const leg = this.legs[done];
    if (!leg) return { done: this.legs.length, begun: [], tool: this.cuts.at(-1)?.to ?? this.home };
    if (way < leg.start) {
      const from = this.cuts[done - 1]?.to ?? this.home;
      return { done, begun: [], tool: between(from, leg.cut.from, (way - leg.out) / (leg.start - leg.out)) };
    }
    const begun = headOf(this.pointsOf(leg.cut), (way - leg.start) / (leg.end - leg.start));
    return { done, begun, tool: begun.at(-1) ?? leg.cut.from };
  }

  /** Path data of the ways between cuts, from the first to the last. */
  travel(): string {
    let at = this.home;
    return this.cuts
      .map(({ from, to }) => {
        const way = `M${at.x} ${at.y}L${from.x} ${from.y}`;
        at = to;
        return way;
      })
      .join('');
  }

  private pointsOf(cut: OrderedCut): readonly Point[] {
    if (this.known?.cut !== cut) this.known = { cut, points: pointsOfLine(cut.line) };
    return this.known.points;
  }
}

/** The points of path data that hold `M` and `L` alone. */
function pointsOfLine(line: string): Point[] {
  return line
    .slice(1)
    .split('L')
    .map((pair) => {
      const [x = 0, y = 0] = pair.split(' ').map(Number);
      return { x, y };
    });
}

/** A share of a line from its beginning on, by its length. */
function headOf(points: readonly Point[], share: number): Point[] {
  const lengths = points.slice(1).map((point, i) => distance(points[i] ?? point, point));
  let left = share * lengths.reduce((sum, each) => sum + each, 0);
  const head = points.slice(0, 1);
  for (const [i, length] of lengths.entries()) {
    const [from, to] = [points[i], points[i + 1]];
    if (!from || !to) break;
    if (length >= left) return [...head, between(from, to, length > 0 ? left / length : 1)];
    left -= length;
    head.push(to);
  }
  return head;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function between(a: Point, b: Point, share: number): Point {
  return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
}

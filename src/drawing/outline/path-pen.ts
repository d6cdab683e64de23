/**
 * What path commands mean (SVG 2, 9.3 "Path data"): relative to absolute, shorthands written out, arcs in centre form.
 * The drawing and the edits of paths read commands through it alike.
 */

import { defined } from '../../base/defined';
import type { Arc, Point } from '../../geometry/base/curve-types';
import type { PathLetter } from '../../markup/path-commands';
import { arcFromEndpoints } from './arc';

/** Takes the curves, in user units; each begins where the last one ended. */
export interface PathSink {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  quadraticTo(controlX: number, controlY: number, x: number, y: number): void;
  cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
  ellipticalArc(arc: Arc): void;
  close(): void;
}

/** What a command leaves behind. */
export interface PenPosition {
  readonly current: Point;
  /** Where the subpath began. */
  readonly start: Point;
  /** The last control point of a cubic or quadratic, for `S` and `T`. */
  readonly control: { readonly kind: 'cubic' | 'quadratic'; readonly point: Point } | undefined;
}

const ABSOLUTE: Readonly<Record<PathLetter, PathLetter>> = {
  M: 'M',
  L: 'L',
  H: 'H',
  V: 'V',
  C: 'C',
  S: 'S',
  Q: 'Q',
  T: 'T',
  A: 'A',
  Z: 'Z',
  m: 'M',
  l: 'L',
  h: 'H',
  v: 'V',
  c: 'C',
  s: 'S',
  q: 'Q',
  t: 'T',
  a: 'A',
  z: 'Z',
};

/** Where the path has come to, in user units. */
export class PathPen {
  private x = 0;
  private y = 0;
  private startX = 0;
  private startY = 0;
  /** The last control point, for the smooth shorthands; void after other commands. */
  private controlX = 0;
  private controlY = 0;
  private last: 'cubic' | 'quadratic' | 'other' = 'other';
  /** After a close the next drawing command begins a subpath at the same start (SVG 2, "closepath"). */
  private closed = false;
  private readonly sink: PathSink;

  constructor(sink: PathSink) {
    this.sink = sink;
  }

  get position(): PenPosition {
    const { last } = this;
    return {
      current: { x: this.x, y: this.y },
      start: { x: this.startX, y: this.startY },
      control: last === 'other' ? undefined : { kind: last, point: { x: this.controlX, y: this.controlY } },
    };
  }

  /** @param values as many as the letter takes; others behind them do not count */
  follow(letter: PathLetter, values: readonly number[]): void {
    const kind = ABSOLUTE[letter];
    const baseX = kind === letter ? 0 : this.x;
    const baseY = kind === letter ? 0 : this.y;
    if (kind === 'Z') return this.close();
    if (this.closed && kind !== 'M') this.sink.moveTo(this.x, this.y);
    this.closed = false;
    // Read one by one: taking an array apart goes through its iterator, which is slow on millions of commands.
    const v0 = defined(values[0]);
    if (kind === 'H') return this.line(baseX + v0, this.y);
    if (kind === 'V') return this.line(this.x, baseY + v0);
    const v1 = defined(values[1]);
    if (kind === 'L') return this.line(baseX + v0, baseY + v1);
    if (kind === 'M') return this.move(baseX + v0, baseY + v1);
    if (kind === 'T') return this.smoothQuadratic(baseX + v0, baseY + v1);
    if (kind === 'A') return this.arc(values, baseX, baseY);
    const v2 = defined(values[2]);
    const v3 = defined(values[3]);
    if (kind === 'Q') return this.quadratic(baseX + v0, baseY + v1, baseX + v2, baseY + v3);
    if (kind === 'S') return this.smoothCubic(baseX + v0, baseY + v1, baseX + v2, baseY + v3);
    const [x, y] = [baseX + defined(values[4]), baseY + defined(values[5])];
    return this.cubic(baseX + v0, baseY + v1, baseX + v2, baseY + v3, x, y);
  }

  private move(x: number, y: number): void {
    this.sink.moveTo(x, y);
    this.startX = x;
    this.startY = y;
    this.goTo(x, y, 'other');
  }

  private line(x: number, y: number): void {
    this.sink.lineTo(x, y);
    this.goTo(x, y, 'other');
  }

  private smoothCubic(x2: number, y2: number, x: number, y: number): void {
    const smooth = this.last === 'cubic';
    const x1 = smooth ? 2 * this.x - this.controlX : this.x;
    const y1 = smooth ? 2 * this.y - this.controlY : this.y;
    this.cubic(x1, y1, x2, y2, x, y);
  }

  private cubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.sink.cubicTo(x1, y1, x2, y2, x, y);
    this.controlX = x2;
    this.controlY = y2;
    this.goTo(x, y, 'cubic');
  }

  private smoothQuadratic(x: number, y: number): void {
    const smooth = this.last === 'quadratic';
    const x1 = smooth ? 2 * this.x - this.controlX : this.x;
    const y1 = smooth ? 2 * this.y - this.controlY : this.y;
    this.quadratic(x1, y1, x, y);
  }

  private quadratic(x1: number, y1: number, x: number, y: number): void {
    this.sink.quadraticTo(x1, y1, x, y);
    this.controlX = x1;
    this.controlY = y1;
    this.goTo(x, y, 'quadratic');
  }

  private arc(values: readonly number[], baseX: number, baseY: number): void {
    const end = { x: baseX + defined(values[5]), y: baseY + defined(values[6]) };
    const arc = arcFromEndpoints({
      start: { x: this.x, y: this.y },
      end,
      radiusX: defined(values[0]),
      radiusY: defined(values[1]),
      rotation: defined(values[2]),
      large: values[3] !== 0,
      sweep: values[4] !== 0,
    });
    if (arc?.kind === 'arc') this.sink.ellipticalArc(arc);
    else if (arc) this.sink.lineTo(end.x, end.y);
    this.goTo(end.x, end.y, 'other');
  }

  private close(): void {
    if (!this.closed) this.sink.close();
    this.goTo(this.startX, this.startY, 'other');
    this.closed = true;
  }

  private goTo(x: number, y: number, last: 'cubic' | 'quadratic' | 'other'): void {
    this.x = x;
    this.y = y;
    this.last = last;
  }
}

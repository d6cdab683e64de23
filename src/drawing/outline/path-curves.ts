/** Path commands turned into curves: relative to absolute, shorthands written out, arcs in centre form. */

import { defined } from '../../geometry/base/defined';
import type { PathError, PathLetter } from '../../markup/path-commands';
import { type CurrentCommand, readPathData } from '../../markup/path-data';
import { arcFromEndpoints } from './arc';
import type { OutlineBuilder } from './outline-builder';

/** Gives the curves of path data to the builder, in user units, up to the first error, which it returns. */
export function tracePath(data: string, builder: OutlineBuilder): PathError | undefined {
  const pen = new Pen(builder);
  return readPathData(data, (command) => pen.follow(command));
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
class Pen {
  private readonly builder: OutlineBuilder;
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

  constructor(builder: OutlineBuilder) {
    this.builder = builder;
  }

  follow(command: CurrentCommand): void {
    const { letter, values } = command;
    const kind = ABSOLUTE[letter];
    const baseX = kind === letter ? 0 : this.x;
    const baseY = kind === letter ? 0 : this.y;
    if (this.closed && kind !== 'M' && kind !== 'Z') this.builder.moveTo(this.x, this.y);
    if (kind !== 'Z') this.closed = false;
    this.builder.setPlace(command.from, command.to);
    // Read one by one: taking an array apart goes through its iterator, which is slow on millions of commands.
    const v0 = defined(values[0]);
    const v1 = defined(values[1]);
    const v2 = defined(values[2]);
    const v3 = defined(values[3]);
    switch (kind) {
      case 'M':
        return this.move(baseX + v0, baseY + v1);
      case 'L':
        return this.line(baseX + v0, baseY + v1);
      case 'H':
        return this.line(baseX + v0, this.y);
      case 'V':
        return this.line(this.x, baseY + v0);
      case 'C': {
        const [x, y] = [baseX + defined(values[4]), baseY + defined(values[5])];
        return this.cubic(baseX + v0, baseY + v1, baseX + v2, baseY + v3, x, y);
      }
      case 'S': {
        const smooth = this.last === 'cubic';
        const x1 = smooth ? 2 * this.x - this.controlX : this.x;
        const y1 = smooth ? 2 * this.y - this.controlY : this.y;
        return this.cubic(x1, y1, baseX + v0, baseY + v1, baseX + v2, baseY + v3);
      }
      case 'Q':
        return this.quadratic(baseX + v0, baseY + v1, baseX + v2, baseY + v3);
      case 'T': {
        const smooth = this.last === 'quadratic';
        const x1 = smooth ? 2 * this.x - this.controlX : this.x;
        const y1 = smooth ? 2 * this.y - this.controlY : this.y;
        return this.quadratic(x1, y1, baseX + v0, baseY + v1);
      }
      case 'A':
        return this.arc(values, baseX, baseY);
      default:
        return this.close();
    }
  }

  private move(x: number, y: number): void {
    this.builder.moveTo(x, y);
    this.startX = x;
    this.startY = y;
    this.goTo(x, y, 'other');
  }

  private line(x: number, y: number): void {
    this.builder.lineTo(x, y);
    this.goTo(x, y, 'other');
  }

  private cubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.builder.cubicTo(x1, y1, x2, y2, x, y);
    this.controlX = x2;
    this.controlY = y2;
    this.goTo(x, y, 'cubic');
  }

  private quadratic(x1: number, y1: number, x: number, y: number): void {
    this.builder.quadraticTo(x1, y1, x, y);
    this.controlX = x1;
    this.controlY = y1;
    this.goTo(x, y, 'quadratic');
  }

  private arc(values: readonly number[], baseX: number, baseY: number): void {
    const end = { x: baseX + defined(values[5]), y: baseY + defined(values[6]) };
    const start = { x: this.x, y: this.y };
    const arc = arcFromEndpoints({
      start,
      end,
      radiusX: defined(values[0]),
      radiusY: defined(values[1]),
      rotation: defined(values[2]),
      large: values[3] !== 0,
      sweep: values[4] !== 0,
    });
    if (arc?.kind === 'arc') {
      this.builder.setAxes(arc.axisU, arc.axisV);
      this.builder.setCentre(arc.centre.x, arc.centre.y);
      this.builder.arcTo(end.x, end.y, arc.from, arc.sweep);
    } else if (arc) this.builder.lineTo(end.x, end.y);
    this.goTo(end.x, end.y, 'other');
  }

  private close(): void {
    if (!this.closed) this.builder.close();
    this.goTo(this.startX, this.startY, 'other');
    this.closed = true;
  }

  private goTo(x: number, y: number, last: 'cubic' | 'quadratic' | 'other'): void {
    this.x = x;
    this.y = y;
    this.last = last;
  }
}

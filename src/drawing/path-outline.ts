/** Path commands turned into curves: relative to absolute, shorthands written out, arcs in centre form. */
import type { PathCommand } from '../markup/path-commands';
import type { Span } from '../text';
import { arcFromEndpoints } from './arc';
import type { OutlineBuilder } from './outline-builder';

/**
 * Gives the commands to the builder, in user units.
 * @param textSpan where a command, known by its span in the path data, stands in the document.
 */
export function tracePath(
  commands: readonly PathCommand[], textSpan: (span: Span) => Span, builder: OutlineBuilder,
): void {
  const pen = new Pen(builder);
  for (const command of commands) pen.follow(command, textSpan(command.span));
}

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

  follow(command: PathCommand, span: Span): void {
    const { letter, values } = command;
    const kind = letter.toUpperCase();
    const relative = kind !== letter;
    const baseX = relative ? this.x : 0;
    const baseY = relative ? this.y : 0;
    if (this.closed && kind !== 'M' && kind !== 'Z') this.builder.moveTo(this.x, this.y);
    if (kind !== 'Z') this.closed = false;
    // Read one by one: taking an array apart goes through its iterator, which is slow on millions of commands.
    const v0 = values[0] ?? 0;
    const v1 = values[1] ?? 0;
    const v2 = values[2] ?? 0;
    const v3 = values[3] ?? 0;
    switch (kind) {
      case 'M': return this.move(baseX + v0, baseY + v1);
      case 'L': return this.line(baseX + v0, baseY + v1, span);
      case 'H': return this.line(baseX + v0, this.y, span);
      case 'V': return this.line(this.x, baseY + v0, span);
      case 'C': {
        const [x, y] = [baseX + (values[4] ?? 0), baseY + (values[5] ?? 0)];
        return this.cubic(baseX + v0, baseY + v1, baseX + v2, baseY + v3, x, y, span);
      }
      case 'S': {
        const [x1, y1] = this.reflected('cubic');
        return this.cubic(x1, y1, baseX + v0, baseY + v1, baseX + v2, baseY + v3, span);
      }
      case 'Q': return this.quadratic(baseX + v0, baseY + v1, baseX + v2, baseY + v3, span);
      case 'T': {
        const [x1, y1] = this.reflected('quadratic');
        return this.quadratic(x1, y1, baseX + v0, baseY + v1, span);
      }
      case 'A': return this.arc(values, baseX, baseY, span);
      default: return this.close(span);
    }
  }

  private move(x: number, y: number): void {
    this.builder.moveTo(x, y);
    this.startX = x;
    this.startY = y;
    this.goTo(x, y, 'other');
  }

  private line(x: number, y: number, span: Span): void {
    this.builder.lineTo(x, y, span);
    this.goTo(x, y, 'other');
  }

  private cubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number, span: Span): void {
    this.builder.cubicTo(x1, y1, x2, y2, x, y, span);
    this.controlX = x2;
    this.controlY = y2;
    this.goTo(x, y, 'cubic');
  }

  private quadratic(x1: number, y1: number, x: number, y: number, span: Span): void {
    this.builder.quadraticTo(x1, y1, x, y, span);
    this.controlX = x1;
    this.controlY = y1;
    this.goTo(x, y, 'quadratic');
  }

  private arc(values: readonly number[], baseX: number, baseY: number, span: Span): void {
    const [radiusX = 0, radiusY = 0, rotation = 0, large = 0, sweep = 0, toX = 0, toY = 0] = values;
    const end = { x: baseX + toX, y: baseY + toY };
    const start = { x: this.x, y: this.y };
    const arc = arcFromEndpoints({ start, end, radiusX, radiusY, rotation, large: large !== 0, sweep: sweep !== 0 });
    if (arc) this.builder.arcTo(arc, span);
    this.goTo(end.x, end.y, 'other');
  }

  private close(span: Span): void {
    if (!this.closed) this.builder.close(span);
    this.goTo(this.startX, this.startY, 'other');
    this.closed = true;
  }

  private goTo(x: number, y: number, last: 'cubic' | 'quadratic' | 'other'): void {
    this.x = x;
    this.y = y;
    this.last = last;
  }

  private reflected(kind: 'cubic' | 'quadratic'): readonly [number, number] {
    return this.last === kind ? [2 * this.x - this.controlX, 2 * this.y - this.controlY] : [this.x, this.y];
  }
}

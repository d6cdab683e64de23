/** Collects curves given in user units as subpaths in sheet millimetres. */
import type { Arc, Curve, Line, Matrix, Point } from '../geometry/curve';
import { apply, applyToVector } from '../geometry/matrix';
import type { Span } from '../text';
import type { Subpath } from './drawing';

/** Relative commands rarely come back to the very same number; a gap below this (mm) is rounding, not a line. */
const ROUNDING_MM = 1e-9;

/**
 * Takes commands in user units and keeps their curves as `toMm` maps them.
 * Curves with coordinates that are not finite are left out, so that nothing downstream meets a NaN.
 */
export class OutlineBuilder {
  readonly subpaths: Subpath[] = [];
  private readonly toMm: Matrix;
  private curves: Curve[] = [];
  private spans: Span[] = [];
  private first: Point = { x: 0, y: 0 };
  private current: Point = this.first;

  constructor(toMm: Matrix) {
    this.toMm = toMm;
  }

  moveTo(x: number, y: number): void {
    this.finish(false);
    this.first = this.current = this.map(x, y);
  }

  lineTo(x: number, y: number, span: Span): void {
    this.push({ kind: 'line', start: this.current, end: this.map(x, y) }, span);
  }

  quadraticTo(controlX: number, controlY: number, x: number, y: number, span: Span): void {
    const control = this.map(controlX, controlY);
    this.push({ kind: 'quadratic', start: this.current, control, end: this.map(x, y) }, span);
  }

  cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number, span: Span): void {
    const control1 = this.map(x1, y1);
    const control2 = this.map(x2, y2);
    this.push({ kind: 'cubic', start: this.current, control1, control2, end: this.map(x, y) }, span);
  }

  /** An arc or line in user units that begins where the last curve ended. */
  arcTo(arc: Arc | Line, span: Span): void {
    const end = this.map(arc.end.x, arc.end.y);
    if (arc.kind === 'line') {
      this.push({ kind: 'line', start: this.current, end }, span);
      return;
    }
    this.push({
      kind: 'arc', start: this.current, end, centre: apply(this.toMm, arc.centre),
      axisU: applyToVector(this.toMm, arc.axisU), axisV: applyToVector(this.toMm, arc.axisV),
      from: arc.from, sweep: arc.sweep,
    }, span);
  }

  /** Closes the subpath. The closing line is added where it has length, or where the subpath has nothing else. */
  close(span: Span): void {
    const { current, first, curves } = this;
    const last = curves.at(-1);
    const gap = Math.hypot(first.x - current.x, first.y - current.y);
    if (!last || gap > ROUNDING_MM) this.push({ kind: 'line', start: current, end: first }, span);
    else if (gap > 0) curves[curves.length - 1] = { ...last, end: first };
    this.finish(true);
    this.current = first;
  }

  /** Ends the last subpath and gives all of them. */
  done(): readonly Subpath[] {
    this.finish(false);
    return this.subpaths;
  }

  private map(x: number, y: number): Point {
    const { a, b, c, d, e, f } = this.toMm;
    return { x: a * x + c * y + e, y: b * x + d * y + f };
  }

  private push(curve: Curve, span: Span): void {
    if (!isFiniteCurve(curve)) return;
    this.curves.push(curve);
    this.spans.push(span);
    this.current = curve.end;
  }

  private finish(closed: boolean): void {
    if (this.curves.length === 0) return;
    this.subpaths.push({ curves: this.curves, spans: this.spans, closed });
    this.curves = [];
    this.spans = [];
  }
}

function isFiniteCurve(curve: Curve): boolean {
  const { start, end } = curve;
  let sum = start.x + start.y + end.x + end.y;
  if (curve.kind === 'cubic') {
    sum += curve.control1.x + curve.control1.y + curve.control2.x + curve.control2.y;
  } else if (curve.kind === 'quadratic') {
    sum += curve.control.x + curve.control.y;
  } else if (curve.kind === 'arc') {
    const { centre, axisU, axisV, sweep } = curve;
    sum += centre.x + centre.y + axisU.x + axisU.y + axisV.x + axisV.y + sweep;
  }
  return Number.isFinite(sum);
}

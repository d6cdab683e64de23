/** Collects curves given in user units as subpaths in sheet millimetres. */
import type { Arc, Curve, Line, Matrix, Point } from '../geometry/curve';
import { apply, applyToVector } from '../geometry/matrix';
import type { Subpath } from './drawing';
import { locate, type Trace } from './located-subpath';

/** Relative commands rarely come back to the very same number; a gap below this (mm) is rounding, not a line. */
const ROUNDING_MM = 1e-9;

type Ellipse = Pick<Arc, 'centre' | 'axisU' | 'axisV'>;

/** Chains up to this long are stored without the room that an array keeps for more. */
const SHORT_CHAIN = 16;

/**
 * Takes commands in user units and keeps their curves as `toMm` maps them.
 * Curves with coordinates that are not finite are left out, so that nothing downstream meets a NaN.
 */
export class OutlineBuilder {
  private readonly finished: Trace[] = [];
  private readonly toMm: Matrix;
  private curves: Curve[] = [];
  private places: number[] = [];
  private first: Point = { x: 0, y: 0 };
  private current: Point = this.first;
  private from = 0;
  private to = 0;
  /** Of the last arc, in user units and in mm. */
  private ellipse: Ellipse | undefined;
  private ellipseMm: Ellipse | undefined;

  constructor(toMm: Matrix) {
    this.toMm = toMm;
  }

  /** States where the curves to come are written. */
  setPlace(from: number, to: number): void {
    this.from = from;
    this.to = to;
  }

  moveTo(x: number, y: number): void {
    this.finish(false);
    this.first = this.current = this.map(x, y);
  }

  lineTo(x: number, y: number): void {
    this.pushLine(this.map(x, y));
  }

  quadraticTo(controlX: number, controlY: number, x: number, y: number): void {
    const control = this.map(controlX, controlY);
    const end = this.map(x, y);
    this.push({ kind: 'quadratic', start: this.current, control, end }, control.x + control.y + end.x + end.y);
  }

  cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    const control1 = this.map(x1, y1);
    const control2 = this.map(x2, y2);
    const end = this.map(x, y);
    const sum = control1.x + control1.y + control2.x + control2.y + end.x + end.y;
    this.push({ kind: 'cubic', start: this.current, control1, control2, end }, sum);
  }

  /** An arc or line in user units that begins where the last curve ended. */
  arcTo(arc: Arc | Line): void {
    const end = this.map(arc.end.x, arc.end.y);
    if (arc.kind === 'line') return this.pushLine(end);
    const { from, sweep } = arc;
    const { centre, axisU, axisV } = this.mapEllipse(arc);
    const sum = end.x + end.y + centre.x + centre.y + axisU.x + axisU.y + axisV.x + axisV.y + sweep;
    this.push({ kind: 'arc', start: this.current, end, centre, axisU, axisV, from, sweep }, sum);
  }

  /** Closes the subpath. The closing line is added where it has length, or where the subpath has nothing else. */
  close(): void {
    const { current, first, curves } = this;
    const last = curves.at(-1);
    const gap = Math.hypot(first.x - current.x, first.y - current.y);
    if (!last || gap > ROUNDING_MM) this.pushLine(first);
    else if (gap > 0) curves[curves.length - 1] = { ...last, end: first };
    this.finish(true);
    this.current = first;
  }

  /** Ends the last subpath and gives all of them, with the places as they were stated. */
  traces(): readonly Trace[] {
    this.finish(false);
    return this.finished;
  }

  /** As `traces`, for places that are offsets in the document. */
  done(): readonly Subpath[] {
    return locate(this.traces(), (offset) => offset);
  }

  private map(x: number, y: number): Point {
    const { a, b, c, d, e, f } = this.toMm;
    return { x: a * x + c * y + e, y: b * x + d * y + f };
  }

  /** Arcs of one ellipse, given with the same points, share theirs in mm, too: drawings may hold many circles. */
  private mapEllipse({ centre, axisU, axisV }: Ellipse): Ellipse {
    const { ellipse, ellipseMm } = this;
    if (ellipse?.centre === centre && ellipse.axisU === axisU && ellipse.axisV === axisV && ellipseMm) return ellipseMm;
    this.ellipse = { centre, axisU, axisV };
    this.ellipseMm = {
      centre: apply(this.toMm, centre), axisU: applyToVector(this.toMm, axisU), axisV: applyToVector(this.toMm, axisV),
    };
    return this.ellipseMm;
  }

  private pushLine(end: Point): void {
    this.push({ kind: 'line', start: this.current, end }, end.x + end.y);
  }

  /** `sum`: of all the curve's numbers but its start's, which is not finite where one of them is not. */
  private push(curve: Curve, sum: number): void {
    if (!Number.isFinite(sum + this.current.x + this.current.y)) return;
    this.curves.push(curve);
    this.places.push(this.from, this.to);
    this.current = curve.end;
  }

  private finish(closed: boolean): void {
    if (this.curves.length === 0) return;
    const curves = this.curves.length <= SHORT_CHAIN ? this.curves.slice() : this.curves;
    this.finished.push({ curves, places: inShort(this.places), closed });
    this.curves = [];
    this.places = [];
  }
}

/** Of a basic shape, all curves come from one place. */
function inShort(places: number[]): readonly number[] {
  if (places.length > 2 * SHORT_CHAIN) return places;
  return places.every((place, index) => place === places[index % 2]) ? places.slice(0, 2) : places.slice();
}

/** Collects curves given in user units as subpaths in sheet millimetres. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Arc, Curve, Matrix, Point } from '../../geometry/base/curve-types';
import { applyToVector } from '../../geometry/base/matrix';
import { isSameButForRounding, samePoint } from '../../geometry/base/vector';
import type { Subpath } from '../subpath';
import { IN_DOCUMENT, locate, type Trace } from './located-subpath';

const ORIGIN: Point = { x: 0, y: 0 };

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
  /** Begin and end of the place of each curve; those of the first alone while all come from there. */
  private places: number[] = [];
  private first = ORIGIN;
  private current = ORIGIN;
  private from = 0;
  private to = 0;
  /** Of the arcs to come, in mm. */
  private centre = ORIGIN;
  private axisU = ORIGIN;
  private axisV = ORIGIN;

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

  /** States the half axes of the ellipse that the arcs to come lie on: centre + axisU · cos t + axisV · sin t. */
  setAxes(axisU: Point, axisV: Point): void {
    this.axisU = applyToVector(this.toMm, axisU);
    this.axisV = applyToVector(this.toMm, axisV);
  }

  setCentre(x: number, y: number): void {
    this.centre = this.map(x, y);
  }

  /** An arc of the ellipse that was stated, from where the last curve ended, which is at the angle `from` (radians). */
  arcTo(x: number, y: number, from: number, sweep: number): void {
    const { centre, axisU, axisV } = this;
    const end = this.map(x, y);
    const sum = end.x + end.y + centre.x + centre.y + axisU.x + axisU.y + axisV.x + axisV.y + sweep;
    this.push({ kind: 'arc', start: this.current, end, centre, axisU, axisV, from, sweep }, sum);
  }

  /** One arc of an ellipse of its own, in user units. */
  ellipticalArc({ end, centre, axisU, axisV, from, sweep }: Arc): void {
    this.setAxes(axisU, axisV);
    this.setCentre(centre.x, centre.y);
    this.arcTo(end.x, end.y, from, sweep);
  }

  /** Closes the subpath. The closing line is added where it has length, or where the subpath has nothing else. */
  close(): void {
    const { current, first, curves } = this;
    const last = curves.at(-1);
    if (!last || !isSameButForRounding(current, first)) this.pushLine(first);
    else if (!samePoint(current, first)) curves[curves.length - 1] = { ...last, end: first };
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
    return locate(this.traces(), IN_DOCUMENT);
  }

  private map(x: number, y: number): Point {
    const { a, b, c, d, e, f } = this.toMm;
    return { x: a * x + c * y + e, y: b * x + d * y + f };
  }

  private pushLine(end: Point): void {
    this.push({ kind: 'line', start: this.current, end }, end.x + end.y);
  }

  /** `sum`: of all the curve's numbers but its start's, which is not finite where one of them is not. */
  private push(curve: Curve, sum: number): void {
    checkpoint(10);
    if (!Number.isFinite(sum + this.current.x + this.current.y)) return;
    this.notePlace();
    this.curves.push(curve);
    this.current = curve.end;
  }

  private notePlace(): void {
    const { places, curves, from, to } = this;
    const isAlone = places.length === 2;
    if (isAlone && places[0] === from && places[1] === to) return;
    if (isAlone)
      for (let index = 1; index < curves.length; index += 1) places.push(defined(places[0]), defined(places[1]));
    places.push(from, to);
  }

  private finish(closed: boolean): void {
    if (this.curves.length === 0) return;
    const isShort = this.curves.length <= SHORT_CHAIN;
    const curves = isShort ? this.curves.slice() : this.curves;
    const places = isShort ? this.places.slice() : this.places;
    this.finished.push({ curves, places, closed });
    this.curves = [];
    this.places = [];
  }
}

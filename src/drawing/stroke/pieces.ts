/** A line to be stroked, cut into pieces whose sides are simple curves in the pen's space. */
import { checkpoint } from '../../base/checkpoint';
import type { Arc, Curve, Point } from '../../geometry/base/curve-types';
import { IDENTITY } from '../../geometry/base/matrix';
import { cross, distance, dot, vectorLength } from '../../geometry/base/vector';
import { pointAt, tangentAt, transformCurve } from '../../geometry/curve/index';
import type { Span } from '../../text/text';
import type { Subpath } from '../types';
import type { Dot, PenLine } from './dashes';
import { type SelfOverlap, selfOverlapOf } from './folds';
import { type Bent, offsetSides, type Sample, type Sides, sampleCurve } from './offset-sides';
import type { Pen } from './pen';

/** Directions are unit vectors. */
export interface StrokePiece {
  readonly start: Point;
  readonly end: Point;
  readonly startDirection: Point;
  readonly endDirection: Point;
  readonly span: Span;
  /** Whether it goes on from the piece before it within one curve: such pieces need no join. */
  readonly smooth: boolean;
  /** Set for circular arcs. */
  readonly arc: CircularArc | undefined;
  /** Set for stretches of other curves; pieces with none of the three are chords. */
  readonly sides: Sides | undefined;
  /** Set for stretches that bend more tightly than the pen. */
  readonly fold: SelfOverlap | undefined;
}

export interface CircularArc {
  readonly centre: Point;
  readonly radius: number;
  /** Angle of the start about the centre, radians. */
  readonly from: number;
  readonly sweep: number;
}

/** Pieces that follow one another. Without pieces it is a single spot, which only caps can show. */
export interface StrokeContour {
  readonly pieces: readonly StrokePiece[];
  /** Whether the last piece joins the first. */
  readonly closed: boolean;
  readonly spot: Dot | undefined;
}

/** Chords that one curve is cut into at most. */
const MAX_CHORDS = 4096;
/**
 * Halvings of a curve in search of stretches that are one thing: two sides, a fold, or a chord. A hook at the end of a
 * long curve, as a slip of the hand leaves it, is some ten-thousandth of it.
 */
const MAX_HALVINGS = 24;

/** A subpath in the space where the pen is round. */
export function toPenUnits({ curves, spans, closed }: Subpath, { fromMm }: Pen): PenLine {
  return { curves: fromMm === IDENTITY ? curves : curves.map((curve) => transformCurve(curve, fromMm)), spans, closed };
}

export function piecesOfLine({ curves, spans, closed, spot }: PenLine, pen: Pen): StrokeContour {
  const pieces: StrokePiece[] = [];
  if (spot) return { pieces, closed: false, spot };
  for (let index = 0; index < curves.length; index += 1) {
    checkpoint(20);
    const [curve, span] = [curves[index], spans[index]];
    if (curve && span) addPieces(curve, span, pen, pieces);
  }
  if (pieces.length > 0) return { pieces, closed, spot: undefined };
  const [first, span] = [curves[0], spans[0]];
  if (!first || !span) return { pieces, closed: false, spot: undefined };
  return { pieces, closed: false, spot: { at: first.start, direction: { x: 1, y: 0 }, span } };
}

function addPieces(curve: Curve, span: Span, pen: Pen, pieces: StrokePiece[]): void {
  if (curve.kind === 'line') {
    const size = distance(curve.start, curve.end);
    if (size > 0) pieces.push(chord(curve.start, curve.end, undefined, undefined, span, false));
    return;
  }
  const circular = curve.kind === 'arc' ? circularArc(curve) : undefined;
  if (circular) {
    pieces.push(arcPiece(curve, circular, span));
    return;
  }
  const cutter = new Cutter(curve, span, pen, pieces);
  cutter.addInterval(0, 1, sampleCurve(curve, 0), sampleCurve(curve, 1), 0);
}

function arcPiece(curve: Curve, arc: CircularArc, span: Span): StrokePiece {
  return {
    start: curve.start,
    end: curve.end,
    startDirection: tangentAt(curve, 0),
    endDirection: tangentAt(curve, 1),
    span,
    smooth: false,
    arc,
    sides: undefined,
    fold: undefined,
  };
}

function chord(
  start: Point,
  end: Point,
  startDirection: Point | undefined,
  endDirection: Point | undefined,
  span: Span,
  smooth: boolean,
): StrokePiece {
  const size = distance(start, end);
  const direction = { x: (end.x - start.x) / size, y: (end.y - start.y) / size };
  return {
    start,
    end,
    startDirection: startDirection ?? direction,
    endDirection: endDirection ?? direction,
    span,
    smooth,
    arc: undefined,
    sides: undefined,
    fold: undefined,
  };
}

/** Cuts one curve into stretches with sides, and into chords where it bends more tightly than the pen. */
class Cutter {
  private readonly curve: Bent;
  private readonly span: Span;
  private readonly pen: Pen;
  private readonly pieces: StrokePiece[];
  /** The most that the direction may turn from one end of a chord to the other, radians. */
  private readonly turn: number;
  /** Into how many chords of equal parameter steps the curve could be cut. */
  private readonly chords: number;
  private started = false;

  constructor(curve: Bent, span: Span, pen: Pen, pieces: StrokePiece[]) {
    this.curve = curve;
    this.span = span;
    this.pen = pen;
    this.pieces = pieces;
    this.chords = chordCount(curve, pen.tolerance);
    this.turn = 2 * Math.acos(Math.max(0, 1 - pen.tolerance / (2 * pen.half + pen.tolerance)));
  }

  addInterval(from: number, to: number, first: Sample, last: Sample, depth: number): void {
    checkpoint(50);
    const { curve, pen } = this;
    const sides = offsetSides(curve, from, to, first, last, pen.half, pen.tolerance);
    const fold = sides ? undefined : selfOverlapOf(curve, from, to, first, last, pen.half, pen.tolerance);
    if (sides || fold) {
      this.pieces.push({
        start: pointAt(curve, from),
        end: pointAt(curve, to),
        startDirection: directionOf(first),
        endDirection: directionOf(last),
        span: this.span,
        smooth: this.started,
        arc: undefined,
        sides,
        fold,
      });
      this.started = true;
    } else if (depth >= MAX_HALVINGS || this.isStraight(from, to)) {
      this.addChord(from, to);
    } else {
      const middle = (from + to) / 2;
      const between = sampleCurve(curve, middle);
      this.addInterval(from, middle, first, between, depth + 1);
      this.addInterval(middle, to, between, last, depth + 1);
    }
  }

  /** Whether the stretch is as good as its chord, in place and in direction. */
  private isStraight(from: number, to: number): boolean {
    if (this.chords * (to - from) > 1) return false;
    return angleBetween(tangentAt(this.curve, from), tangentAt(this.curve, to)) <= this.turn;
  }

  private addChord(from: number, to: number): void {
    const [startDirection, endDirection] = [tangentAt(this.curve, from), tangentAt(this.curve, to)];
    const [start, end] = [pointAt(this.curve, from), pointAt(this.curve, to)];
    if (start.x === end.x && start.y === end.y) return;
    this.pieces.push(chord(start, end, startDirection, endDirection, this.span, this.started));
    this.started = true;
  }
}

function directionOf({ dx, dy }: Sample): Point {
  const speed = Math.sqrt(dx * dx + dy * dy);
  return { x: dx / speed, y: dy / speed };
}

function angleBetween(a: Point, b: Point): number {
  return Math.abs(Math.atan2(cross(a, b), dot(a, b)));
}

/** Wang's bound for Bézier curves; for ellipses the step at which the longer axis' circle stays within tolerance. */
function chordCount(curve: Bent, tolerance: number): number {
  let count: number;
  if (curve.kind === 'arc') {
    const radius = vectorLength(curve.axisU) + vectorLength(curve.axisV);
    count = Math.abs(curve.sweep) / (2 * Math.acos(Math.max(0, 1 - tolerance / radius)));
  } else if (curve.kind === 'quadratic') {
    count = Math.sqrt((2 * turningAngle(curve.start, curve.control, curve.end)) / (8 * tolerance));
  } else {
    const { start, control1, control2, end } = curve;
    const most = Math.max(turningAngle(start, control1, control2), turningAngle(control1, control2, end));
    count = Math.sqrt((6 * most) / (8 * tolerance));
  }
  return Number.isFinite(count) ? Math.min(MAX_CHORDS, Math.max(1, Math.ceil(count))) : 1;
}

function turningAngle(a: Point, b: Point, c: Point): number {
  return Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y);
}

function circularArc(arc: Arc): CircularArc | undefined {
  const { axisU, axisV, centre, sweep } = arc;
  const radius = vectorLength(axisU);
  const size = 1e-9 * radius;
  if (!(radius > 0) || Math.abs(vectorLength(axisV) - radius) > size) return undefined;
  if (Math.abs(dot(axisU, axisV)) > size * radius) return undefined;
  const mirrored = cross(axisU, axisV) < 0;
  const from = Math.atan2(arc.start.y - centre.y, arc.start.x - centre.x);
  return { centre, radius, from, sweep: mirrored ? -sweep : sweep };
}

/** A line to be stroked, cut into pieces that are straight or circular in the pen's space. */
import type { Arc, Curve, Point } from '../../geometry/curve';
import { pointAt, tangentAt, transformCurve } from '../../geometry/curves';
import { IDENTITY } from '../../geometry/matrix';
import { cross, distance, dot, length } from '../../geometry/point';
import type { Span } from '../../text';
import type { Subpath } from '../drawing';
import type { Pen } from './pen';

/** Directions are unit vectors, lengths pen units. */
export interface Piece {
  readonly start: Point;
  readonly end: Point;
  readonly startDirection: Point;
  readonly endDirection: Point;
  readonly length: number;
  readonly span: Span;
  /** Whether it goes on from the piece before it within one curve: such pieces need no join. */
  readonly smooth: boolean;
  /** Set for circular arcs; other pieces are chords of their curve. */
  readonly arc: CircularArc | undefined;
}

export interface CircularArc {
  readonly centre: Point;
  readonly radius: number;
  /** Angle of the start about the centre, radians. */
  readonly from: number;
  readonly sweep: number;
}

/** Pieces that follow one another. Without pieces it is a single spot, which only caps can show. */
export interface Chain {
  readonly pieces: readonly Piece[];
  /** Whether the last piece joins the first. */
  readonly closed: boolean;
  readonly spot: { readonly at: Point; readonly direction: Point; readonly span: Span } | undefined;
}

/** Chords that one curve is cut into at most. */
const MOST_CHORDS = 4096;
const MOST_HALVINGS = 8;

export function piecesOfSubpath(subpath: Subpath, pen: Pen): Chain {
  const pieces: Piece[] = [];
  for (let index = 0; index < subpath.curves.length; index++) {
    const [curve, span] = [subpath.curves[index], subpath.spans[index]];
    if (!curve || !span) continue;
    const inPenUnits = pen.fromMm === IDENTITY ? curve : transformCurve(curve, pen.fromMm);
    addPieces(inPenUnits, span, pen, pieces);
  }
  if (pieces.length > 0) return { pieces, closed: subpath.closed, spot: undefined };
  const [first, span] = [subpath.curves[0], subpath.spans[0]];
  if (!first || !span) return { pieces, closed: false, spot: undefined };
  const at = pen.fromMm === IDENTITY ? first.start : transformCurve(first, pen.fromMm).start;
  return { pieces, closed: false, spot: { at, direction: { x: 1, y: 0 }, span } };
}

function addPieces(curve: Curve, span: Span, pen: Pen, pieces: Piece[]): void {
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
  const chords = chordsFor(curve, pen.tolerance);
  const turn = 2 * Math.acos(Math.max(0, 1 - pen.tolerance / (2 * pen.half + pen.tolerance)));
  const cutter = new Cutter(curve, span, turn, pieces);
  for (let index = 0; index < chords; index++) cutter.cut(index / chords, (index + 1) / chords, 0);
}

function arcPiece(curve: Curve, arc: CircularArc, span: Span): Piece {
  return {
    start: curve.start, end: curve.end, startDirection: tangentAt(curve, 0), endDirection: tangentAt(curve, 1),
    length: arc.radius * Math.abs(arc.sweep), span, smooth: false, arc,
  };
}

function chord(
  start: Point, end: Point, startDirection: Point | undefined, endDirection: Point | undefined, span: Span,
  smooth: boolean,
): Piece {
  const size = distance(start, end);
  const direction = { x: (end.x - start.x) / size, y: (end.y - start.y) / size };
  return {
    start, end, startDirection: startDirection ?? direction, endDirection: endDirection ?? direction, length: size,
    span, smooth, arc: undefined,
  };
}

/** Cuts a curve at equal steps, and finer wherever its direction turns faster than `turn` radians a step. */
class Cutter {
  private readonly curve: Curve;
  private readonly span: Span;
  private readonly turn: number;
  private readonly pieces: Piece[];
  private started = false;

  constructor(curve: Curve, span: Span, turn: number, pieces: Piece[]) {
    this.curve = curve;
    this.span = span;
    this.turn = turn;
    this.pieces = pieces;
  }

  cut(from: number, to: number, depth: number): void {
    const [startDirection, endDirection] = [tangentAt(this.curve, from), tangentAt(this.curve, to)];
    if (depth < MOST_HALVINGS && angleBetween(startDirection, endDirection) > this.turn) {
      const middle = (from + to) / 2;
      this.cut(from, middle, depth + 1);
      this.cut(middle, to, depth + 1);
      return;
    }
    const [start, end] = [pointAt(this.curve, from), pointAt(this.curve, to)];
    if (start.x === end.x && start.y === end.y) return;
    this.pieces.push(chord(start, end, startDirection, endDirection, this.span, this.started));
    this.started = true;
  }
}

function angleBetween(a: Point, b: Point): number {
  return Math.abs(Math.atan2(cross(a, b), dot(a, b)));
}

/** Wang's bound for Bézier curves; for ellipses the step at which the longer axis' circle stays within tolerance. */
function chordsFor(curve: Exclude<Curve, { kind: 'line' }>, tolerance: number): number {
  let count: number;
  if (curve.kind === 'arc') {
    const radius = length(curve.axisU) + length(curve.axisV);
    count = Math.abs(curve.sweep) / (2 * Math.acos(Math.max(0, 1 - tolerance / radius)));
  } else if (curve.kind === 'quadratic') {
    count = Math.sqrt((2 * bend(curve.start, curve.control, curve.end)) / (8 * tolerance));
  } else {
    const { start, control1, control2, end } = curve;
    const most = Math.max(bend(start, control1, control2), bend(control1, control2, end));
    count = Math.sqrt((6 * most) / (8 * tolerance));
  }
  return Number.isFinite(count) ? Math.min(MOST_CHORDS, Math.max(1, Math.ceil(count))) : 1;
}

function bend(a: Point, b: Point, c: Point): number {
  return Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y);
}

function circularArc(arc: Arc): CircularArc | undefined {
  const { axisU, axisV, centre, sweep } = arc;
  const radius = length(axisU);
  const size = 1e-9 * radius;
  if (!(radius > 0) || Math.abs(length(axisV) - radius) > size) return undefined;
  if (Math.abs(dot(axisU, axisV)) > size * radius) return undefined;
  const mirrored = cross(axisU, axisV) < 0;
  const from = Math.atan2(arc.start.y - centre.y, arc.start.x - centre.x);
  return { centre, radius, from, sweep: mirrored ? -sweep : sweep };
}

/** The part of a piece between two fractions of its length. */
export function partOfPiece(piece: Piece, from: number, to: number): Piece {
  if (from <= 0 && to >= 1) return piece;
  const [start, startDirection] = placeOn(piece, from);
  const [end, endDirection] = placeOn(piece, to);
  const arc = piece.arc && {
    ...piece.arc, from: piece.arc.from + from * piece.arc.sweep, sweep: (to - from) * piece.arc.sweep,
  };
  const smooth = piece.smooth && from <= 0;
  return { ...piece, start, end, startDirection, endDirection, length: (to - from) * piece.length, smooth, arc };
}

/** Point and direction at a fraction of the piece's length. */
export function placeOn(piece: Piece, fraction: number): readonly [Point, Point] {
  if (fraction <= 0) return [piece.start, piece.startDirection];
  if (fraction >= 1) return [piece.end, piece.endDirection];
  if (piece.arc) {
    const { centre, radius, from, sweep } = piece.arc;
    const angle = from + fraction * sweep;
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    const forward = Math.sign(sweep);
    return [
      { x: centre.x + radius * cosine, y: centre.y + radius * sine },
      { x: -forward * sine, y: forward * cosine },
    ];
  }
  const mix = (a: number, b: number): number => a + fraction * (b - a);
  const { start, end, startDirection, endDirection } = piece;
  const direction = { x: mix(startDirection.x, endDirection.x), y: mix(startDirection.y, endDirection.y) };
  const size = length(direction);
  const unit = size > 0 ? { x: direction.x / size, y: direction.y / size } : startDirection;
  return [{ x: mix(start.x, end.x), y: mix(start.y, end.y) }, unit];
}

/**
 * The area of a stroked chain as closed figures that all turn the same way, so that under nonzero they add up to it:
 * strips along the pieces, wedges at joins, caps at ends. Where a bend is tighter than the pen, strips are not used.
 */
import type { Curve, Line, Point } from '../../geometry/curve';
import { cross, dot } from '../../geometry/point';
import type { Span } from '../../text';
import { FigureSink } from './figures';
import type { Pen } from './pen';
import type { Chain, CircularArc, Piece } from './pieces';

/** Directions closer than this (the sine of the angle between them) need no join. */
const STRAIGHT = 1e-9;

export function outlineChain(chain: Chain, pen: Pen, sink: FigureSink): void {
  const { pieces, spot } = chain;
  if (spot) return outlineSpot(spot.at, spot.direction, spot.span, pen, sink);
  const strip = new Strip(pen, sink);
  for (let index = 0; index < pieces.length; index++) {
    const piece = pieces[index];
    if (!piece) continue;
    const before = pieces[index - 1] ?? (chain.closed ? pieces.at(-1) : undefined);
    if (before && !(piece.smooth && index > 0)) outlineJoin(before, piece, pen, sink);
    strip.add(piece);
  }
  strip.finish();
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (chain.closed || !first || !last) return;
  outlineCap(first.start, reversed(first.startDirection), first.span, pen, sink);
  outlineCap(last.end, last.endDirection, last.span, pen, sink);
}

function outlineSpot(at: Point, direction: Point, span: Span, pen: Pen, sink: FigureSink): void {
  if (pen.cap === 'round') sink.disc(at, pen.half, span);
  if (pen.cap === 'square') {
    outlineCap(at, direction, span, pen, sink);
    outlineCap(at, reversed(direction), span, pen, sink);
  }
}

/** The cap that reaches from `at` in `direction`. */
function outlineCap(at: Point, direction: Point, span: Span, pen: Pen, sink: FigureSink): void {
  if (pen.cap === 'butt') return;
  const { half } = pen;
  const left = beside(at, direction, -half);
  const right = beside(at, direction, half);
  if (pen.cap === 'round') {
    sink.wedge(at, left, right, half, Math.PI, span);
    return;
  }
  const ahead = (point: Point): Point => ({ x: point.x + half * direction.x, y: point.y + half * direction.y });
  sink.polygon([left, ahead(left), ahead(right), right], span);
}

/** The point beside `at` at a distance to the right (y down) of the direction of travel. */
function beside(at: Point, direction: Point, distance: number): Point {
  return { x: at.x - distance * direction.y, y: at.y + distance * direction.x };
}

function reversed(direction: Point): Point {
  return { x: -direction.x, y: -direction.y };
}

function outlineJoin(before: Piece, after: Piece, pen: Pen, sink: FigureSink): void {
  const [arriving, leaving] = [before.endDirection, after.startDirection];
  const turn = cross(arriving, leaving);
  const along = dot(arriving, leaving);
  if (Math.abs(turn) < STRAIGHT && along > 0) return;
  const at = after.start;
  // The outer side of the bend is on the left when the line turns right.
  const side = turn >= 0 ? -pen.half : pen.half;
  const [from, to] = [beside(at, arriving, side), beside(at, leaving, side)];
  if (pen.join === 'round') {
    const angle = Math.atan2(turn, along);
    sink.wedge(at, from, to, pen.half, turn >= 0 ? Math.abs(angle) : -Math.abs(angle), after.span);
    return;
  }
  // 1/sin(θ/2) for the angle θ between the pieces is 1/cos of half the turn (SVG 2, "stroke-miterlimit").
  const halfCosine = Math.sqrt(Math.max(0, (1 + along) / 2));
  const corners = [at, from];
  if (pen.join === 'miter' && halfCosine * pen.miterLimit >= 1) {
    const reach = 1 / (1 + along);
    corners.push({ x: at.x + (from.x + to.x - 2 * at.x) * reach, y: at.y + (from.y + to.y - 2 * at.y) * reach });
  }
  corners.push(to);
  sink.polygon(turn >= 0 ? corners : corners.reverse(), after.span);
}

/** Collects pieces whose strips of paint share their edges into one figure after another. */
class Strip {
  private readonly pen: Pen;
  private readonly sink: FigureSink;
  private left: Curve[] = [];
  private right: Curve[] = [];
  private span: Span | undefined;
  /** Where the last tight chord ended, until it is known how the pen turns there. */
  private pending: { readonly piece: Piece; readonly direction: Point } | undefined;

  constructor(pen: Pen, sink: FigureSink) {
    this.pen = pen;
    this.sink = sink;
  }

  add(piece: Piece): void {
    if (!piece.smooth) this.finish();
    else if (piece.sides) this.turnToEnd();
    if (piece.arc) outlineArc(piece, piece.arc, this.pen.half, this.sink);
    else if (piece.sides) this.extend(piece.sides.left, piece.sides.right, piece.span);
    else this.addChord(piece);
  }

  finish(): void {
    this.turnToEnd();
    this.finishFigure();
  }

  private finishFigure(): void {
    if (this.span && this.left.length > 0) this.sink.strip(this.left, this.right, this.span);
    this.left = [];
    this.right = [];
  }

  private addChord(piece: Piece): void {
    const { half } = this.pen;
    const { start, end, startDirection, endDirection } = piece;
    const left: Line = { kind: 'line', start: beside(start, startDirection, -half), end: beside(end, endDirection, -half) };
    const right: Line = { kind: 'line', start: beside(start, startDirection, half), end: beside(end, endDirection, half) };
    if (isConvex(left.start, left.end, right.end, right.start)) {
      this.turnToEnd();
      this.extend(left, right, piece.span);
    } else {
      this.finishFigure();
      this.addTightChord(piece);
    }
  }

  /** On a bend tighter than the pen: a plain strip along the chord, and the pen turned where chords meet. */
  private addTightChord(piece: Piece): void {
    const { half } = this.pen;
    const { start, end, span, length } = piece;
    const direction = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
    outlineTurn(start, this.pending?.direction ?? piece.startDirection, direction, half, span, this.sink);
    const sides = [beside(start, direction, -half), beside(end, direction, -half)];
    this.sink.polygon([...sides, beside(end, direction, half), beside(start, direction, half)], span);
    this.pending = { piece, direction };
  }

  private turnToEnd(): void {
    if (!this.pending) return;
    const { piece, direction } = this.pending;
    outlineTurn(piece.end, direction, piece.endDirection, this.pen.half, piece.span, this.sink);
    this.pending = undefined;
  }

  private extend(left: Curve, right: Curve, span: Span): void {
    this.left.push(left);
    this.right.push(right);
    this.span = span;
  }
}

/** Whether the corners turn right (y down) all the way round: the figure is then simple and positive. */
function isConvex(a: Point, b: Point, c: Point, d: Point): boolean {
  return turns(a, b, c) && turns(b, c, d) && turns(c, d, a) && turns(d, a, b);
}

function turns(a: Point, b: Point, c: Point): boolean {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > 0;
}

/** What a pen's full width sweeps when it turns on the spot: a wedge on either side. */
function outlineTurn(at: Point, from: Point, to: Point, half: number, span: Span, sink: FigureSink): void {
  const angle = Math.atan2(cross(from, to), dot(from, to));
  if (Math.abs(angle) < STRAIGHT) return;
  for (const side of [-half, half]) {
    sink.wedge(at, beside(at, from, side), beside(at, to, side), half, angle, span);
  }
}

/** The exact strip of a circular arc: a sector of a ring, or of two discs where the pen is wider than the radius. */
function outlineArc(piece: Piece, arc: CircularArc, half: number, sink: FigureSink): void {
  const { centre, radius, sweep } = arc;
  const { span } = piece;
  // Away from the centre is to the left of a right-hand bend.
  const outward = sweep > 0 ? -half : half;
  const outer0 = beside(piece.start, piece.startDirection, outward);
  const outer1 = beside(piece.end, piece.endDirection, outward);
  const inner0 = beside(piece.start, piece.startDirection, -outward);
  const inner1 = beside(piece.end, piece.endDirection, -outward);
  if (radius > half) {
    sink.ringSector(centre, [outer0, outer1], [inner0, inner1], [radius + half, radius - half], sweep, span);
    return;
  }
  sink.wedge(centre, outer0, outer1, radius + half, sweep, span);
  if (half > radius) sink.wedge(centre, inner0, inner1, half - radius, sweep, span);
}


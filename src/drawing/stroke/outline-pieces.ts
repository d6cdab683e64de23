/**
 * The area of a stroked chain as closed figures that all turn the same way, so that under nonzero they add up to it:
 * ribbons along the pieces, wedges at joins, caps at ends.
 */
import { checkpoint } from '../../base/checkpoint';
import type { Line, Point } from '../../geometry/base/curve-types';
import { distance, dot } from '../../geometry/base/vector';
import type { Span } from '../../text/text';
import type { PolygonSink, QuadStrip } from './figures';
import { overlapStrips } from './folds';
import {
  offsetSideways,
  outlineCap,
  outlineDot,
  outlineJoin,
  outlineSeam,
  outlineTurn,
  reverseDirection,
} from './joints';
import type { Pen } from './pen';
import type { CircularArc, StrokeContour, StrokePiece } from './pieces';

export function outlineContour(chain: StrokeContour, pen: Pen, sink: PolygonSink): void {
  const { pieces, spot } = chain;
  if (spot) return outlineDot(spot.at, spot.direction, spot.span, pen, sink);
  const run = new PolygonRun(pen, sink);
  for (let index = 0; index < pieces.length; index += 1) {
    checkpoint(80);
    const piece = pieces[index];
    if (!piece) continue;
    const before = pieces[index - 1] ?? (chain.closed ? pieces.at(-1) : undefined);
    if (before && !(piece.smooth && index > 0)) outlineJoin(before, piece, pen, sink);
    run.add(piece);
  }
  run.finish();
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (chain.closed || !first || !last) return;
  outlineCap(first.start, reverseDirection(first.startDirection), first.span, pen, sink);
  outlineCap(last.end, last.endDirection, last.span, pen, sink);
}

type Kind = 'strip' | 'fold-right' | 'fold-left';

/** The end of a tight chord whose strip was given, and the chords after it that hardly move the pen. */
interface TightEnd {
  readonly at: Point;
  readonly direction: Point;
  /** The last of those chords, or the chord itself. */
  readonly piece: StrokePiece;
}

/** Cosine of the turn up to which chords that hardly move the pen are one turn with what follows: 1 radian. */
const SMALL_TURN = Math.cos(1);

/** Collects pieces whose ribbons go on from each other, so that they are one figure each. */
class PolygonRun {
  private readonly pen: Pen;
  private readonly sink: PolygonSink;
  private kind: Kind | undefined;
  private ribbons: { left: QuadStrip['left'][]; right: QuadStrip['right'][] }[] = [];
  private span: Span = { from: 0, to: 0 };
  /** Where the last tight chord ended, until it is known how the pen turns there. */
  private pending: TightEnd | undefined;

  constructor(pen: Pen, sink: PolygonSink) {
    this.pen = pen;
    this.sink = sink;
  }

  add(piece: StrokePiece): void {
    if (!piece.smooth) this.finish();
    if (piece.arc) outlineArc(piece, piece.arc, this.pen.half, this.sink);
    else if (piece.sides) this.extend('strip', [{ left: [piece.sides.left], right: [piece.sides.right] }], piece);
    else if (piece.fold) this.extend(piece.fold.right ? 'fold-right' : 'fold-left', overlapStrips(piece.fold), piece);
    else this.addChord(piece);
  }

  finish(): void {
    this.turnToEnd();
    this.finishFigures();
  }

  private finishFigures(): void {
    for (const { left, right } of this.ribbons)
      this.sink.quadStrip({ left: left.flat(), right: right.flat() }, this.span);
    this.ribbons = [];
    this.kind = undefined;
  }

  private extend(kind: Kind, ribbons: readonly QuadStrip[], piece: StrokePiece): void {
    if (kind !== this.kind) {
      this.finish();
      if (piece.smooth) outlineSeam(piece.start, piece.startDirection, piece.span, this.pen, this.sink);
      this.kind = kind;
      this.ribbons = ribbons.map(() => ({ left: [], right: [] }));
    }
    for (const [index, { left, right }] of ribbons.entries()) {
      this.ribbons[index]?.left.push(left);
      this.ribbons[index]?.right.push(right);
    }
    this.span = piece.span;
  }

  private addChord(piece: StrokePiece): void {
    const { half } = this.pen;
    const { start, end, startDirection, endDirection } = piece;
    const side = (offset: number): Line => ({
      kind: 'line',
      start: offsetSideways(start, startDirection, offset),
      end: offsetSideways(end, endDirection, offset),
    });
    const [left, right] = [side(-half), side(half)];
    if (isConvex(left.start, left.end, right.end, right.start)) {
      this.extend('strip', [{ left: [left], right: [right] }], piece);
    } else {
      this.finishFigures();
      this.addTightChord(piece);
    }
  }

  /** On a bend tighter than the pen: a plain strip along the chord, and the pen turned where chords meet. */
  private addTightChord(piece: StrokePiece): void {
    const { pen, sink } = this;
    const { start, end, span } = piece;
    const length = distance(start, end);
    const direction = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
    if (this.pending && this.isOnSpot(this.pending, end, direction)) {
      this.pending = { ...this.pending, piece };
      return;
    }
    if (piece.smooth) outlineSeam(start, piece.startDirection, span, pen, sink);
    outlineTurn(start, this.pending?.direction ?? piece.startDirection, direction, span, pen, sink);
    const sides = [offsetSideways(start, direction, -pen.half), offsetSideways(end, direction, -pen.half)];
    sink.polygon(
      [...sides, offsetSideways(end, direction, pen.half), offsetSideways(start, direction, pen.half)],
      span,
    );
    this.pending = { at: end, piece, direction };
  }

  /** At a cusp the pen turns in hundreds of chords on one spot: strips and wedges for each would all lie on each other. */
  private isOnSpot({ at, direction }: TightEnd, end: Point, next: Point): boolean {
    return distance(at, end) < this.pen.tolerance / 2 && dot(direction, next) > SMALL_TURN;
  }

  private turnToEnd(): void {
    if (!this.pending) return;
    const { piece, direction } = this.pending;
    outlineTurn(piece.end, direction, piece.endDirection, piece.span, this.pen, this.sink);
    this.pending = undefined;
  }
}

/** Whether the corners turn right (y down) all the way round: the figure is then simple and positive. */
function isConvex(a: Point, b: Point, c: Point, d: Point): boolean {
  return turns(a, b, c) && turns(b, c, d) && turns(c, d, a) && turns(d, a, b);
}

function turns(a: Point, b: Point, c: Point): boolean {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > 0;
}

/** The exact strip of a circular arc: a sector of a ring, or of two discs where the pen is wider than the radius. */
function outlineArc(piece: StrokePiece, arc: CircularArc, half: number, sink: PolygonSink): void {
  const { centre, radius, sweep } = arc;
  const { span } = piece;
  // Away from the centre is to the left of a right-hand bend.
  const outward = sweep > 0 ? -half : half;
  const outer0 = offsetSideways(piece.start, piece.startDirection, outward);
  const outer1 = offsetSideways(piece.end, piece.endDirection, outward);
  const inner0 = offsetSideways(piece.start, piece.startDirection, -outward);
  const inner1 = offsetSideways(piece.end, piece.endDirection, -outward);
  if (radius > half) {
    sink.ringSector(centre, [outer0, outer1], [inner0, inner1], [radius + half, radius - half], sweep, span);
    return;
  }
  sink.sector(centre, outer0, outer1, radius + half, sweep, span);
  if (half > radius) sink.sector(centre, inner0, inner1, half - radius, sweep, span);
}

/**
 * Caps, joins and turns of a pen. Each reaches into the strips beside it by the pen's tolerance, so that no slit opens
 * between figures when their corners are rounded to a grid.
 */
import type { Curve, Point } from '../../geometry/base/curve-types';
import { cross, dot } from '../../geometry/base/vector';
import type { Span } from '../../text/text';
import { arcAround, type PolygonSink, polyline } from './figures';
import type { Pen } from './pen';
import type { StrokePiece } from './pieces';

/** Directions closer than this (the sine of the angle between them) need no join. */
const STRAIGHT = 1e-9;

/** The point beside `at` at a distance to the right (y down) of the direction of travel. */
export function offsetSideways(at: Point, direction: Point, distance: number): Point {
  return { x: at.x - distance * direction.y, y: at.y + distance * direction.x };
}

function offsetForward(at: Point, direction: Point, distance: number): Point {
  return { x: at.x + distance * direction.x, y: at.y + distance * direction.y };
}

export function reverseDirection(direction: Point): Point {
  return { x: -direction.x, y: -direction.y };
}

/** What is left of a line that is one spot: caps alone. */
export function outlineDot(at: Point, direction: Point, span: Span, pen: Pen, sink: PolygonSink): void {
  if (pen.cap === 'round') sink.disc(at, pen.half, span);
  if (pen.cap === 'square') {
    outlineCap(at, direction, span, pen, sink);
    outlineCap(at, reverseDirection(direction), span, pen, sink);
  }
}

/** The cap that reaches from `at` in `direction`. */
export function outlineCap(at: Point, direction: Point, span: Span, pen: Pen, sink: PolygonSink): void {
  if (pen.cap === 'butt') return;
  const { half, tolerance } = pen;
  const [left, right] = [offsetSideways(at, direction, -half), offsetSideways(at, direction, half)];
  const [left0, right0] = [offsetForward(left, direction, -tolerance), offsetForward(right, direction, -tolerance)];
  if (pen.cap === 'round') {
    const lines = polyline([right, right0, left0, left]);
    sink.figure([arcAround(at, left, right, half, Math.PI), ...lines], false, span);
  } else {
    sink.polygon([left0, offsetForward(left, direction, half), offsetForward(right, direction, half), right0], span);
  }
}

/** A strip of the tolerance across the line, where one figure ends and another goes on. */
export function outlineSeam(
  at: Point,
  direction: Point,
  span: Span,
  { half, tolerance }: Pen,
  sink: PolygonSink,
): void {
  const [left, right] = [offsetSideways(at, direction, -half), offsetSideways(at, direction, half)];
  sink.polygon(
    [
      offsetForward(left, direction, -tolerance),
      offsetForward(left, direction, tolerance),
      offsetForward(right, direction, tolerance),
      offsetForward(right, direction, -tolerance),
    ],
    span,
  );
}

/** What fills the outer side of the bend between two pieces; a seam where there is none. */
export function outlineJoin(before: StrokePiece, after: StrokePiece, pen: Pen, sink: PolygonSink): void {
  const [arriving, leaving] = [before.endDirection, after.startDirection];
  const turn = cross(arriving, leaving);
  const along = dot(arriving, leaving);
  const at = after.start;
  if (Math.abs(turn) < STRAIGHT && along > 0) {
    outlineSeam(at, leaving, after.span, pen, sink);
    return;
  }
  // The outer side of the bend is on the left when the line turns right.
  const side = turn >= 0 ? -pen.half : pen.half;
  const [from, to] = [offsetSideways(at, arriving, side), offsetSideways(at, leaving, side)];
  let outside: readonly Curve[];
  if (pen.join === 'round') {
    const angle = Math.abs(Math.atan2(turn, along));
    outside = [arcAround(at, from, to, pen.half, turn >= 0 ? angle : -angle)];
  } else {
    // 1/sin(θ/2) for the angle θ between the pieces is 1/cos of half the turn (SVG 2, "stroke-miterlimit").
    const halfCosine = Math.sqrt(Math.max(0, (1 + along) / 2));
    const mitred = pen.join === 'miter' && halfCosine * pen.miterLimit >= 1;
    outside = polyline(mitred ? [from, mitreTip(at, from, to, along), to] : [from, to]);
  }
  wedge(at, { arriving, leaving, from, to, outside }, turn < 0, after.span, pen, sink);
}

function mitreTip(at: Point, from: Point, to: Point, along: number): Point {
  const reach = 1 / (1 + along);
  return { x: at.x + (from.x + to.x - 2 * at.x) * reach, y: at.y + (from.y + to.y - 2 * at.y) * reach };
}

interface Wedge {
  readonly arriving: Point;
  readonly leaving: Point;
  readonly from: Point;
  readonly to: Point;
  /** From `from` to `to`. */
  readonly outside: readonly Curve[];
}

function wedge(at: Point, item: Wedge, negative: boolean, span: Span, pen: Pen, sink: PolygonSink): void {
  const { arriving, leaving, from, to, outside } = item;
  const { tolerance } = pen;
  const before = polyline([offsetForward(at, arriving, -tolerance), offsetForward(from, arriving, -tolerance), from]);
  const after = polyline([
    to,
    offsetForward(to, leaving, tolerance),
    offsetForward(at, leaving, tolerance),
    offsetForward(at, arriving, -tolerance),
  ]);
  sink.figure([...before, ...outside, ...after], negative, span);
}

/** What a pen's full width sweeps when it turns on the spot: a wedge on either side. */
export function outlineTurn(at: Point, from: Point, to: Point, span: Span, pen: Pen, sink: PolygonSink): void {
  const angle = Math.atan2(cross(from, to), dot(from, to));
  if (Math.abs(angle) < STRAIGHT) return;
  for (const side of [-pen.half, pen.half]) {
    const [start, end] = [offsetSideways(at, from, side), offsetSideways(at, to, side)];
    const outside = [arcAround(at, start, end, pen.half, angle)];
    const outward = side < 0 === angle > 0;
    // On the inner side the pen moves backwards.
    const [arriving, leaving] = outward ? [from, to] : [reverseDirection(from), reverseDirection(to)];
    wedge(at, { arriving, leaving, from: start, to: end, outside }, angle < 0, span, pen, sink);
  }
}

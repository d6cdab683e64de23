/** The basic shapes of SVG as outlines (SVG 2, "Basic shapes": each has an equivalent path). */
import type { Arc, Point } from '../geometry/curve';
import type { Span } from '../text';
import type { OutlineBuilder } from './outline-builder';

export interface RectangleGeometry {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Undefined stands for `auto`: the other radius counts. */
  readonly radiusX: number | undefined;
  readonly radiusY: number | undefined;
}

/** From the end of the upper left corner clockwise (y down). Nothing where a size is not positive. */
export function traceRectangle(rectangle: RectangleGeometry, span: Span, builder: OutlineBuilder): void {
  const { x, y, width, height } = rectangle;
  if (!(width > 0) || !(height > 0)) return;
  const radiusX = Math.min(rectangle.radiusX ?? rectangle.radiusY ?? 0, width / 2);
  const radiusY = Math.min(rectangle.radiusY ?? rectangle.radiusX ?? 0, height / 2);
  const round = radiusX > 0 && radiusY > 0;
  const [rx, ry] = round ? [radiusX, radiusY] : [0, 0];
  const right = x + width;
  const bottom = y + height;
  const flat = width > 2 * rx;
  const upright = height > 2 * ry;
  const [axisU, axisV] = [{ x: rx, y: 0 }, { x: 0, y: ry }];
  const corner = (centreX: number, centreY: number, quarter: number): void => {
    if (round) builder.arcTo(quarterArc({ x: centreX, y: centreY }, axisU, axisV, quarter));
  };
  builder.setPlace(span.from, span.to);
  builder.moveTo(x + rx, y);
  if (flat) builder.lineTo(right - rx, y);
  corner(right - rx, y + ry, 3);
  if (upright) builder.lineTo(right, bottom - ry);
  corner(right - rx, bottom - ry, 0);
  if (flat) builder.lineTo(x + rx, bottom);
  corner(x + rx, bottom - ry, 1);
  if (upright) builder.lineTo(x, y + ry);
  corner(x + rx, y + ry, 2);
  builder.close();
}

/** Four quarter arcs from 3 o'clock, clockwise (y down). Nothing where a radius is not positive. */
export function traceEllipse(
  centreX: number, centreY: number, radiusX: number, radiusY: number, span: Span, builder: OutlineBuilder,
): void {
  if (!(radiusX > 0) || !(radiusY > 0)) return;
  builder.setPlace(span.from, span.to);
  builder.moveTo(centreX + radiusX, centreY);
  const centre = { x: centreX, y: centreY };
  const axisU = { x: radiusX, y: 0 };
  const axisV = { x: 0, y: radiusY };
  for (let quarter = 0; quarter < 4; quarter++) builder.arcTo(quarterArc(centre, axisU, axisV, quarter));
  builder.close();
}

const COSINES = [1, 0, -1, 0, 1] as const;
const SINES = [0, 1, 0, -1, 0] as const;

/** From the angle quarter · 90° on for 90°; 0 is to the right, 1 down. */
function quarterArc(centre: Point, axisU: Point, axisV: Point, quarter: number): Arc {
  return {
    kind: 'arc', start: axisPoint(centre, axisU, axisV, quarter), end: axisPoint(centre, axisU, axisV, quarter + 1),
    centre, axisU, axisV, from: (quarter * Math.PI) / 2, sweep: Math.PI / 2,
  };
}

function axisPoint(centre: Point, axisU: Point, axisV: Point, quarter: number): Point {
  return { x: centre.x + axisU.x * (COSINES[quarter] ?? 0), y: centre.y + axisV.y * (SINES[quarter] ?? 0) };
}

/** Points as x0, y0, x1, y1, …; `spans[2i]` is where the x of point i stands. A polygon closes, a polyline does not. */
export function tracePoints(
  points: readonly number[], spans: readonly Span[], closed: boolean, builder: OutlineBuilder,
): void {
  if (points.length < 2) return;
  const setPlace = (index: number): void =>
    builder.setPlace(spans[2 * index]?.from ?? 0, spans[2 * index + 1]?.to ?? 0);
  builder.moveTo(points[0] ?? 0, points[1] ?? 0);
  for (let index = 1; 2 * index + 1 < points.length; index++) {
    setPlace(index);
    builder.lineTo(points[2 * index] ?? 0, points[2 * index + 1] ?? 0);
  }
  setPlace(0);
  if (closed) builder.close();
}

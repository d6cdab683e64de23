/** The basic shapes of SVG as outlines (SVG 2, "Basic shapes": each has an equivalent path). */

import { defined } from '../../base/defined';
import type { Span } from '../../text/text';
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
  const { width, height } = rectangle;
  if (!(width > 0) || !(height > 0)) return;
  const radiusX = Math.min(rectangle.radiusX ?? rectangle.radiusY ?? 0, width / 2);
  const radiusY = Math.min(rectangle.radiusY ?? rectangle.radiusX ?? 0, height / 2);
  builder.setPlace(span.from, span.to);
  if (radiusX > 0 && radiusY > 0) traceRounded(rectangle, radiusX, radiusY, builder);
  else tracePlain(rectangle, builder);
}

function tracePlain({ x, y, width, height }: RectangleGeometry, builder: OutlineBuilder): void {
  builder.moveTo(x, y);
  builder.lineTo(x + width, y);
  builder.lineTo(x + width, y + height);
  builder.lineTo(x, y + height);
  builder.lineTo(x, y);
  builder.close();
}

function traceRounded(
  { x, y, width, height }: RectangleGeometry,
  radiusX: number,
  radiusY: number,
  builder: OutlineBuilder,
): void {
  const [left, right] = [x + radiusX, x + width - radiusX];
  const [top, bottom] = [y + radiusY, y + height - radiusY];
  const flat = width > 2 * radiusX;
  const upright = height > 2 * radiusY;
  builder.setAxes({ x: radiusX, y: 0 }, { x: 0, y: radiusY });
  builder.moveTo(left, y);
  if (flat) builder.lineTo(right, y);
  traceQuarter(right, top, radiusX, radiusY, 3, builder);
  if (upright) builder.lineTo(x + width, bottom);
  traceQuarter(right, bottom, radiusX, radiusY, 0, builder);
  if (flat) builder.lineTo(left, y + height);
  traceQuarter(left, bottom, radiusX, radiusY, 1, builder);
  if (upright) builder.lineTo(x, top);
  traceQuarter(left, top, radiusX, radiusY, 2, builder);
  builder.close();
}

/** Four quarter arcs from 3 o'clock, clockwise (y down). Nothing where a radius is not positive. */
export function traceEllipse(
  centreX: number,
  centreY: number,
  radiusX: number,
  radiusY: number,
  span: Span,
  builder: OutlineBuilder,
): void {
  if (!(radiusX > 0) || !(radiusY > 0)) return;
  builder.setPlace(span.from, span.to);
  builder.setAxes({ x: radiusX, y: 0 }, { x: 0, y: radiusY });
  builder.moveTo(centreX + radiusX, centreY);
  for (let quarter = 0; quarter < 4; quarter += 1) traceQuarter(centreX, centreY, radiusX, radiusY, quarter, builder);
  builder.close();
}

const COSINES = [1, 0, -1, 0, 1] as const;
const SINES = [0, 1, 0, -1, 0] as const;

/** From the angle quarter · 90° on for 90°; 0 is to the right, 1 down. */
function traceQuarter(
  centreX: number,
  centreY: number,
  radiusX: number,
  radiusY: number,
  quarter: number,
  builder: OutlineBuilder,
): void {
  const endX = centreX + radiusX * defined(COSINES[quarter + 1]);
  const endY = centreY + radiusY * defined(SINES[quarter + 1]);
  builder.setCentre(centreX, centreY);
  builder.arcTo(endX, endY, (quarter * Math.PI) / 2, Math.PI / 2);
}

/**
 * Points as x0, y0, x1, y1, …; `places` tells begin and end of each number, one after the other. A polygon closes, a
 * polyline does not.
 */
export function tracePoints(
  points: readonly number[],
  places: readonly number[],
  closed: boolean,
  builder: OutlineBuilder,
): void {
  if (points.length < 2) return;
  builder.moveTo(defined(points[0]), defined(points[1]));
  for (let at = 2; at + 1 < points.length; at += 2) {
    builder.setPlace(defined(places[2 * at]), defined(places[2 * at + 3]));
    builder.lineTo(defined(points[at]), defined(points[at + 1]));
  }
  builder.setPlace(defined(places[0]), defined(places[3]));
  if (closed) builder.close();
}

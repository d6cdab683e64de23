/** Shorthands for tests of the drawing reader. */

import { readDrawing } from '../../src/drawing/index';
import type { Drawing, Shape, Subpath } from '../../src/drawing/types';
import type { Curve, Point } from '../../src/geometry/base/curve-types';
import { areaOf, regionFromRings } from '../../src/geometry/boolean/index';
import { flattenSubpath } from '../../src/geometry/curve/flatten';
import { pointAt } from '../../src/geometry/curve/index';
import { parseMarkup } from '../../src/markup/parse';

/** Reads a whole SVG text. */
export function draw(text: string, options?: { width?: number; height?: number }): Drawing {
  return readDrawing(parseMarkup(text), options);
}

/** Wraps content in a root whose user unit is one millimetre: 100 mm wide and high. */
export function inMillimetres(content: string, attributes = ''): string {
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" ` +
    `height="100mm" viewBox="0 0 100 100" ${attributes}>${content}</svg>`
  );
}

/** Draws content in a root whose user unit is one millimetre. */
export function drawMm(content: string, attributes = ''): Drawing {
  return draw(inMillimetres(content, attributes));
}

/** The bounding box of points taken densely along the curves, mm: x, y, width, height. */
export function boxOf(subpaths: readonly Subpath[]): [number, number, number, number] {
  const points = subpaths.flatMap(({ curves }) => curves.flatMap((curve) => sample(curve, 64)));
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return [x, y, Math.max(...xs) - x, Math.max(...ys) - y];
}

/** Points at equal steps of the parameter, both ends included. */
export function sample(curve: Curve, pieces: number): Point[] {
  return Array.from({ length: pieces + 1 }, (_, index) => pointAt(curve, index / pieces));
}

/** The boxes of all shapes, rounded to a nanometre. */
export function boxes(drawing: Drawing): number[][] {
  return drawing.shapes.map((shape) => boxOf(shape.subpaths).map((value) => Math.round(value * 1e6) / 1e6));
}

/** Colours of all shapes in painting order. */
export function colours(drawing: Drawing): string[] {
  return drawing.shapes.map((shape) => colourOf(shape));
}

export function colourOf({ paint }: Shape): string {
  return paint.kind === 'none' ? 'none' : paint.colour;
}

/** Checks and the text they underline. */
export function findings(drawing: Drawing): string[] {
  const { text } = drawing.document;
  return drawing.problems.map(({ check, span }) => `${check}: ${text.slice(span.from, span.to)}`);
}

/** The painted area of a shape in mm², curves followed to `flatness` mm; its clips are left aside. */
export function filledArea({ subpaths, fillRule }: Pick<Shape, 'subpaths' | 'fillRule'>, flatness = 1e-4): number {
  const rings = subpaths.map(({ curves }) => flattenSubpath(curves, flatness));
  return areaOf(regionFromRings(rings, fillRule));
}

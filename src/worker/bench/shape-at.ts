/** From the caret to the picture: the shapes that the text at the caret draws. */

import { drawnThrough } from '../../drawing/drawn-through';
import type { Shape } from '../../drawing/types';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { flattenSubpath } from '../../geometry/curve/flatten';
import type { ElementNode } from '../../markup/tree';
import type { MarkedShape } from '../../protocol/index';
import type { Report } from '../../report/report';
import { ringPath } from './preview-model';

/** mm; finer than a line on a screen. */
const TOLERANCE = DRAWN_ALIKE;

/**
 * The outlines of all that the innermost element at `offset` draws: its fill and stroke, each time it is used.
 * @returns undefined where the text at `offset` draws nothing of its own
 */
export function shapeAt(
  { drawing, sheets }: Pick<Report, 'drawing' | 'sheets'>,
  offset: number,
): MarkedShape | undefined {
  const element = innermost(drawing.shapes.flatMap(drawnThrough), offset);
  if (!element) return undefined;
  const shapes = drawing.shapes.filter((shape) => drawnThrough(shape).includes(element));
  const drawn = new Set(shapes);
  const layers = sheets.filter(({ layer }) => layer.shapes.some((shape) => drawn.has(shape)));
  return {
    outline: outlinePath(shapes),
    layers: layers.map(({ layer }) => layer.id),
    from: element.span.from,
    to: element.span.to,
  };
}

/** Path data of all that shapes draw, in sheet mm. */
export function outlinePath(shapes: readonly Shape[]): string {
  const rings = shapes.flatMap(({ subpaths }) => subpaths.map(({ curves }) => flattenSubpath(curves, TOLERANCE)));
  return rings.map(ringPath).join('');
}

function innermost(elements: readonly ElementNode[], offset: number): ElementNode | undefined {
  const holding = elements.filter(({ span }) => span.from <= offset && offset < span.to);
  return holding.reduce<ElementNode | undefined>(
    (best, element) => (best && best.span.to - best.span.from <= element.span.to - element.span.from ? best : element),
    undefined,
  );
}

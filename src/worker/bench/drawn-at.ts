/** From a line of a program to the picture: what of a drawing is drawn there. */
import { drawnThrough } from '../../drawing/drawn-through';
import { describeDrawn } from '../../engine/index';
import type { DrawnAtPaths, DrawnThere } from '../../protocol/programs';
import type { CheckedDocument } from '../documents/checked-document';
import { outlinePath } from './shape-at';

/** @returns undefined where the line draws nothing of the drawing */
export function drawnAtLine({ report, generators }: CheckedDocument, wish: DrawnAtPaths): DrawnThere | undefined {
  const { drawing, sheets } = report;
  const isDrawn = (element: Parameters<typeof generators.isDrawnAt>[0]): boolean =>
    wish.paths.some((path) => generators.isDrawnAt(element, path, wish.line));
  const shapes = drawing.shapes.filter((shape) => drawnThrough(shape).some(isDrawn));
  if (shapes.length === 0) return undefined;
  const drawn = new Set(shapes);
  const within = sheets.filter(({ layer }) => layer.shapes.some((shape) => drawn.has(shape)));
  const { times, openings, area, layers } = describeDrawn(report, shapes);
  return {
    times,
    openings,
    area,
    layers: layers.map(({ name }) => name),
    outline: outlinePath(shapes),
    layerIds: within.map(({ layer }) => layer.id),
  };
}

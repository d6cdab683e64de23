/** Moves or scales whole subpaths of an element: in its path data, a relative path changes by little more than its start. */

import type { Shape } from '../../drawing/types';
import type { Curve, Matrix, Point } from '../../geometry/base/curve-types';
import { invert, maxScale, multiply } from '../../geometry/base/matrix';
import { transformCurve } from '../../geometry/curve/index';
import type { Sheet } from '../../sheet/types';
import { elementGeometry } from '../element/element-geometry';
import type { EditResult } from '../element/result';
import { pathSource } from '../path/path-source';
import { decimalsFor } from '../path/precision';
import { rewriteCommands } from '../path/rewrite-commands';
import { outlineOf } from './move-outlines';

/**
 * @param chosen numbers of the subpaths
 * @param change in sheet mm
 */
export function transformSubpaths(sheet: Sheet, shape: Shape, chosen: ReadonlySet<number>, change: Matrix): EditResult {
  const toUser = invert(shape.toMm);
  if (!toUser) return { refusal: 'The transform of the outline cannot be undone.' };
  const decimals = Math.max(0, decimalsFor(maxScale(shape.toMm)) - 1);
  const outline = outlineOf(sheet, shape);
  const geometry = elementGeometry(sheet.drawing.document, shape, outline, decimals + 2);
  if (typeof geometry === 'string') return { refusal: geometry };
  if (isDrawnAgain(sheet, shape)) return { refusal: `The <${shape.element.name}> is drawn in several places.` };
  const source = pathSource(geometry.data, { decimals, numbers: geometry.numbers }, shape.part === 'fill');
  if (source.paths.length !== outline.length) return { refusal: 'The outline is not in its text.' };
  const own = multiply(toUser, multiply(change, shape.toMm));
  const starts = new Map<number, Point>();
  const curves = new Map<number, Curve[]>();
  for (const number of chosen) {
    const path = source.paths[number];
    if (path?.move === undefined) return { refusal: 'The outline has no start of its own.' };
    starts.set(path.move, transformCurve({ kind: 'line', start: path.start, end: path.start }, own).start);
    for (const { curve, command } of path.steps) {
      if (command !== undefined && command !== path.close) curves.set(command, [transformCurve(curve, own)]);
    }
  }
  return { edits: geometry.editsFor(rewriteCommands(source, { starts, curves })) };
}

export function isDrawnAgain({ drawing }: Sheet, shape: Shape): boolean {
  return drawing.shapes.some(
    (other) => other !== shape && other.element === shape.element && other.part === shape.part,
  );
}

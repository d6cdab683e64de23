/** The path data that a cut line is written in, ready for surgery. */
import type { Drawing } from '../../drawing/types';
import { maxScale } from '../../geometry/base/matrix';
import type { CutLine } from '../../sheet/cut-lines/index';
import type { TextEdit } from '../../text/text';
import type { OrderedLoop } from '../path/loop-order';
import type { StepPath } from '../path/path-model';
import { pathSource, writeInstead } from '../path/path-source';
import type { PathSource } from '../path/path-writer';
import { decimalsFor } from '../path/precision';
import { type ElementGeometry, elementGeometry } from './element-geometry';

export interface LinePath extends PathSource {
  readonly geometry: ElementGeometry;
}

/** @returns a sentence where the line's element cannot be edited */
export function linePath(drawing: Drawing, { shape, curves, subpath }: CutLine): LinePath | string {
  const { element, part, toMm } = shape;
  const drawn = drawing.shapes.filter((other) => other.element === element && other.part === part);
  if (drawn.length > 1) return `The <${element.name}> is drawn in several places; change it by hand.`;
  const outline = part === 'stroke' ? (shape.centreline ?? []) : shape.subpaths;
  const least = decimalsFor(maxScale(toMm));
  const geometry = elementGeometry(drawing.document, shape, outline, least);
  if (typeof geometry === 'string') return geometry;
  const source = pathSource(geometry.data, { decimals: least, numbers: geometry.numbers }, part === 'fill');
  const steps = source.paths[subpath]?.steps.length ?? 0;
  if (source.paths.length !== outline.length || steps < curves.length) {
    return `The outline of this <${element.name}> is not in its text.`;
  }
  return { ...source, geometry };
}

/**
 * Edits of the document that write these loops in place of all that the path holds.
 * @param joined subpaths from elsewhere, numbered after the path's own
 */
export function writeLine(
  source: LinePath,
  loops: readonly OrderedLoop[],
  joined: readonly StepPath[] = [],
): readonly TextEdit[] {
  return source.geometry.editsFor(writeInstead({ ...source, paths: [...source.paths, ...joined] }, loops));
}

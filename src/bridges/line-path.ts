/** The path data that a cut line is written in, ready for surgery. */
import type { Drawing } from '../drawing/drawing';
import { maxScale } from '../geometry/matrix';
import { parsePathData } from '../markup/path-data';
import type { CutLine } from '../sheet/cut-lines';
import type { TextEdit } from '../text';
import type { ArrangedLoop } from './arrange-loops';
import type { PathSource } from './command-writer';
import { decimalsFor } from './decimals';
import { elementGeometry, type ElementGeometry } from './element-geometry';
import { readStyle } from './number-style';
import { absoluteCommands, stepPaths, type StepPath } from './path-steps';
import { spliceText } from './splice-text';
import { writeLoops } from './write-path';

export interface LinePath extends PathSource {
  readonly geometry: ElementGeometry;
}

/** @returns a sentence where the line's element cannot be edited */
export function linePath(drawing: Drawing, { shape, curves, subpath }: CutLine): LinePath | string {
  const { element, part, toMm } = shape;
  const drawn = drawing.shapes.filter((other) => other.element === element && other.part === part);
  if (drawn.length > 1) return `The <${element.name}> is drawn in several places; change it by hand.`;
  const outline = part === 'stroke' ? shape.centreline ?? [] : shape.subpaths;
  const least = decimalsFor(maxScale(toMm));
  const geometry = elementGeometry(drawing.document, shape, outline, least);
  if (typeof geometry === 'string') return geometry;
  const { data } = geometry;
  const { commands } = parsePathData(data);
  const absolute = absoluteCommands(commands);
  const paths = stepPaths(commands, absolute, part === 'fill');
  const steps = paths[subpath]?.steps.length ?? 0;
  if (paths.length !== outline.length || steps < curves.length) {
    return `The outline of this <${element.name}> is not in its text.`;
  }
  const style = readStyle(data, commands);
  return { geometry, data, commands, absolute, paths, style, decimals: Math.max(style.decimals, least) };
}

/**
 * Edits of the document that write these loops in place of all that the path holds.
 * @param joined subpaths from elsewhere, numbered after the path's own
 */
export function writeLine(
  source: LinePath, loops: readonly ArrangedLoop[], joined: readonly StepPath[] = [],
): readonly TextEdit[] {
  const { geometry, data, commands } = source;
  const pieces = writeLoops({ ...source, paths: [...source.paths, ...joined] }, loops);
  return geometry.editsFor(spliceText(data, { from: 0, to: commands.at(-1)?.span.to ?? 0 }, pieces));
}

/** Takes strips out of the area that path data fills. */
import { isFinitePoint } from '../geometry/point';
import { parsePathData } from '../markup/path-data';
import type { TextEdit } from '../text';
import { arrangeLoops } from './arrange-loops';
import type { PathSource } from './command-writer';
import { readStyle } from './number-style';
import { absoluteCommands, stepPaths } from './path-steps';
import { rejoin, type FillRule } from './rejoin';
import { splitSubpaths } from './split-subpaths';
import { spliceText } from './splice-text';
import type { Strip } from './strip';
import { writeLoops } from './write-path';

export interface PathCutting {
  /** In the path's own user units; they must not overlap. */
  readonly strips: readonly Strip[];
  readonly fillRule: FillRule;
  /** Digits after the point that new points need. */
  readonly decimals: number;
}

/**
 * Edits in offsets of `data`; none where no strip meets the filled area. Undefined where the curves run so close to a
 * strip's side that inside and outside cannot be told.
 */
export function cutPathData(data: string, { strips, fillRule, decimals }: PathCutting): readonly TextEdit[] | undefined {
  const { commands } = parsePathData(data);
  const absolute = absoluteCommands(commands);
  const paths = stepPaths(commands, absolute);
  if (!absolute.every(({ after }) => isFinitePoint(after.current))) return undefined;
  const subpaths = paths.map((path) => path.steps.map((step) => step.curve));
  const split = splitSubpaths(subpaths, strips);
  const loops = rejoin(subpaths, split, strips, fillRule);
  if (!loops) return undefined;
  if (loops.length === 0 && split.untouched.length === paths.length) return [];
  const style = readStyle(data, commands);
  const source: PathSource = {
    data, commands, absolute, paths, style, decimals: Math.max(decimals, style.decimals),
  };
  const pieces = writeLoops(source, arrangeLoops(loops, split.untouched, paths));
  const end = commands.at(-1)?.span.to ?? 0;
  return spliceText(data, { from: 0, to: end }, pieces);
}

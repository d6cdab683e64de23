/** Takes strips out of the area that path data fills. */
import type { Curve } from '../../geometry/base/curve-types';
import type { FillRule } from '../../geometry/base/polygon-types';
import { isFinitePoint } from '../../geometry/base/vector';
import type { PathCommand } from '../../markup/path-commands';
import type { TextEdit } from '../../text/text';
import { nudgeStrips } from '../strip/clearance';
import type { Strip } from '../strip/strip';
import { splitSubpaths } from './clip-subpaths';
import { orderLoops } from './loop-order';
import type { StepPath } from './path-model';
import { type Manner, pathSource, writeInstead } from './path-source';
import { reconnectLoops } from './reconnect';
import { type Rounding, roundRoots } from './round-roots';

export interface PathCutting extends Manner {
  /** In the path's own user units; they must not overlap. */
  readonly strips: readonly Strip[];
  readonly fillRule: FillRule;
  /** Closed chains from elsewhere, in the path's own user units, that become part of the path. */
  readonly joined?: readonly (readonly Curve[])[];
  /** The closed chains that decide what is filled, where these are not the path's own. */
  readonly filling?: readonly (readonly Curve[])[];
  /** Corners that are left round. */
  readonly rounding?: Rounding;
}

/**
 * Edits in offsets of `data`; none where no strip meets the filled area. Undefined where the curves run so close to a
 * strip's side that inside and outside cannot be told.
 */
export function cutPathData(data: string, cutting: PathCutting): readonly TextEdit[] | undefined {
  const { fillRule, joined = [], rounding } = cutting;
  const source = pathSource(data, cutting, true);
  if (!source.absolute.every(({ after }) => isFinitePoint(after.current))) return undefined;
  const paths = [...source.paths, ...joined.map(foreignPathRefusal)];
  const subpaths = paths.map((path) => path.steps.map((step) => step.curve));
  const strips = nudgeStrips(cutting.strips, subpaths);
  const split = splitSubpaths(subpaths, strips);
  const weightOf = (subpath: number): number => (paths[subpath]?.foreign ? 0 : 1);
  const loops = reconnectLoops(cutting.filling ?? subpaths, split, strips, fillRule, weightOf);
  if (!loops) return undefined;
  if (loops.length === 0 && split.untouched.length === paths.length && joined.length === 0) return [];
  const rounded = rounding ? roundRoots(loops, subpaths, rounding, drawsInCubics(source.commands)) : loops;
  return writeInstead({ ...source, paths }, orderLoops(rounded, split.untouched, paths));
}

/** Whether arcs would be strange among the author's commands. */
function drawsInCubics(commands: readonly PathCommand[]): boolean {
  const has = (letters: string): boolean => commands.some(({ letter }) => letters.includes(letter.toUpperCase()));
  return has('CSQT') && !has('A');
}

/** A closed chain from elsewhere as a subpath that is in nobody's text yet. */
export function foreignPathRefusal(curves: readonly Curve[]): StepPath {
  const start = curves[0]?.start ?? { x: 0, y: 0 };
  const steps = curves.map((curve) => ({ curve, command: undefined }));
  return { start, move: undefined, close: undefined, foreign: true, steps };
}

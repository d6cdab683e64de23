/** Path data as curves in the element's own user units, each tied to the command that draws it. */
import { arcFromEndpoints } from '../../drawing/outline/arc';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { defined } from '../../geometry/base/defined';
import { isSameButForRounding } from '../../geometry/base/vector';
import type { PathCommand } from '../../markup/path-commands';

/** One stretch of a subpath. */
export interface Step {
  readonly curve: Curve;
  /** Index of the drawing command; undefined for the closing line that a fill gives an open subpath. */
  readonly command: number | undefined;
}

/** A subpath; as a fill sees it always closed. */
export interface StepPath {
  readonly start: Point;
  /** Index of the `M` that begins it; undefined where a subpath goes on after `Z` without one. */
  readonly move: number | undefined;
  readonly steps: readonly Step[];
  /** Index of its `Z`, if it has one. */
  readonly close: number | undefined;
  /** From another element: none of it is in this path's text. */
  readonly foreign?: boolean;
}

/** What a command leaves behind. */
interface Pen {
  readonly current: Point;
  readonly start: Point;
  /** The last control point of a cubic or quadratic, for `S` and `T`. */
  readonly control: { readonly kind: 'cubic' | 'quadratic'; readonly point: Point } | undefined;
}

/** A drawn command in absolute terms: where the pen stands before and after it. */
export interface AbsoluteCommand {
  readonly before: Pen;
  readonly after: Pen;
  /** Undefined for moves, and for closing lines without length. */
  readonly curve: Curve | undefined;
}

const ORIGIN: Point = { x: 0, y: 0 };

/** All commands in absolute terms (SVG 2, 9.3 "Path data"). */
export function absoluteCommands(commands: readonly PathCommand[]): AbsoluteCommand[] {
  let pen: Pen = { current: ORIGIN, start: ORIGIN, control: undefined };
  return commands.map((command) => {
    const before = pen;
    const { curve, after } = drawCommand(command, before);
    pen = after;
    return { before, after, curve };
  });
}

/**
 * Groups commands into subpaths. Subpaths that draw nothing are left out.
 * @param filled whether open subpaths get the closing line that a fill gives them
 */
export function stepPaths(
  commands: readonly PathCommand[],
  absolute: readonly AbsoluteCommand[],
  filled = true,
): StepPath[] {
  const paths: StepPath[] = [];
  let open: { start: Point; move: number | undefined; steps: Step[] } | undefined;
  const finish = (close: number | undefined): void => {
    if (open && open.steps.length > 0) {
      paths.push({ ...open, steps: filled ? closeSteps(open.start, open.steps) : open.steps, close });
    }
    open = undefined;
  };
  absolute.forEach(({ before, after, curve }, index) => {
    const kind = commands[index]?.letter.toUpperCase();
    if (kind === 'M') {
      finish(undefined);
      open = { start: after.current, move: index, steps: [] };
      return;
    }
    open ??= { start: before.current, move: undefined, steps: [] };
    if (curve) open.steps.push({ curve, command: index });
    if (kind === 'Z') finish(index);
  });
  finish(undefined);
  return paths;
}

function closeSteps(start: Point, steps: readonly Step[]): readonly Step[] {
  const end = steps.at(-1)?.curve.end ?? start;
  if (isSameButForRounding(end, start)) return steps;
  return [...steps, { curve: { kind: 'line', start: end, end: start }, command: undefined }];
}

function drawCommand(command: PathCommand, pen: Pen): { curve: Curve | undefined; after: Pen } {
  const kind = command.letter.toUpperCase();
  const origin = command.letter === kind ? ORIGIN : pen.current;
  const value = (index: number): number => defined(command.values[index]);
  const at = (index: number): Point => ({ x: origin.x + value(index), y: origin.y + value(index + 1) });
  const start = pen.current;
  switch (kind) {
    case 'M':
      return { curve: undefined, after: { current: at(0), start: at(0), control: undefined } };
    case 'Z': {
      const line = isSameButForRounding(start, pen.start) ? undefined : lineTo(start, pen.start);
      return { curve: line, after: { current: pen.start, start: pen.start, control: undefined } };
    }
    case 'H':
      return drawnCurve(pen, lineTo(start, { x: origin.x + value(0), y: start.y }));
    case 'V':
      return drawnCurve(pen, lineTo(start, { x: start.x, y: origin.y + value(0) }));
    case 'C':
      return drawnCurve(pen, { kind: 'cubic', start, control1: at(0), control2: at(2), end: at(4) });
    case 'S':
      return drawnCurve(pen, { kind: 'cubic', start, control1: reflected(pen, 'cubic'), control2: at(0), end: at(2) });
    case 'Q':
      return drawnCurve(pen, { kind: 'quadratic', start, control: at(0), end: at(2) });
    case 'T':
      return drawnCurve(pen, { kind: 'quadratic', start, control: reflected(pen, 'quadratic'), end: at(0) });
    case 'A':
      return drawnArc(command, pen, at(5));
    default:
      return drawnCurve(pen, lineTo(start, at(0)));
  }
}

function drawnArc(command: PathCommand, pen: Pen, end: Point): { curve: Curve | undefined; after: Pen } {
  const [radiusX = 0, radiusY = 0, rotation = 0, large, sweep] = command.values;
  const curve = arcFromEndpoints({
    start: pen.current,
    end,
    radiusX,
    radiusY,
    rotation,
    large: large === 1,
    sweep: sweep === 1,
  });
  return { curve, after: { current: end, start: pen.start, control: undefined } };
}

function lineTo(start: Point, end: Point): Curve {
  return { kind: 'line', start, end };
}

function drawnCurve(pen: Pen, curve: Curve): { curve: Curve; after: Pen } {
  return { curve, after: { current: curve.end, start: pen.start, control: controlOf(curve) } };
}

function controlOf(curve: Curve): Pen['control'] {
  if (curve.kind === 'cubic') return { kind: 'cubic', point: curve.control2 };
  return curve.kind === 'quadratic' ? { kind: 'quadratic', point: curve.control } : undefined;
}

function reflected(pen: Pen, kind: 'cubic' | 'quadratic'): Point {
  if (pen.control?.kind !== kind) return pen.current;
  return { x: 2 * pen.current.x - pen.control.point.x, y: 2 * pen.current.y - pen.control.point.y };
}

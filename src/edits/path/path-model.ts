/** Path data as curves in the element's own user units, each tied to the command that draws it. */
import { PathPen, type PathSink, type PenPosition } from '../../drawing/outline/path-pen';
import type { Arc, Curve, Point } from '../../geometry/base/curve-types';
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

/** A drawn command in absolute terms: where the pen stands before and after it. */
export interface AbsoluteCommand {
  readonly before: PenPosition;
  readonly after: PenPosition;
  /** Undefined for moves, and for closing lines without length. */
  readonly curve: Curve | undefined;
}

/** All commands in absolute terms. */
export function absoluteCommands(commands: readonly PathCommand[]): AbsoluteCommand[] {
  const recorder = new CurveRecorder();
  const pen = new PathPen(recorder);
  return commands.map(({ letter, values }) => {
    const before = pen.position;
    recorder.begin(before);
    pen.follow(letter, values);
    return { before, after: pen.position, curve: recorder.curve };
  });
}

/** Holds the curve that one command draws. */
class CurveRecorder implements PathSink {
  curve: Curve | undefined;
  private start: Point = { x: 0, y: 0 };
  private first: Point = { x: 0, y: 0 };

  begin({ current, start }: PenPosition): void {
    this.curve = undefined;
    this.start = current;
    this.first = start;
  }

  moveTo(): void {}

  lineTo(x: number, y: number): void {
    this.curve = { kind: 'line', start: this.start, end: { x, y } };
  }

  quadraticTo(controlX: number, controlY: number, x: number, y: number): void {
    this.curve = { kind: 'quadratic', start: this.start, control: { x: controlX, y: controlY }, end: { x, y } };
  }

  cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    const [control1, control2] = [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ];
    this.curve = { kind: 'cubic', start: this.start, control1, control2, end: { x, y } };
  }

  ellipticalArc(arc: Arc): void {
    this.curve = arc;
  }

  close(): void {
    if (!isSameButForRounding(this.start, this.first))
      this.curve = { kind: 'line', start: this.start, end: this.first };
  }
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

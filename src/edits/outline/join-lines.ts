/** Makes one path of cut lines that meet end to end, closed or not. */
import { defined } from '../../base/defined';
import type { Drawing } from '../../drawing/types';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { invert } from '../../geometry/base/matrix';
import { distance } from '../../geometry/base/vector';
import { transformCurve } from '../../geometry/curve/index';
import type { CutLine } from '../../sheet/cut-lines/index';
import { type LinePath, linePath, writeLine } from '../element/line-path';
import { type EditResult, mergeResults } from '../element/result';
import { closedLoop, type OrderedLoop, sortByTextOrder } from '../path/loop-order';
import type { StepPath } from '../path/path-model';
import type { LoopItem } from '../path/reconnect';
import { foreignPathRefusal } from '../path/subtract-strips';
import { removeLines } from './merge-outlines';

/**
 * The path of the first line takes up the others, which go.
 * @param lines in the order in which they meet, at least two; each may run either way
 */
export function joinLines(drawing: Drawing, lines: readonly CutLine[]): EditResult {
  const [first, ...others] = lines;
  if (!first || others.length === 0) return { refusal: 'A single line has nothing to be joined to.' };
  const source = linePath(drawing, first);
  if (typeof source === 'string') return { refusal: source };
  const toUser = invert(first.shape.toMm);
  if (!toUser) return { refusal: 'The transform of the first line cannot be undone.' };
  const elsewhere = others.filter(({ shape }) => shape !== first.shape);
  const foreign = elsewhere.map(({ curves }) =>
    foreignPathRefusal(curves.map((curve) => transformCurve(curve, toUser))),
  );
  const paths = [...source.paths, ...foreign];
  const numberOf = (line: CutLine) =>
    line.shape === first.shape ? line.subpath : source.paths.length + elsewhere.indexOf(line);
  const own = new Set(lines.filter(({ shape }) => shape === first.shape).map(({ subpath }) => subpath));
  const kept = source.paths.flatMap((path, number) => (own.has(number) ? [] : [keptLoop(path, number)]));
  const joined = chainOf(lines, numberOf, paths);
  const edits = writeLine(source as LinePath, sortByTextOrder([...kept, joined], paths), foreign);
  return mergeResults([{ edits }, removeLines(drawing, elsewhere)]);
}

function keptLoop(path: StepPath, number: number): OrderedLoop {
  return { ...closedLoop(number, path), open: path.close === undefined };
}

/** All lines in a row, each in the course that goes on from the one before, closed at the end. */
function chainOf(
  lines: readonly CutLine[],
  numberOf: (line: CutLine) => number,
  paths: readonly StepPath[],
): OrderedLoop {
  let pen = freeEnd(lines);
  const items = lines.flatMap((line) => {
    const [start, end] = [endOf(line, 'start'), endOf(line, 'end')];
    const forward = distance(pen, start) <= distance(pen, end);
    pen = forward ? end : start;
    return itemsOf(numberOf(line), defined(paths[numberOf(line)]), forward);
  });
  const [first] = items;
  const isHome =
    first?.kind === 'stretch' && first.stretch.from === 0 && !defined(paths[first.stretch.subpath]).foreign;
  const start = pointOf(first, paths, 'from');
  const closing: LoopItem[] =
    distance(pointOf(items.at(-1), paths, 'to'), start) > SAME ? [{ kind: 'line', to: start }] : [];
  return {
    start,
    items: [...items, ...closing],
    home: isHome && first.kind === 'stretch' ? first.stretch.subpath : undefined,
  };
}

/** The end of the first line that the second one does not go on from. */
function freeEnd([first, second]: readonly CutLine[]): Point {
  const [start, end] = [endOf(first, 'start'), endOf(first, 'end')];
  const near = (point: Point) =>
    Math.min(distance(point, endOf(second, 'start')), distance(point, endOf(second, 'end')));
  return near(end) <= near(start) ? start : end;
}

function endOf(line: CutLine | undefined, end: 'start' | 'end'): Point {
  const curve: Curve | undefined = end === 'start' ? line?.curves[0] : line?.curves.at(-1);
  return curve?.[end] ?? { x: 0, y: 0 };
}

function itemsOf(subpath: number, { steps }: StepPath, forward: boolean): LoopItem[] {
  const items = steps.map(
    (_, step): LoopItem => ({
      kind: 'stretch',
      stretch: forward ? { subpath, step, from: 0, to: 1 } : { subpath, step, from: 1, to: 0 },
    }),
  );
  return forward ? items : items.reverse();
}

/** User units: ends nearer to each other than this are one. */
const SAME = 1e-6;

function pointOf(item: LoopItem | undefined, paths: readonly StepPath[], end: 'from' | 'to'): Point {
  if (item?.kind !== 'stretch') return { x: 0, y: 0 };
  const { curve } = defined(paths[item.stretch.subpath]?.steps[item.stretch.step]);
  return item.stretch[end] === 0 ? curve.start : curve.end;
}

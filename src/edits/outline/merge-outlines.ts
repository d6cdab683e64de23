/** Takes doubled lines out of the text: a line that lies on another, or the stretch that two outlines share. */

import { defined } from '../../base/defined';
import type { Drawing, Shape } from '../../drawing/types';
import type { Point } from '../../geometry/base/curve-types';
import { invert } from '../../geometry/base/matrix';
import { distance } from '../../geometry/base/vector';
import { pointAt, transformCurve } from '../../geometry/curve/index';
import type { CutLine, DoubledLine } from '../../sheet/cut-lines/index';
import { linePath, writeLine } from '../element/line-path';
import { type EditResult, mergeResults } from '../element/result';
import { orderLoops } from '../path/loop-order';
import type { StepPath } from '../path/path-model';
import type { LoopItem, PathLoop } from '../path/reconnect';
import { foreignPathRefusal } from '../path/subtract-strips';
import { largerFirst } from './larger-first';
import { removeElement } from './remove-outline';

/** Takes whole lines out: their elements where nothing else is in them. */
export function removeLines(drawing: Drawing, lines: readonly CutLine[]): EditResult {
  const shapes = new Set(lines.map(({ shape }) => shape));
  return mergeResults(
    [...shapes].map((shape) =>
      removeFrom(
        drawing,
        lines.filter((line) => line.shape === shape),
      ),
    ),
  );
}

/** @param lines of one shape */
function removeFrom(drawing: Drawing, lines: readonly CutLine[]): EditResult {
  const [first] = lines;
  if (!first) return { edits: [] };
  const { shape } = first;
  const all = (shape.part === 'stroke' ? shape.centreline : shape.subpaths)?.length ?? 0;
  const [use] = shape.instances;
  if (isDrawnElsewhere(drawing, shape)) {
    return { refusal: `The <${shape.element.name}> that draws it draws it in other places, too.` };
  }
  if (use) {
    const alone = drawing.shapes.every(
      (other) => (other.instances[0] !== use && other.element !== use) || other.element === shape.element,
    );
    if (!alone || lines.length < all) return { refusal: `The <${use.name}> that draws it draws more than that.` };
    return { edits: removeElement(drawing, use) };
  }
  const used = drawing.shapes.some((other) => other.element === shape.element && other.instances.length > 0);
  if (lines.length === all && !used) {
    return { edits: removeElement(drawing, shape.element) };
  }
  const source = linePath(drawing, first);
  if (typeof source === 'string') return { refusal: source };
  const removed = new Set(lines.map(({ subpath }) => subpath));
  const others = source.paths.flatMap((_, subpath) => (removed.has(subpath) ? [] : [subpath]));
  return { edits: writeLine(source, orderLoops([], others, source.paths)) };
}

/** As the shapes of a marker are, at each vertex. */
function isDrawnElsewhere(drawing: Drawing, shape: Shape): boolean {
  return drawing.shapes.some(
    (other) =>
      other !== shape &&
      other.element === shape.element &&
      other.part === shape.part &&
      other.instances.length === shape.instances.length &&
      other.instances.every((use, i) => use === shape.instances[i]),
  );
}

/**
 * Draws two outlines that share a stretch as one that goes round both, without that stretch. An outline that runs back
 * along itself becomes two. Of two colours the larger outline's stays.
 */
export function mergeOutlines(drawing: Drawing, either: DoubledLine): EditResult {
  const doubled = largerFirst(either);
  const { first, second } = doubled;
  if (![first, second].every(({ closed, shape }) => closed || shape.part === 'fill')) {
    return { refusal: 'Only outlines that close can be united.' };
  }
  if (first.shape !== second.shape && first.shape.element === second.shape.element) {
    return { refusal: `One <${first.shape.element.name}> draws both, in two places; draw them apart first.` };
  }
  const source = linePath(drawing, first);
  if (typeof source === 'string') return { refusal: source };
  const joined = first.shape === second.shape ? [] : foreignLines(first, second);
  if (!joined) return { refusal: 'The transform of the first outline cannot be undone.' };
  const other = joined.length > 0 ? source.paths.length : second.subpath;
  const paths = [...source.paths, ...joined];
  const loops = loopsOf(doubled, paths, first.subpath, other);
  if (typeof loops === 'string') return { refusal: loops };
  const kept = source.paths.flatMap((_, subpath) => (subpath === first.subpath || subpath === other ? [] : [subpath]));
  const edits = writeLine(source, orderLoops(loops, kept, paths), joined);
  return mergeResults([{ edits }, joined.length > 0 ? removeLines(drawing, [second]) : { edits: [] }]);
}

/** The second line in the user units of the first one's element. */
function foreignLines(first: CutLine, second: CutLine): StepPath[] | undefined {
  const toUser = invert(first.shape.toMm);
  return toUser && [foreignPathRefusal(second.curves.map((curve) => transformCurve(curve, toUser)))];
}

/** A place on a subpath: before the step's end, so that each place has one name. */
interface StepPosition {
  readonly step: number;
  readonly t: number;
}

function loopsOf(
  { first, second, stretch }: DoubledLine,
  paths: readonly StepPath[],
  one: number,
  two: number,
): PathLoop[] | string {
  const head = defined(stretch.pieces[0]);
  const tail = defined(stretch.pieces.at(-1));
  const onFirst = (step: number, t: number) => positionOn(defined(paths[one]), step, t);
  const onSecond = (step: number, t: number) => positionOn(defined(paths[two]), step, t);
  const [start, end] = [onFirst(head.curve, head.from), onFirst(tail.curve, tail.to)];
  const [otherStart, otherEnd] = [onSecond(head.otherCurve, head.otherFrom), onSecond(tail.otherCurve, tail.otherTo)];
  const walk = (subpath: number, from: StepPosition, to: StepPosition) =>
    itemsBetween(defined(paths[subpath]), subpath, from, to);
  if (first === second) {
    if (!stretch.reversed) return 'It goes round the same way twice; draw it once.';
    const loops = [walk(one, end, otherEnd), walk(one, otherStart, start)];
    return loops.filter((items) => items.length > 0).map((items) => loopFrom(items, paths));
  }
  const rest = walk(one, end, start);
  const others = stretch.reversed ? walk(two, otherStart, otherEnd) : reverseItems(walk(two, otherEnd, otherStart));
  if (rest.length === 0 || others.length === 0) return 'One of the two lies wholly on the other.';
  return [loopFrom([...rest, ...others], paths)];
}

/** Parameters this near to an end are the end: smaller stretches are noise of the comparison. */
const END = 1e-6;

function positionOn({ steps }: StepPath, step: number, t: number): StepPosition {
  return t > 1 - END ? { step: (step + 1) % steps.length, t: 0 } : { step, t: t < END ? 0 : t };
}

/** What lies between two places in the course of a closed subpath; nothing between a place and itself. */
function itemsBetween({ steps }: StepPath, subpath: number, from: StepPosition, to: StepPosition): LoopItem[] {
  const items: LoopItem[] = [];
  const push = (step: number, start: number, end: number) =>
    items.push({ kind: 'stretch', stretch: { subpath, step, from: start, to: end } });
  if (from.step === to.step && Math.abs(from.t - to.t) < END) return items;
  let { step, t } = from;
  while (!(step === to.step && t <= to.t) && items.length <= steps.length) {
    push(step, t, 1);
    [step, t] = [(step + 1) % steps.length, 0];
  }
  if (to.t > t) push(step, t, to.t);
  return items;
}

function reverseItems(items: readonly LoopItem[]): LoopItem[] {
  return items
    .map((item) =>
      item.kind === 'stretch'
        ? { ...item, stretch: { ...item.stretch, from: item.stretch.to, to: item.stretch.from } }
        : item,
    )
    .reverse();
}

/** User units: ends farther apart get a line between them; nearer ones are the same number but for rounding. */
const SAME_POINT = 1e-6;

function loopFrom(items: readonly LoopItem[], paths: readonly StepPath[]): PathLoop {
  const point = (item: LoopItem, end: 'from' | 'to'): Point => {
    if (item.kind !== 'stretch') return { x: 0, y: 0 };
    const { subpath, step } = item.stretch;
    const curve = paths[subpath]?.steps[step]?.curve;
    return curve ? pointAt(curve, item.stretch[end]) : { x: 0, y: 0 };
  };
  const whole = items.flatMap((item, i): LoopItem[] => {
    const next = point(defined(items[(i + 1) % items.length]), 'from');
    return distance(point(item, 'to'), next) > SAME_POINT ? [item, { kind: 'line', to: next }] : [item];
  });
  return { start: point(defined(items[0]), 'from'), items: whole };
}

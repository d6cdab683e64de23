/** Parts the lines of path data where strips cross them. */

import { defined } from '../../base/defined';
import type { Matrix } from '../../geometry/base/curve-types';
import { isFinitePoint } from '../../geometry/base/vector';
import { pointAt, transformCurve } from '../../geometry/curve/index';
import type { TextEdit } from '../../text/text';
import { closedLoop, type OrderedLoop, sortByTextOrder } from '../path/loop-order';
import type { StepPath } from '../path/path-model';
import { type Manner, pathSource, writeInstead } from '../path/path-source';
import type { LoopItem } from '../path/reconnect';
import type { Strip } from '../strip/strip';
import { type Gap, gapsInLine } from './stroke-gaps';

export interface LineCutting extends Manner {
  /** In a frame in which lines have one width: sheet mm, or the path's own user units. */
  readonly strips: readonly Strip[];
  /** From the path's user units to that frame. */
  readonly toFrame: Matrix;
  /** Of the line, in that frame. */
  readonly width: number;
  readonly cap: 'butt' | 'round' | 'square';
  /** How far mitres reach, in half widths; 1 where its corners have none. */
  readonly miterLimit: number;
}

/** Edits in offsets of `data`; undefined where a line runs along a strip instead of across it. */
export function cutLineData(data: string, cutting: LineCutting): readonly TextEdit[] | undefined {
  const source = pathSource(data, cutting, false);
  const { absolute, paths } = source;
  if (!absolute.every(({ after }) => isFinitePoint(after.current))) return undefined;
  const loops: OrderedLoop[] = [];
  let touched = false;
  for (const [subpath, path] of paths.entries()) {
    const gaps = gapsOf(path, cutting);
    if (!gaps) return undefined;
    touched ||= gaps.length > 0;
    loops.push(...(gaps.length > 0 ? partsOf(subpath, path, gaps) : [wholeLine(subpath, path)]));
  }
  return touched ? writeInstead(source, sortByTextOrder(loops, paths)) : [];
}

function wholeLine(subpath: number, path: StepPath): OrderedLoop {
  return { ...closedLoop(subpath, path), open: path.close === undefined };
}

/** All gaps of one subpath in the order of its course, overlapping ones joined. */
function gapsOf(path: StepPath, { strips, toFrame, ...line }: LineCutting): Gap[] | undefined {
  const closed = path.close !== undefined;
  const curves = path.steps.map(({ curve }) => transformCurve(curve, toFrame));
  const found = strips.map((strip) => gapsInLine({ ...line, curves, closed }, strip));
  if (!found.every((gaps) => gaps !== undefined)) return undefined;
  return closed ? joinedRound(found.flat(), curves.length) : joined(found.flat());
}

/** In the order of the line's course, overlapping ones as one. */
function joined(gaps: readonly Gap[]): Gap[] {
  const found: Gap[] = [];
  for (const gap of [...gaps].sort((a, b) => a.from - b.from)) {
    const last = found.at(-1);
    if (last && gap.from <= last.to) found[found.length - 1] = { ...last, to: Math.max(last.to, gap.to) };
    else found.push(gap);
  }
  return found;
}

/** The same of a closed line of so many curves: what leads past its end counts on. */
function joinedRound(gaps: readonly Gap[], count: number): Gap[] {
  const found = joined(gaps.map(({ from, to }) => ({ from, to: to < from ? to + count : to })));
  for (let [first, last] = [found[0], found.at(-1)]; first && last && first !== last; ) {
    if (last.to < first.from + count) break;
    found.shift();
    found[found.length - 1] = { from: last.from, to: Math.max(last.to, first.to + count) };
    [first, last] = [found[0], found.at(-1)];
  }
  return found;
}

/** What is left between gaps. */
function partsOf(subpath: number, path: StepPath, gaps: readonly Gap[]): OrderedLoop[] {
  const count = path.steps.length;
  if (path.close === undefined) {
    const ends = [...gaps.map((gap) => gap.from), count];
    const starts = [0, ...gaps.map((gap) => gap.to)];
    return starts.flatMap((start, index) => loopsBetween(subpath, path, start, defined(ends[index])));
  }
  if (gaps.some(({ from, to }) => to - from >= count)) return [];
  return gaps.flatMap((gap, index) => {
    const next = gaps[(index + 1) % gaps.length]?.from ?? gap.from;
    return loopsBetween(subpath, path, gap.to, next > gap.to ? next : next + count);
  });
}

/** From one place to another, perhaps past the end of a closed subpath. */
function loopsBetween(subpath: number, path: StepPath, from: number, to: number): OrderedLoop[] {
  const count = path.steps.length;
  const items: LoopItem[] = [];
  for (let step = Math.floor(from); step < to; step += 1) {
    const [start, end] = [Math.max(0, from - step), Math.min(1, to - step)];
    const stretch = { subpath, step: step % count, from: start, to: end };
    if (end - start > 1e-9) items.push({ kind: 'stretch', stretch });
  }
  const [first] = items;
  if (first?.kind !== 'stretch') return [];
  const { curve } = defined(path.steps[first.stretch.step]);
  const home = first.stretch.step === 0 && first.stretch.from === 0 ? subpath : undefined;
  return [{ start: pointAt(curve, first.stretch.from), items, home, open: true }];
}

/** Where loops begin and in which order they are written, so that as much as possible stays where the author put it. */

import { defined } from '../../base/defined';
import type { StepPath } from './path-model';
import type { LoopItem, PathLoop } from './reconnect';

export interface OrderedLoop extends PathLoop {
  /** The subpath whose own start point the loop begins at; undefined where it begins at a strip. */
  readonly home: number | undefined;
  /** A line with two ends: it is not closed, and all of its items are drawn. */
  readonly open?: boolean;
}

/** @param untouched subpaths that stay whole */
export function orderLoops(
  loops: readonly PathLoop[],
  untouched: readonly number[],
  paths: readonly StepPath[],
): OrderedLoop[] {
  const whole = untouched.map((subpath) => closedLoop(subpath, defined(paths[subpath])));
  return sortByTextOrder([...whole, ...loops.map((loop) => rotateToHome(loop, paths))], paths);
}

/** Loops in the order in which their subpaths stand in the text. */
export function sortByTextOrder(loops: readonly OrderedLoop[], paths: readonly StepPath[]): OrderedLoop[] {
  return loops
    .map((loop) => ({ loop, key: orderOf(loop, paths) }))
    .sort((a, b) => a.key - b.key)
    .map(({ loop }) => loop);
}

export function closedLoop(subpath: number, path: StepPath): OrderedLoop {
  const items = path.steps.map(
    (_, step): LoopItem => ({ kind: 'stretch', stretch: { subpath, step, from: 0, to: 1 } }),
  );
  return { start: path.start, items, home: path.foreign ? undefined : subpath };
}

/** Turns a loop round until it begins where one of its subpaths began: the one with the most commands in it. */
function rotateToHome(loop: PathLoop, paths: readonly StepPath[]): OrderedLoop {
  const share = new Map<number, number>();
  for (const item of loop.items) {
    if (item.kind === 'stretch') share.set(item.stretch.subpath, (share.get(item.stretch.subpath) ?? 0) + 1);
  }
  let best: { index: number; subpath: number } | undefined;
  loop.items.forEach((item, index) => {
    if (item.kind !== 'stretch' || item.stretch.step !== 0 || item.stretch.from !== 0) return;
    const { subpath } = item.stretch;
    if (paths[subpath]?.foreign) return;
    if (!best || (share.get(subpath) ?? 0) > (share.get(best.subpath) ?? 0)) best = { index, subpath };
  });
  if (!best) return { ...loop, home: undefined };
  const items = [...loop.items.slice(best.index), ...loop.items.slice(0, best.index)];
  return { start: defined(paths[best.subpath]).start, items, home: best.subpath };
}

/** The place in the author's text that a loop belongs to. */
function orderOf({ home, items }: OrderedLoop, paths: readonly StepPath[]): number {
  const path = home === undefined ? undefined : paths[home];
  if (path) return path.move ?? path.steps[0]?.command ?? 0;
  for (const item of items) {
    if (item.kind !== 'stretch') continue;
    const command = paths[item.stretch.subpath]?.steps[item.stretch.step]?.command;
    if (command !== undefined) return command + 0.5;
  }
  return Infinity;
}

/** One line in place of three: what was a single line before a bridge parted it is a single line again. */

import { defined } from '../../base/defined';
import type { Curve } from '../../geometry/base/curve-types';
import { crossFrom, distance } from '../../geometry/base/vector';
import { reverseCurve } from '../../geometry/curve/index';
import type { StepPath } from './path-model';
import type { LoopItem, PathLoop } from './reconnect';

/**
 * Merges each new line with the two lines that it joins, where all three run in one line.
 * @param tolerance user units: how far from that line their ends may lie
 */
export function mergeCollinearLines(
  { start, items }: PathLoop,
  paths: readonly StepPath[],
  tolerance: number,
): PathLoop {
  const [first, ...others] = items.map((item) => ({ item, curve: curveOf(item, paths) }));
  if (!first) return { start, items };
  // A line across the loop's beginning is one, too.
  const turned =
    items.at(-1)?.kind === 'curve' && others[0]?.item.kind === 'stretch' ? [...others, first] : [first, ...others];
  const merged: Part[] = [];
  turned.forEach((part) => {
    const [before, bank] = [merged.at(-2), merged.at(-1)];
    if (before && bank?.item.kind === 'curve' && isOneLine([before, bank, part], tolerance)) {
      merged.splice(-2, 2, lineThrough(before, part));
    } else merged.push(part);
  });
  return { start: merged[0]?.curve.start ?? start, items: merged.map(({ item }) => item) };
}

interface Part {
  readonly item: LoopItem;
  readonly curve: Curve;
}

function curveOf(item: LoopItem, paths: readonly StepPath[]): Curve {
  if (item.kind === 'curve') return item.curve;
  if (item.kind === 'line') return { kind: 'line', start: item.to, end: item.to };
  const { subpath, step, from, to } = item.stretch;
  const { curve } = defined(paths[subpath]?.steps[step]);
  return from < to ? curve : reverseCurve(curve);
}

function isOneLine(parts: readonly Part[], tolerance: number): boolean {
  const [start, end] = [parts[0]?.curve.start, parts.at(-1)?.curve.end];
  if (!start || !end || !parts.every(({ curve }) => curve.kind === 'line')) return false;
  const long = distance(start, end);
  return (
    parts.every(({ curve }) => Math.abs(crossFrom(start, end, curve.start)) <= tolerance * long) &&
    parts.reduce((sum, { curve }) => sum + distance(curve.start, curve.end), 0) <= long + tolerance
  );
}

function lineThrough(first: Part, last: Part): Part {
  const curve: Curve = { kind: 'line', start: first.curve.start, end: last.curve.end };
  return { item: { kind: 'curve', curve, exact: true }, curve };
}

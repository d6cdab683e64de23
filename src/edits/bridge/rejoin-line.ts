/** Joins the ends of lines where a bridge had parted them. */
import { checkpoint } from '../../base/checkpoint';
import type { Point } from '../../geometry/base/curve-types';
import { distance, interpolate } from '../../geometry/base/vector';
import { tangentAt } from '../../geometry/curve/index';
import type { TextEdit } from '../../text/text';
import { closedLoop, type OrderedLoop, sortByTextOrder } from '../path/loop-order';
import type { StepPath } from '../path/path-model';
import { type Manner, pathSource, writeInstead } from '../path/path-source';
import type { LoopItem } from '../path/reconnect';
import { blendCurve } from './blend-curve';

export interface LineReconnection extends Manner {
  /** The bridge's middle, in the path's own user units. */
  readonly centre: Point;
  /** User units: how far apart the ends may be, and how far their middle may be from the bridge's. */
  readonly apart: number;
  readonly beside: number;
}

/** Edits in offsets of `data`; none where no two ends of lines face each other at the bridge. */
export function reconnectLineData(data: string, joining: LineReconnection): readonly TextEdit[] {
  const source = pathSource(data, joining, false);
  const { paths } = source;
  const facing = endsFacing(paths, joining);
  if (!facing) return [];
  const others = paths.flatMap((path, subpath) => (facing.includes(subpath) ? [] : [whole(subpath, path)]));
  return writeInstead(source, sortByTextOrder([...others, joined(paths, facing)], paths));
}

function whole(subpath: number, path: StepPath): OrderedLoop {
  return { ...closedLoop(subpath, path), open: path.close === undefined };
}

/** The subpath that ends at the bridge, and the one that begins on its other side. */
function endsFacing(
  paths: readonly StepPath[],
  { centre, apart, beside }: LineReconnection,
): [number, number] | undefined {
  let best: { pair: [number, number]; gap: number } | undefined;
  for (const [i, { close, steps }] of paths.entries()) {
    const end = steps.at(-1)?.curve.end;
    if (close !== undefined || !end) continue;
    for (const [j, other] of paths.entries()) {
      checkpoint();
      if (other.close !== undefined) continue;
      const gap = distance(end, other.start);
      const off = distance(interpolate(end, other.start, 0.5), centre);
      if (gap <= apart && off <= beside && gap < (best?.gap ?? Infinity)) best = { pair: [i, j], gap };
    }
  }
  return best?.pair;
}

/** One line of two; a line whose own ends face each other is closed. */
function joined(paths: readonly StepPath[], [ending, beginning]: readonly [number, number]): OrderedLoop {
  const [first, second] = [paths[ending], paths[beginning]] as [StepPath, StepPath];
  const [last, next] = [first.steps.at(-1), second.steps[0]];
  const bank =
    last && next && blendCurve(last.curve.end, tangentAt(last.curve, 1), next.curve.start, tangentAt(next.curve, 0));
  const gap: LoopItem[] = bank ? [{ kind: 'curve', curve: bank }] : [];
  const start = closedLoop(ending, first);
  if (ending === beginning) return { ...start, items: [...start.items, ...gap] };
  return { ...start, items: [...start.items, ...gap, ...closedLoop(beginning, second).items], open: true };
}

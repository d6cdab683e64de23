/** Takes a bridge out of path data again: its two sides go, and the banks of the gap are joined to what they were. */

import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { cross, distance, dot, interpolate, isFinitePoint, normalise, subtract } from '../../geometry/base/vector';
import { pointAt, reverseCurve, tangentAt } from '../../geometry/curve/index';
import type { TextEdit } from '../../text/text';
import { orderLoops } from '../path/loop-order';
import { mergeCollinearLines } from '../path/merge-lines';
import type { StepPath } from '../path/path-model';
import { type Manner, pathSource, writeInstead } from '../path/path-source';
import type { LoopItem, PathLoop } from '../path/reconnect';
import { blendCurve } from './blend-curve';
import { type RoundedRoots, withRoots } from './rounded-roots';

/** A side of a bridge, as a straight line from end to end. */
export type Side = readonly [Point, Point];

export interface GapReconnection extends Manner {
  /** Both sides, from the same bank to the other; in the path's own user units. */
  readonly sides: readonly [Side, Side];
  /** User units: how far a command may run beside a side and still be it. */
  readonly tolerance: number;
  /** By which arcs at the ends of the sides are known as rounded roots, which go with them. */
  readonly roots: RoundedRoots;
}

/** Edits in offsets of `data`; none where no side of the bridge is in it, undefined where its sides do not pair up. */
export function reconnectPathData(data: string, joining: GapReconnection): readonly TextEdit[] | undefined {
  const source = pathSource(data, joining, true);
  const { absolute, paths } = source;
  if (!absolute.every(({ after }) => isFinitePoint(after.current))) return undefined;
  const runs = paths.flatMap((path, subpath) =>
    runsIn(path, subpath, joining).map((run): EdgeRun => {
      const whole = withRoots(path, run, joining.roots);
      return { ...run, ...whole, rounded: whole.count > run.count };
    }),
  );
  if (runs.length === 0) return [];
  const pairs = pairRuns(runs, joining.sides[0]);
  const loops = pairs && traceLoops(paths, runs, pairs);
  if (!loops) return undefined;
  const touched = new Set(runs.map(({ subpath }) => subpath));
  const untouched = paths.flatMap((_, subpath) => (touched.has(subpath) ? [] : [subpath]));
  const straight = loops.map((loop) => mergeCollinearLines(loop, paths, joining.tolerance / 4));
  return writeInstead(source, orderLoops(straight, untouched, paths));
}

/** Steps of a subpath, one after the other round its end, that run along one side or round its roots. */
interface EdgeRun {
  readonly subpath: number;
  readonly side: 0 | 1;
  readonly first: number;
  readonly count: number;
  /** Of what runs along the side. */
  readonly start: Point;
  readonly end: Point;
  readonly rounded?: boolean;
}

function runsIn({ steps }: StepPath, subpath: number, { sides, tolerance }: GapReconnection): EdgeRun[] {
  const marks = steps.map(({ curve }) => sides.findIndex((side) => runsAlong(curve, side, tolerance)));
  const begin = marks.findIndex((mark, i) => mark >= 0 && marks.at(i - 1) !== mark);
  if (begin < 0) return [];
  const runs: EdgeRun[] = [];
  for (let i = 0; i < steps.length; i += 1) {
    const at = (begin + i) % steps.length;
    const { curve } = defined(steps[at]);
    const [mark, last] = [defined(marks[at]), runs.at(-1)];
    if (mark < 0) continue;
    if (last?.side === mark && (last.first + last.count) % steps.length === at) {
      runs[runs.length - 1] = { ...last, count: last.count + 1, end: curve.end };
    } else runs.push({ subpath, side: mark as 0 | 1, first: at, count: 1, start: curve.start, end: curve.end });
  }
  return runs;
}

/** Whether a curve lies on the line through a side's ends, and beside the side for the most part. */
function runsAlong(curve: Curve, [from, to]: Side, tolerance: number): boolean {
  const long = distance(from, to);
  const along = normalise(subtract(to, from));
  if (!along) return false;
  const points = [curve.start, pointAt(curve, 1 / 3), pointAt(curve, 2 / 3), curve.end].map((point) =>
    subtract(point, from),
  );
  const middle = dot(interpolate(defined(points[0]), defined(points[3]), 0.5), along);
  return (
    points.every((point) => Math.abs(cross(along, point)) <= tolerance) &&
    middle > 0 &&
    middle < long &&
    distance(curve.start, curve.end) > 2 * tolerance
  );
}

/** One of the two places where a run meets what lies before or after it. */
type End = 'start' | 'end';

/** Runs that face each other across the bridge, and whether their courses are opposed. */
interface OppositeRun {
  readonly run: EdgeRun;
  readonly opposed: boolean;
}

function pairRuns(runs: readonly EdgeRun[], [from, to]: Side): Map<EdgeRun, OppositeRun> | undefined {
  const along = subtract(to, from);
  const place = ({ start, end }: EdgeRun): number => dot(subtract(interpolate(start, end, 0.5), from), along);
  const [first, second] = [0, 1].map((side) =>
    runs.filter((run) => run.side === side).sort((a, b) => place(a) - place(b)),
  );
  if (!first || first.length !== second?.length) return undefined;
  const pairs = new Map<EdgeRun, OppositeRun>();
  for (const [i, run] of first.entries()) {
    const otherSide = defined(second[i]);
    const opposed = dot(subtract(run.end, run.start), subtract(otherSide.end, otherSide.start)) < 0;
    pairs.set(run, { run: otherSide, opposed }).set(otherSide, { run, opposed });
  }
  return pairs;
}

/** What lies between two runs, in the course of its subpath. */
interface RunLink {
  readonly after: EdgeRun;
  readonly into: EdgeRun;
  readonly steps: readonly number[];
}

function runLinks(paths: readonly StepPath[], runs: readonly EdgeRun[]): RunLink[] {
  return runs.map((after) => {
    const count = paths[after.subpath]?.steps.length ?? 0;
    const steps: number[] = [];
    for (let step = (after.first + after.count) % count; ; step = (step + 1) % count) {
      const into = runs.find(({ subpath, first }) => subpath === after.subpath && first === step);
      if (into) return { after, into, steps };
      steps.push(step);
    }
  });
}

/**
 * Closed loops of the chains, each going on along the bank where a run led into the gap. Long chains keep their course.
 */
function traceLoops(
  paths: readonly StepPath[],
  runs: readonly EdgeRun[],
  pairs: ReadonlyMap<EdgeRun, OppositeRun>,
): PathLoop[] | undefined {
  const chains = runLinks(paths, runs);
  if (chains.some(({ steps }) => steps.length === 0)) return undefined;
  const left = new Set([...chains].sort((a, b) => b.steps.length - a.steps.length));
  const loops: PathLoop[] = [];
  for (const first of left) {
    const items: LoopItem[] = [];
    let [chain, forward]: [RunLink, boolean] = [first, true];
    do {
      if (!left.delete(chain)) return undefined;
      const way = nextLink(chain, forward, chains, pairs);
      if (!way) return undefined;
      items.push(...intervalsOf(chain, forward), ...gapEdgeTo(paths, [chain, forward], way));
      [chain, forward] = way;
    } while (chain !== first || !forward);
    loops.push({ start: first.after.end, items });
  }
  return loops;
}

/** The chain on the other side of the gap, and whether it is run through in its own course. */
function nextLink(
  { after, into }: RunLink,
  forward: boolean,
  chains: readonly RunLink[],
  pairs: ReadonlyMap<EdgeRun, OppositeRun>,
): [RunLink, boolean] | undefined {
  const opposite = pairs.get(forward ? into : after);
  const arrived: End = forward ? 'start' : 'end';
  const leaves: End = opposite?.opposed === true ? other(arrived) : arrived;
  const next = chains.find((chain) => (leaves === 'end' ? chain.after : chain.into) === opposite?.run);
  return next && [next, leaves === 'end'];
}

function other(end: End): End {
  return end === 'start' ? 'end' : 'start';
}

function intervalsOf({ after: { subpath }, steps }: RunLink, forward: boolean): LoopItem[] {
  const items = steps.map(
    (step): LoopItem => ({
      kind: 'stretch',
      stretch: forward ? { subpath, step, from: 0, to: 1 } : { subpath, step, from: 1, to: 0 },
    }),
  );
  return forward ? items : items.reverse();
}

/** The bank from where one chain is left to where the next begins. */
function gapEdgeTo(
  paths: readonly StepPath[],
  from: readonly [RunLink, boolean],
  to: readonly [RunLink, boolean],
): LoopItem[] {
  const [before, after] = [outerCurve(paths, from, 'end'), outerCurve(paths, to, 'start')];
  const rounded = [from[0], to[0]].some((link) => link.after.rounded === true || link.into.rounded === true);
  const roots = rounded ? 'rounded' : 'square';
  const bank = blendCurve(before.end, tangentAt(before, 1), after.start, tangentAt(after, 0), roots);
  return bank ? [{ kind: 'curve', curve: bank }] : [];
}

/** The first or last curve of a chain, as it is run through. */
function outerCurve(
  paths: readonly StepPath[],
  [
    {
      after: { subpath },
      steps,
    },
    forward,
  ]: readonly [RunLink, boolean],
  end: End,
): Curve {
  const step = defined(forward === (end === 'start') ? steps[0] : steps.at(-1));
  const { curve } = defined(paths[subpath]?.steps[step]);
  return forward ? curve : reverseCurve(curve);
}

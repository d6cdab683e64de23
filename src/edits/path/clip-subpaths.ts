/** Cuts closed chains of curves where they cross strips, and keeps what lies outside all of them. */

import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { boundsOf, intersectWithLine, pointAt } from '../../geometry/curve/index';
import { indexStrips, type StripIndex } from '../strip/shapes-near';
import { borderPosition, cornerAt, depthInStrip, type Strip } from '../strip/strip';

/** A stretch of one curve of one subpath, between two parameters. Backward where `from` is greater than `to`. */
export interface PathInterval {
  readonly subpath: number;
  readonly step: number;
  readonly from: number;
  readonly to: number;
}

/** An end of a chain, on the border of a strip. */
export interface Crossing {
  readonly strip: number;
  /** See `borderPosition`. */
  readonly place: number;
  readonly point: Point;
}

/** What is left of a subpath between leaving one strip and entering the next. */
export interface PathFragment {
  readonly stretches: readonly PathInterval[];
  readonly leaves: Crossing;
  readonly enters: Crossing;
}

export interface SplitPaths {
  /** Subpaths that no strip touches. */
  readonly untouched: readonly number[];
  readonly fragments: readonly PathFragment[];
}

/** Stretches shorter than this share of their curve are noise of the root finding. */
const MIN_INTERVAL = 1e-9;

interface Located extends PathInterval {
  /** The strip it lies in, or -1 outside all. */
  readonly strip: number;
}

/** @param subpaths closed chains: each curve starts where the one before ends, the first where the last ends */
export function splitSubpaths(subpaths: readonly (readonly Curve[])[], strips: readonly Strip[]): SplitPaths {
  const index = indexStrips(strips);
  const untouched: number[] = [];
  const chains: PathFragment[] = [];
  subpaths.forEach((curves, subpath) => {
    const located = curves.flatMap((curve, step) => locate(curve, subpath, step, strips, index));
    if (located.every((stretch) => stretch.strip < 0)) untouched.push(subpath);
    else chains.push(...fragmentsOf(located, curves, strips));
  });
  return { untouched, fragments: chains };
}

function locate(curve: Curve, subpath: number, step: number, strips: readonly Strip[], index: StripIndex): Located[] {
  const near = index(boundsOf(curve));
  if (near.length === 0) return [{ subpath, step, from: 0, to: 1, strip: -1 }];
  const cuts = near.flatMap((number) => cutsBy(curve, defined(strips[number]))).sort((a, b) => a - b);
  const knots = [0];
  for (const cut of [...cuts, 1]) if (cut - defined(knots.at(-1)) > MIN_INTERVAL) knots.push(cut);
  knots[knots.length - 1] = 1;
  return knots.slice(1).map((to, at) => {
    const from = defined(knots[at]);
    const middle = pointAt(curve, (from + to) / 2);
    const strip = near.find((number) => depthInStrip(defined(strips[number]), middle) > 0) ?? -1;
    return { subpath, step, from, to, strip };
  });
}

function cutsBy(curve: Curve, strip: Strip): number[] {
  return strip.corners.flatMap((corner, index) => intersectWithLine(curve, corner, cornerAt(strip, index + 1)));
}

/** Walks round from a place where a strip is left; a subpath that lies wholly inside gives no chain. */
function fragmentsOf(located: readonly Located[], curves: readonly Curve[], strips: readonly Strip[]): PathFragment[] {
  const first = located.findIndex((stretch, index) => stretch.strip < 0 && compareCrossings(located, index).strip >= 0);
  if (first < 0) return [];
  const round = [...located.slice(first), ...located.slice(0, first)];
  const chains: PathFragment[] = [];
  let open: { stretches: PathInterval[]; leaves: Crossing } | undefined;
  round.forEach((stretch, index) => {
    const previous = compareCrossings(round, index);
    if (stretch.strip < 0) {
      open ??= { stretches: [], leaves: crossingAt(stretch, stretch.from, previous.strip, curves, strips) };
      open.stretches.push(stretch);
    } else if (open) {
      chains.push({ ...open, enters: crossingAt(previous, previous.to, stretch.strip, curves, strips) });
      open = undefined;
    }
  });
  return chains.map((chain) => ({ ...chain, stretches: joinIntervals(chain.stretches) }));
}

function compareCrossings<T>(items: readonly T[], index: number): T {
  return defined(items[(index + items.length - 1) % items.length]);
}

function crossingAt(
  stretch: PathInterval,
  t: number,
  strip: number,
  curves: readonly Curve[],
  strips: readonly Strip[],
): Crossing {
  const point = pointAt(defined(curves[stretch.step]), t);
  return { strip, point, place: borderPosition(defined(strips[strip]), point) };
}

/** Neighbouring stretches of one curve are one stretch: the line of a side met the curve beyond the side's ends. */
function joinIntervals(stretches: readonly PathInterval[]): PathInterval[] {
  const joined: PathInterval[] = [];
  for (const { subpath, step, from, to } of stretches) {
    const last = joined.at(-1);
    if (last && last.step === step && last.to === from) joined[joined.length - 1] = { ...last, to };
    else joined.push({ subpath, step, from, to });
  }
  return joined;
}

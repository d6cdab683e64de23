/** What stands for that which a layer draws: two layers with the same key are cut alike, wherever their text stands. */

import { checkpoint } from '../../base/checkpoint';
import type { Clip, Shape, Subpath } from '../../drawing/types';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { memoizeByIdentity } from '../../geometry/base/derived-facts';
import { hashOfText, NumbersHash } from '../../text/hash';

export interface ArtworkKey {
  /** Of all shapes in their order. */
  readonly whole: string;
  /** Of each shape by itself. */
  readonly shapes: Float64Array;
  /** Of their colours, which change nothing that is cut. */
  readonly colours: string;
}

/** Of shapes in painting order, to the last digit of every coordinate. */
export function artworkKey(shapes: readonly Shape[]): ArtworkKey {
  const hash = new NumbersHash();
  const keys = Float64Array.from(shapes, (shape) => shapeKey(shape, hash));
  keys.forEach((key) => hash.add(key));
  return { whole: `${shapes.length}.${hash.take().toString(36)}`, shapes: keys, colours: coloursKey(shapes) };
}

/** Commonly there is one colour. */
function coloursKey(shapes: readonly Shape[]): string {
  const colours = shapes.map(({ paint }) => (paint.kind === 'none' ? 'none' : paint.colour));
  const [first] = colours;
  return first !== undefined && colours.every((colour) => colour === first) ? first : hashOfText(colours.join(' '));
}

/** Between lists, so that what stands at the end of one is not taken for the beginning of the next. */
const NEXT_LIST = -1;

function shapeKey({ part, fillRule, strokeWidth, subpaths, centreline, clips }: Shape, hash: NumbersHash): number {
  hash.add(part === 'fill' ? 0 : 1);
  hash.add(ruleNumber(fillRule));
  hash.add(strokeWidth ?? NEXT_LIST);
  addSubpaths(subpaths, hash);
  addSubpaths(centreline ?? [], hash);
  for (const clip of clips) addClip(clip, hash);
  return hash.take();
}

function addSubpaths(subpaths: readonly Subpath[], hash: NumbersHash): void {
  for (const { closed, curves } of subpaths) {
    hash.add(closed ? 1 : 0);
    checkpoint(10 + 10 * curves.length);
    hash.add(curvesKey(curves));
  }
  hash.add(NEXT_LIST);
}

function addClip({ parts, box }: Clip, hash: NumbersHash): void {
  if (box) [box.minX, box.minY, box.maxX, box.maxY].forEach((side) => hash.add(side));
  hash.add(NEXT_LIST);
  for (const { fillRule, subpaths } of parts) {
    hash.add(ruleNumber(fillRule));
    addSubpaths(subpaths, hash);
  }
  hash.add(NEXT_LIST);
}

const ruleNumber = (rule: Shape['fillRule']): number => (rule === 'nonzero' ? 0 : 1);

/** Of a chain of curves, to the last digit; one is met again after an edit, as the very object. */
export const curvesKey = memoizeByIdentity('key of a chain', (curves: readonly Curve[]): number => {
  const hash = new NumbersHash();
  for (const curve of curves) addCurve(curve, hash);
  return hash.take();
});

/** Of each curve by itself. */
export function curveKeys(curves: readonly Curve[]): number[] {
  const hash = new NumbersHash();
  return curves.map((curve) => {
    addCurve(curve, hash);
    return hash.take();
  });
}

const KIND_NUMBERS: Readonly<Record<Curve['kind'], number>> = { line: 0, quadratic: 1, cubic: 2, arc: 3 };

function addCurve(curve: Curve, hash: NumbersHash): void {
  hash.add(KIND_NUMBERS[curve.kind]);
  addPoint(curve.start, hash);
  addPoint(curve.end, hash);
  if (curve.kind === 'quadratic') addPoint(curve.control, hash);
  if (curve.kind === 'cubic') {
    addPoint(curve.control1, hash);
    addPoint(curve.control2, hash);
  }
  if (curve.kind === 'arc') {
    hash.add(curve.from);
    hash.add(curve.sweep);
    for (const point of [curve.centre, curve.axisU, curve.axisV]) addPoint(point, hash);
  }
}

function addPoint({ x, y }: Point, hash: NumbersHash): void {
  hash.add(x);
  hash.add(y);
}

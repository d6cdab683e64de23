/** Rounds the corners of loops where the author's curves meet the sides of strips. */
import { defined } from '../../base/defined';
import type { Curve, Matrix, Point } from '../../geometry/base/curve-types';
import { apply, invert } from '../../geometry/base/matrix';
import { NECK_MARGIN } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import { lengthOf, nearestOn, pointAt, subCurve, transformCurve } from '../../geometry/curve/index';
import { arcAbout } from '../roots/arc';
import type { RootFillet } from '../roots/fillet';
import type { LoopItem, PathLoop } from './reconnect';

export interface Rounding {
  readonly toMm: Matrix;
  readonly fillets: readonly RootFillet[];
  /** mm: the width of the line along the path, whose outer edge the fillets touch. */
  readonly line?: number;
}

/** mm: how near to an arc a curve comes that it is tangent to; fillets are found by curves that were flattened. */
const TANGENT = NECK_MARGIN;
/** A fillet's arc meets the bank within so many radii of its corner. */
const REACH = 4;
/** Shares of a curve that are too short to be drawn. */
const NOTHING = 1e-6;

/** Between two items of a loop: from one of the author's curves to the side of a strip, or back. */
interface RoundedCorner {
  /** The number of the stretch that the arc begins or ends on, and where. */
  readonly stretch: number;
  readonly t: number;
  /** Stretches between that and the corner. */
  readonly dropped: readonly number[];
  /** Where the arc meets the side. */
  readonly onSide: Point;
  /** In the course of the loop. */
  readonly arc: Curve;
}

/** A loop, its places in the path's own units. */
interface Course {
  readonly loop: PathLoop;
  /** Where each item ends. */
  readonly ends: readonly Point[];
  readonly subpaths: readonly (readonly Curve[])[];
}

/**
 * The loops with an arc in each corner that has a fillet; two corners that would take from the same curve stay as they are.
 * @param subpaths what the stretches are of
 * @param asCubic whether arcs are drawn as cubics
 */
export function roundRoots(
  loops: readonly PathLoop[],
  subpaths: readonly (readonly Curve[])[],
  rounding: Rounding,
  asCubic: boolean,
): readonly PathLoop[] {
  const toUser = invert(rounding.toMm);
  if (rounding.fillets.length === 0 || !toUser) return loops;
  return loops.map((loop) => {
    const course = { loop, ends: loop.items.map((item) => endOf(item, subpaths)), subpaths };
    const found = loop.items.map((_, i) => cornerAfter(course, i, rounding, toUser, asCubic));
    const corners = found.map((corner, i) => (corner && isContested(course, found, i) ? undefined : corner));
    return corners.some((corner) => corner) ? withCorners(course, corners) : loop;
  });
}

function endOf(item: LoopItem, subpaths: Course['subpaths']): Point {
  if (item.kind === 'line') return item.to;
  if (item.kind === 'curve') return item.curve.end;
  const { subpath, step, to } = item.stretch;
  return pointAt(defined(subpaths[subpath]?.[step]), to);
}

/** The corner between an item and the next. */
function cornerAfter(
  { loop: { items }, ends, subpaths }: Course,
  i: number,
  { toMm, fillets, line = 0 }: Rounding,
  toUser: Matrix,
  asCubic: boolean,
): RoundedCorner | undefined {
  const count = items.length;
  const [before, after] = [defined(items[i]), defined(items[(i + 1) % count])];
  const intoSide = before.kind === 'stretch' && after.kind === 'line';
  if (!intoSide && !(before.kind === 'line' && after.kind === 'stretch')) return undefined;
  const corner = apply(toMm, defined(ends[i]));
  const other = apply(toMm, defined(ends[(i + (intoSide ? 1 : count - 1)) % count]));
  const side: Curve = { kind: 'line', start: corner, end: other };
  for (const { centre, radius, corner: root } of fillets) {
    const own = radius - line / 2;
    if (own <= 0 || distance(root, corner) > radius + line) continue;
    const isTangent = (place: { readonly distance: number }): boolean => Math.abs(place.distance - own) < TANGENT;
    const onSide = nearestOn(side, centre);
    if (!isTangent(onSide)) continue;
    const dropped: number[] = [];
    let far = 0;
    for (let k = 0; k < count && far < REACH * (radius + line); k += 1) {
      const at = (i + (intoSide ? count - k : 1 + k)) % count;
      const item = defined(items[at]);
      if (item.kind !== 'stretch') break;
      const { subpath, step, from, to } = item.stretch;
      const piece = transformCurve(subCurve(defined(subpaths[subpath]?.[step]), from, to), toMm);
      const onBank = nearestOn(piece, centre);
      if (isTangent(onBank)) {
        const [start, end] = intoSide ? [onBank.point, onSide.point] : [onSide.point, onBank.point];
        const arc = transformCurve(arcAbout(centre, own, start, end, asCubic), toUser);
        const t = from + onBank.t * (to - from);
        return { stretch: at, t, dropped, onSide: apply(toUser, onSide.point), arc };
      }
      dropped.push(at);
      far += lengthOf(piece);
    }
  }
  return undefined;
}

/** Whether two corners would take from each other's curves. */
function isContested(course: Course, corners: readonly (RoundedCorner | undefined)[], i: number): boolean {
  const own = defined(corners[i]);
  return corners.some((other, k) => {
    if (!other || k === i) return false;
    if (own.dropped.includes(other.stretch) || other.dropped.includes(own.stretch)) return true;
    if (own.dropped.some((at) => other.dropped.includes(at))) return true;
    if (own.stretch !== other.stretch) return false;
    const { from, to } = stretchNow(course, corners, own.stretch);
    return intervalOf(course, own.stretch) * (to - from) <= 0;
  });
}

function intervalOf({ loop: { items } }: Course, at: number): number {
  const item = defined(items[at]);
  return item.kind === 'stretch' ? item.stretch.to - item.stretch.from : 0;
}

/** What is left of a stretch between the arcs at its ends. */
function stretchNow(
  { loop: { items } }: Course,
  corners: readonly (RoundedCorner | undefined)[],
  at: number,
): { readonly from: number; readonly to: number } {
  const item = defined(items[at]);
  let { from, to } = item.kind === 'stretch' ? item.stretch : { from: 0, to: 0 };
  for (const [i, corner] of corners.entries()) {
    if (corner?.stretch !== at) continue;
    if (items[i]?.kind === 'line') from = corner.t;
    else to = corner.t;
  }
  return { from, to };
}

function withCorners(course: Course, corners: readonly (RoundedCorner | undefined)[]): PathLoop {
  const { items } = course.loop;
  const dropped = new Set(corners.flatMap((corner) => corner?.dropped ?? []));
  const now = items.flatMap((item, i): LoopItem[] => {
    const corner = corners[i];
    const arc: LoopItem[] = corner ? [{ kind: 'curve', curve: corner.arc }] : [];
    if (item.kind === 'line') return [corner ? { kind: 'line', to: corner.onSide } : item, ...arc];
    if (item.kind === 'curve') return [item];
    const { from, to } = stretchNow(course, corners, i);
    const isDrawn = !dropped.has(i) && Math.abs(to - from) > NOTHING;
    return [...(isDrawn ? [{ kind: 'stretch', stretch: { ...item.stretch, from, to } } as const] : []), ...arc];
  });
  return { start: endOf(defined(now.at(-1)), course.subpaths), items: now };
}

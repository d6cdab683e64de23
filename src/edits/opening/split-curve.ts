/** A curve that cannot be moved aside as one is moved in parts, each of them fitted by itself. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { scale, vectorLength } from '../../geometry/base/vector';
import { pointAt, subCurve } from '../../geometry/curve/index';
import { type CurveDemands, type Demand, type Movable, SHORT } from './demands';

const MAX_PARTS = 4;

/** Samples of the demand on a part at least. */
const LEAST_SAMPLES = 5;

type Bent = Exclude<Movable, { kind: 'line' }>;

/** Moves a curve, its ends as stated (mm); undefined where it cannot. */
type Move<Result> = (part: CurveDemands & { readonly curve: Bent }, start: Point, end: Point) => Result | undefined;

/**
 * Two, three or four parts.
 * @param start mm: how its first point moves
 * @param end mm: how its last point moves
 */
export function splitCurve(
  { curve, demands }: CurveDemands,
  start: Point,
  end: Point,
  fit: Move<Movable>,
): Movable[] | undefined {
  for (let parts = 2; parts <= MAX_PARTS; parts += 1) {
    const joints = jointsOf(demands, parts, start, end);
    if (!joints) return undefined;
    const moved = joints.slice(1).map(({ at, by }, i) => {
      const before = defined(joints[i]);
      return fit(partOf({ curve, demands }, before.at, at), before.by, by);
    });
    if (moved.every((part) => part !== undefined)) return moved;
  }
  return undefined;
}

/**
 * What need not move stays, and a short slope leads to what must.
 * @param move moves what must
 */
export function steppedCurve(
  all: CurveDemands,
  start: Point,
  end: Point,
  move: Move<Movable[]>,
): Movable[] | undefined {
  const { curve, demands } = all;
  const last = demands.length - 1;
  const first = vectorLength(start) > 0 ? 0 : demands.findIndex(isDemanded);
  const final = vectorLength(end) > 0 ? last : demands.findLastIndex(isDemanded);
  if (first < 0 || final - first < LEAST_SAMPLES || (first === 0 && final === last)) return undefined;
  const by = [first === 0 ? start : moveOf(demands[first]), final === last ? end : moveOf(demands[final])] as const;
  const moved = move(partOf(all, first, final), ...by);
  const [head, tail] = [moved?.[0], moved?.at(-1)];
  if (!moved || !head || !tail) return undefined;
  const [rise, fall] = [demands[first - 1]?.t, demands[final + 1]?.t];
  return [
    ...(rise === undefined ? [] : [...stretch(curve, 0, rise), slope(pointAt(curve, rise), head.start)]),
    ...moved,
    ...(fall === undefined ? [] : [slope(tail.end, pointAt(curve, fall)), ...stretch(curve, fall, 1)]),
  ];
}

function isDemanded({ need }: Demand): boolean {
  return need > SHORT;
}

function moveOf(demand: Demand | undefined): Point {
  return demand?.outward ? scale(demand.outward, demand.need) : { x: 0, y: 0 };
}

function stretch(curve: Movable, from: number, to: number): Movable[] {
  return to > from ? [subCurve(curve, from, to) as Movable] : [];
}

function slope(start: Point, end: Point): Movable {
  return { kind: 'line', start, end };
}

/** From one of the demands to another. */
function partOf(
  { curve, demands }: CurveDemands,
  first: number,
  last: number,
): CurveDemands & { readonly curve: Bent } {
  const own = demands.slice(first, last + 1);
  const [from, to] = [defined(own[0]).t, defined(own.at(-1)).t];
  const rescaled = own.map((demand) => ({ ...demand, t: (demand.t - from) / (to - from) }));
  return { curve: subCurve(curve, from, to) as Bent, demands: rescaled };
}

interface Joint {
  /** Which of the demands. */
  readonly at: number;
  readonly by: Point;
}

/** Undefined where a joint would lie where the curve bounds nothing, or the parts would have too few samples. */
function jointsOf(demands: readonly Demand[], parts: number, start: Point, end: Point): Joint[] | undefined {
  const last = demands.length - 1;
  if (last < parts * LEAST_SAMPLES) return undefined;
  const inner = Array.from({ length: parts - 1 }, (_, i) => Math.round(((i + 1) * last) / parts));
  const joints = inner.flatMap((at): Joint[] => {
    const { outward, need } = defined(demands[at]);
    return outward ? [{ at, by: scale(outward, need) }] : [];
  });
  return joints.length === inner.length ? [{ at: 0, by: start }, ...joints, { at: last, by: end }] : undefined;
}

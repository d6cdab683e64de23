/** A curve that cannot be moved aside as one is moved as two, three or four, each of them fitted by itself. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { scale } from '../../geometry/base/vector';
import { subCurve } from '../../geometry/curve/index';
import type { CurveDemands, Demand, Movable } from './demands';

const MAX_PARTS = 4;

/** Samples of the demand on a part at least. */
const LEAST_SAMPLES = 5;

type Bent = Exclude<Movable, { kind: 'line' }>;

/**
 * @param start mm: how its first point moves
 * @param end mm: how its last point moves
 * @param fit moves one part, its ends as stated; undefined where it cannot
 */
export function splitCurve(
  { curve, demands }: CurveDemands,
  start: Point,
  end: Point,
  fit: (part: CurveDemands & { readonly curve: Bent }, start: Point, end: Point) => Movable | undefined,
): Movable[] | undefined {
  for (let parts = 2; parts <= MAX_PARTS; parts += 1) {
    const joints = jointsOf(demands, parts, start, end);
    if (!joints) return undefined;
    const moved = joints.slice(1).map(({ at, by }, i) => {
      const before = defined(joints[i]);
      const own = demands.slice(before.at, at + 1);
      const [from, to] = [defined(own[0]).t, defined(own.at(-1)).t];
      const rescaled = own.map((demand) => ({ ...demand, t: (demand.t - from) / (to - from) }));
      return fit({ curve: subCurve(curve, from, to) as Bent, demands: rescaled }, before.by, by);
    });
    if (moved.every((part) => part !== undefined)) return moved;
  }
  return undefined;
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

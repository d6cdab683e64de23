/** How far a part of the sheet lifts that hangs on one short root. See `loose-tongue/README.md` for model and sources. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';
import { centroidOfRing, perimeter, pointsOf, ringOfPoints } from '../../geometry/base/ring';
import { add, distance, dot, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { simplifyRing } from '../../geometry/polygon/simplify';
import { type Bending, type Lift, liftAlong } from './beam';
import { courseOf } from './course';
import type { LoosePart } from './stretches';

export type { Bending, Lift } from './beam';

/** The outline has about so many points. */
const POINTS = 160;

/** @returns undefined where the outline crosses or touches itself */
export function liftOf(part: LoosePart, bending: Bending): Lift | undefined {
  const frame = frameOf(part.outline);
  const outline = placed(part.outline, frame);
  const holes = part.holes.map((hole) => placed(hole, frame));
  const spacing = perimeter(outline) / POINTS;
  const even = withEvenPoints(simplified(outline, spacing / 20), spacing);
  const steps = courseOf(even, holes);
  if (!steps) return undefined;
  const { lift, at } = liftAlong(steps, { outline: even, holes }, bending);
  return { lift, at: frame.back(at) };
}

/**
 * A frame that goes with the part: the first axis along its root, so that most of it lies on the positive side. In it a
 * part is taken apart alike however it is turned or mirrored.
 */
interface OwnFrame {
  readonly into: (point: Point) => Point;
  readonly back: (point: Point) => Point;
  /** Whether rings turn the other way in it. */
  readonly mirrored: boolean;
}

function frameOf(outline: Ring): OwnFrame {
  const points = pointsOf(outline);
  const [from, to] = [defined(points[0]), defined(points.at(-1))];
  const middle = interpolate(from, to, 0.5);
  const along = normalise(subtract(to, from)) ?? { x: 1, y: 0 };
  const away = perpendicular(along);
  const centre = centroidOfRing(outline) ?? middle;
  const mirrored = dot(subtract(centre, middle), along) < 0;
  const first = mirrored ? scale(along, -1) : along;
  return {
    into: (point) => ({ x: dot(subtract(point, middle), first), y: dot(subtract(point, middle), away) }),
    back: ({ x, y }) => add(middle, add(scale(first, x), scale(away, y))),
    mirrored,
  };
}

function placed(ring: Ring, { into, mirrored }: OwnFrame): Ring {
  const points = pointsOf(ring).map(into);
  return ringOfPoints(mirrored ? points.reverse() : points);
}

/** Both ends of the root stay, though it may run straight on from the outline. */
function simplified(outline: Ring, tolerance: number): Ring {
  const points = pointsOf(simplifyRing(outline, tolerance));
  const [end, last] = [pointsOf(outline).at(-1), points.at(-1)];
  return ringOfPoints(end && last && distance(end, last) > 0 ? [...points, end] : points);
}

/** The ring with points no farther apart than `spacing` mm, but for its last edge: that is the root. */
function withEvenPoints(ring: Ring, spacing: number): Ring {
  const points: number[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const [x, y] = [defined(ring[i]), defined(ring[i + 1])];
    points.push(x, y);
    if (i + 2 === ring.length) break;
    const [dx, dy] = [defined(ring[i + 2]) - x, defined(ring[i + 3]) - y];
    const count = Math.ceil(Math.hypot(dx, dy) / spacing);
    for (let k = 1; k < count; k += 1) points.push(x + (k / count) * dx, y + (k / count) * dy);
  }
  return Float64Array.from(points);
}

/** The course of a loose part, stretch by stretch: how long each is, and how much of the width bears. Sheet mm. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';
import { SAME_POINT } from '../../geometry/base/tolerances';
import { add, distance, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import type { CourseStep } from './course';
import { materialAcross, openWithin } from './section';

/** A loose part: its outline runs from one end of the root to the other, with positive area. */
export interface LoosePart {
  readonly outline: Ring;
  readonly holes: readonly Ring[];
}

export interface Stretch {
  readonly from: Point;
  readonly to: Point;
  readonly middle: Point;
  /** mm */
  readonly length: number;
  /** mm: how much of the width bears. */
  bearing: number;
}

/**
 * Beside a narrow place not all of a wide one bears: the width that does grows by so many mm in each mm of course. Rounded
 * from what finite elements gave (`test/outside/lift.test.ts`).
 */
const SPREAD = 3;
/** mm: no width is less, so that what is cut through bends far and not without end. */
const LEAST_WIDTH = SAME_POINT;

/** For each step the stretch that leads to its section; that of the first one is the root, without length. */
export function stretchesOf(steps: readonly CourseStep[], { outline, holes }: LoosePart): Stretch[] {
  const stretches = steps.map(({ from: before, middle: to }): Stretch => {
    const from = steps[before]?.middle ?? to;
    const length = distance(from, to);
    const middle = interpolate(from, to, 0.5);
    const across = normalise(perpendicular(subtract(to, from)));
    const width = across ? materialAcross(outline, holes, middle, across) : Infinity;
    return { from, to, middle, length, bearing: Math.max(LEAST_WIDTH, width) };
  });
  const [root] = stretches;
  if (root) root.bearing = Math.max(LEAST_WIDTH, rootWidth(outline, holes));
  spread(steps, stretches);
  return stretches;
}

/** mm of material: looked at just inside. */
function rootWidth(outline: Ring, holes: readonly Ring[]): number {
  const [from, to] = [pointAt(outline, outline.length / 2 - 1), pointAt(outline, 0)];
  const along = normalise(subtract(to, from));
  if (!along) return 0;
  const width = distance(from, to);
  const place = add(interpolate(from, to, 0.5), scale(perpendicular(along), SAME_POINT));
  return width - holes.reduce((sum, hole) => sum + openWithin(hole, place, along, -width / 2, width / 2), 0);
}

function pointAt(ring: Ring, i: number): Point {
  return { x: defined(ring[2 * i]), y: defined(ring[2 * i + 1]) };
}

/** What bears spreads from the root outward, and from each narrow place back towards the root. */
function spread(steps: readonly CourseStep[], stretches: readonly Stretch[]): void {
  const ends = new Float64Array(steps.length);
  const outward = steps.map(({ from }, i) => {
    const { length, bearing } = defined(stretches[i]);
    const start = from < 0 ? bearing : defined(ends[from]);
    ends[i] = Math.min(bearing, start + SPREAD * length);
    return from < 0 ? bearing : meanWidth(start, bearing, length);
  });
  const widest = new Float64Array(steps.length);
  for (let i = steps.length - 1; i > 0; i -= 1) {
    const stretch = defined(stretches[i]);
    const { length, bearing } = stretch;
    const end = defined(widest[i]) > 0 ? defined(widest[i]) : bearing;
    const { from } = defined(steps[i]);
    widest[from] = Math.max(defined(widest[from]), Math.min(bearing, end + SPREAD * length));
    stretch.bearing = Math.min(defined(outward[i]), meanWidth(end, bearing, length));
  }
}

/** mm: a stretch that widens from `start` to at most `full` mm bends as much as one that is all along so wide. */
function meanWidth(start: number, full: number, length: number): number {
  if (start >= full) return full;
  const grown = Math.min(full, start + SPREAD * length);
  const widening = (grown - start) / SPREAD;
  return length / (Math.log(grown / start) / SPREAD + (length - widening) / full);
}

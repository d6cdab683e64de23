/**
 * The course of a loose part of the sheet, from its root outward: a tree. The part's outline is triangulated; inner sides
 * of triangles run from bank to bank, so that their middles follow the part wherever it bends or forks (the chordal axis,
 * L. Prasad, 1997). Sheet mm.
 */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';
import { centroidOfRing, signedArea } from '../../geometry/base/ring';
import { distance, interpolate } from '../../geometry/base/vector';
import { nextSide, triangulateRing } from '../../geometry/polygon/triangulate';

/** mm² with the first moments in mm³. */
export interface Mass {
  area: number;
  momentX: number;
  momentY: number;
}

/** A triangle of the part, by the side that leads to it from the root. */
export interface CourseStep {
  /** The step before; −1 for the first one, at the root. */
  readonly from: number;
  /** The middle of that side. */
  readonly middle: Point;
  /** The corner that is not on that side. */
  readonly corner: Point;
  /** Of this triangle and all beyond it. */
  readonly beyond: Mass;
}

/**
 * @param outline from one end of the root round the part to the other, turning so that its area is positive
 * @param holes of the part
 * @returns steps, each after the one it comes from; undefined where the outline crosses itself
 */
export function courseOf(outline: Ring, holes: readonly Ring[]): CourseStep[] | undefined {
  const triangles = triangulateRing(outline);
  if (!triangles) return undefined;
  const { corners, across } = triangles;
  const last = outline.length / 2 - 1;
  const root = corners.findIndex((corner, side) => corner === last && corners[nextSide(side)] === 0);
  if (root < 0) return undefined;
  const at = (side: number): Point => pointOf(outline, defined(corners[side]));
  const steps: CourseStep[] = [];
  const queue = [{ from: -1, side: root }];
  for (const { from, side } of queue) {
    const [left, right] = [nextSide(side), nextSide(nextSide(side))];
    const [a, b, c] = [at(side), at(left), at(right)];
    const number = steps.length;
    steps.push({ from, middle: interpolate(a, b, 0.5), corner: c, beyond: massOf(a, b, c) });
    for (const way of [left, right])
      if (defined(across[way]) >= 0) queue.push({ from: number, side: defined(across[way]) });
  }
  takeHolesAway(steps, holes);
  sumUp(steps);
  return steps;
}

function pointOf(ring: Ring, i: number): Point {
  return { x: defined(ring[2 * i]), y: defined(ring[2 * i + 1]) };
}

function massOf(a: Point, b: Point, c: Point): Mass {
  const area = Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2;
  return { area, momentX: (area * (a.x + b.x + c.x)) / 3, momentY: (area * (a.y + b.y + c.y)) / 3 };
}

/** The load does not press on holes. */
function takeHolesAway(steps: readonly CourseStep[], holes: readonly Ring[]): void {
  for (const hole of holes) {
    const centre = centroidOfRing(hole);
    const under = centre && nearestStep(steps, centre);
    if (!centre || !under) continue;
    const area = Math.abs(signedArea(hole));
    under.beyond.area -= area;
    under.beyond.momentX -= area * centre.x;
    under.beyond.momentY -= area * centre.y;
  }
}

function nearestStep(steps: readonly CourseStep[], place: Point): CourseStep | undefined {
  const far = ({ middle, corner }: CourseStep) => distance(interpolate(middle, corner, 1 / 3), place);
  return steps.reduce<CourseStep | undefined>(
    (best, step) => (best && far(best) <= far(step) ? best : step),
    undefined,
  );
}

function sumUp(steps: readonly CourseStep[]): void {
  for (let i = steps.length - 1; i > 0; i -= 1) {
    const { from, beyond } = defined(steps[i]);
    const before = defined(steps[from]).beyond;
    before.area += beyond.area;
    before.momentX += beyond.momentX;
    before.momentY += beyond.momentY;
  }
}

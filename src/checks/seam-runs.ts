/** Places along the seams of neighbouring colours, gathered so that each seam is told once. Millimetres. */
import type { Point } from '../geometry/base/curve-types';
import type { Box } from '../geometry/base/polygon-types';
import { boxesTouch, growBox, joinBoxes } from '../geometry/base/ring';
import { nearestApproach, type Segment } from '../geometry/spatial/segment-distance';
import type { BareGap, ShortOverlap } from '../stack/index';

/** In slips: places of the same two colours that are nearer to each other lie on one run of their seam. */
const RUN = 10;

/** In slips: where three colours meet, what goes no farther along another seam is a part of that. */
const JUNCTION = 2;

/** In slips: a place that is shorter is seen by nobody. At 0.5 mm it is a spot of 0.5 × 1 mm at worst. */
export const SEEN = 2;

/** Parts of the seam of two colours in one run, the one that bears least first. */
export type Run<Place> = readonly [Place, ...Place[]];

/**
 * All that are seen, without what a third colour that meets a longer seam in a point adds to it, in runs.
 * @param slip mm
 */
export function overlapRuns(overlaps: readonly ShortOverlap[], slip: number): Run<ShortOverlap>[] {
  const seen = overlaps.filter(({ length }) => length >= SEEN * slip);
  const own = seen.filter((overlap) => !seen.some((other) => isJunctionOf(overlap, other, slip)));
  return gather(own, RUN * slip, courseOf);
}

/** The same of bare ground; a hairline that is no longer than that is not seen. */
export function gapRuns(gaps: readonly BareGap[], slip: number): Run<BareGap>[] {
  const seen = gaps.filter(({ length, width }) => length >= SEEN * slip || width >= HAIRLINE * slip);
  return gather(seen, RUN * slip, ({ extent }) => ({ segments: sidesOf(extent), box: extent }));
}

function sidesOf({ minX, minY, maxX, maxY }: Box): Segment[] {
  return [
    { ax: minX, ay: minY, bx: maxX, by: minY },
    { ax: maxX, ay: minY, bx: maxX, by: maxY },
    { ax: maxX, ay: maxY, bx: minX, by: maxY },
    { ax: minX, ay: maxY, bx: minX, by: minY },
  ];
}

/** In slips: 0.2 mm at 0.5 mm, in which a spot of no length is lost beside the soft edge of spray. */
const HAIRLINE = 0.4;

/** The parts of a run as one. */
export function joined(run: Run<ShortOverlap>): ShortOverlap {
  const [first] = run;
  return {
    ...first,
    length: run.reduce((sum, { length }) => sum + length, 0),
    runsOut: run.some(({ runsOut }) => runsOut),
    course: run.flatMap(({ course }) => course),
  };
}

interface Course {
  readonly segments: readonly Segment[];
  readonly box: Box;
}

function courseOf({ course }: ShortOverlap): Course {
  return { segments: course, box: joinBoxes(course.map(boxOf)) };
}

function gather<Place extends ShortOverlap | BareGap>(
  places: readonly Place[],
  reach: number,
  courseFor: (place: Place) => Course,
): Run<Place>[] {
  const runs: { places: [Place, ...Place[]]; courses: Course[] }[] = [];
  for (const place of places) {
    const course = courseFor(place);
    const met = runs.filter(
      ({ places: [first], courses }) =>
        first.earlier === place.earlier &&
        first.later === place.later &&
        courses.some((other) => areNear(course, other, reach)),
    );
    const [into, ...others] = met;
    if (!into) {
      runs.push({ places: [place], courses: [course] });
      continue;
    }
    into.places.push(place, ...others.flatMap((run) => run.places));
    into.courses.push(course, ...others.flatMap((run) => run.courses));
    for (const run of others) runs.splice(runs.indexOf(run), 1);
  }
  return runs.map(({ places: own }) => own.sort((a, b) => a.width - b.width || b.length - a.length));
}

function areNear(a: Course, b: Course, reach: number): boolean {
  const around = growBox(a.box, reach);
  if (!boxesTouch(around, b.box)) return false;
  const near = b.segments.filter((segment) => boxesTouch(around, boxOf(segment)));
  return a.segments.some((segment) => near.some((other) => isWithin(segment, other, reach)));
}

function isWithin(segment: Segment, other: Segment, reach: number): boolean {
  if (!boxesTouch(growBox(boxOf(segment), reach), boxOf(other))) return false;
  return nearestApproach(segment, { from: 0, to: 1 }, other).distance <= reach;
}

/** Whether all of an overlap lies within a junction of a longer seam that has one of its colours. */
function isJunctionOf(overlap: ShortOverlap, other: ShortOverlap, slip: number): boolean {
  if (other.length <= overlap.length || overlap.length > 2 * JUNCTION * slip) return false;
  const layers = [overlap.earlier, overlap.later].filter((layer) => layer === other.earlier || layer === other.later);
  if (layers.length !== 1) return false;
  const ends = overlap.course.flatMap(({ ax, ay, bx, by }): Point[] => [
    { x: ax, y: ay },
    { x: bx, y: by },
  ]);
  return ends.every(({ x, y }) =>
    other.course.some((segment) => isWithin({ ax: x, ay: y, bx: x, by: y }, segment, JUNCTION * slip)),
  );
}

function boxOf({ ax, ay, bx, by }: Segment): Box {
  return { minX: Math.min(ax, bx), minY: Math.min(ay, by), maxX: Math.max(ax, bx), maxY: Math.max(ay, by) };
}

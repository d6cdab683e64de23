/** Courses along lines, and how far they keep to other ones. Millimetres. */
import { defined } from '../../../base/defined';
import type { Region } from '../../../geometry/base/polygon-types';
import { forEachEdge, ringsOf } from '../../../geometry/base/ring';
import { indexBoxes } from '../../../geometry/spatial/clusters';
import { intervalWithin, type ParameterInterval, type Segment } from '../../../geometry/spatial/segment-distance';

export function outlineOf(region: Region): Segment[] {
  const segments: Segment[] = [];
  const add = (ax: number, ay: number, bx: number, by: number) => segments.push({ ax, ay, bx, by });
  for (const ring of region.flatMap(ringsOf)) forEachEdge(ring, add);
  return segments;
}

/** Whether any place of a course comes within `reach` of another one. */
export function isCourseNear(course: readonly Segment[], other: readonly Segment[], reach: number): boolean {
  return someNear(course, other, reach, () => true);
}

/** How much of a course lies farther than `reach` from another one. */
export function lengthBeyond(course: readonly Segment[], other: readonly Segment[], reach: number): number {
  const within = new Map<Segment, ParameterInterval[]>();
  someNear(course, other, reach, (segment, interval) => {
    within.set(segment, [...(within.get(segment) ?? []), interval]);
    return false;
  });
  return course.reduce((sum, segment) => {
    const { ax, ay, bx, by } = segment;
    return sum + Math.hypot(bx - ax, by - ay) * (1 - covered(within.get(segment) ?? []));
  }, 0);
}

/** @param visit whether that is enough to know */
function someNear(
  course: readonly Segment[],
  other: readonly Segment[],
  reach: number,
  visit: (segment: Segment, interval: ParameterInterval) => boolean,
): boolean {
  if (other.length === 0) return false;
  const index = indexBoxes(other.map(boxOf));
  return course.some((segment) => {
    const { minX, minY, maxX, maxY } = boxOf(segment);
    return index.search(minX - reach, minY - reach, maxX + reach, maxY + reach).some((near) => {
      const interval = intervalWithin(segment, defined(other[near]), reach);
      return interval !== undefined && visit(segment, interval);
    });
  });
}

/** Which share of a segment some stretches of it make up. */
function covered(intervals: readonly ParameterInterval[]): number {
  let [sum, reached] = [0, 0];
  for (const { from, to } of [...intervals].sort((a, b) => a.from - b.from)) {
    sum += Math.max(0, to - Math.max(from, reached));
    reached = Math.max(reached, to);
  }
  return sum;
}

function boxOf({ ax, ay, bx, by }: Segment) {
  return { minX: Math.min(ax, bx), minY: Math.min(ay, by), maxX: Math.max(ax, bx), maxY: Math.max(ay, by) };
}

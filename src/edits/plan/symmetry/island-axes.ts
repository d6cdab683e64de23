/** Axes about which an island and the gap round it are mirrored. Sheet mm. */

import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { forEachEdge } from '../../../geometry/base/ring';
import { PLAINLY_BESIDE } from '../../../geometry/base/tolerances';
import { add, dot, perpendicular, scale, subtract } from '../../../geometry/base/vector';
import { nearestSegment, type SegmentIndex } from '../../../geometry/spatial/segment-index';
import type { BridgeCandidate } from '../candidates';

/** A line through the island's middle. */
export interface Axis {
  readonly middle: Point;
  /** Of length 1. */
  readonly along: Point;
}

export interface Symmetry {
  /** Upright and level ones first. */
  readonly axes: readonly Axis[];
  /** Whether it looks the same after a third of a turn, as a disc does. */
  readonly threefold: boolean;
}

/** mm: an outline and its mirror image that lie within this of each other are the same to the eye and the knife. */
export const MIRRORED = PLAINLY_BESIDE;

/** So many places of the outline are looked at. */
const SAMPLES = 120;

/** Axes whose directions differ by less than this, in radians, are one. */
const SAME_DIRECTION = 0.02;

export function mirror({ x, y }: Point, { middle, along }: Axis): Point {
  const across = perpendicular(along);
  const off = dot(subtract({ x, y }, middle), across);
  return add({ x, y }, scale(across, -2 * off));
}

function turned({ middle, along: { x, y } }: Axis, angle: number): Axis {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { middle, along: { x: x * cos - y * sin, y: x * sin + y * cos } };
}

/**
 * The axes of an island: those of its outline about which the far side of its gap, where ways across meet it, is
 * mirrored as well.
 * @param ways across the gap, as far round the island as they go
 */
export function symmetryOf(
  pieces: SegmentIndex,
  island: number,
  outer: Ring,
  middle: Point,
  ways: readonly BridgeCandidate[],
): Symmetry {
  const samples = samplesOf(outer);
  const isOwn = (edge: number) => pieces.polygon[edge] === island;
  const near = (point: Point, own: boolean) =>
    nearestSegment(pieces, point, MIRRORED, (edge) => isOwn(edge) === own) !== undefined;
  const isAxis = (axis: Axis) =>
    samples.every((point) => near(mirror(point, axis), true)) && ways.every(({ to }) => near(mirror(to, axis), false));
  const axes = directionsOf(outer, middle)
    .map((along): Axis => ({ middle, along }))
    .filter(isAxis);
  return { axes, threefold: axes.some((axis) => isAxis(turned(axis, Math.PI / 3))) };
}

/** Upright, level, the principal axes, and along, across and between the longest edge and its normal. */
function directionsOf(outer: Ring, middle: Point): Point[] {
  const principal = principalAngle(outer, middle);
  const edge = longestEdgeAngle(outer);
  const quarter = Math.PI / 2;
  const angles = [quarter, 0, principal, principal + quarter];
  angles.push(edge, edge + quarter, edge + quarter / 2, edge - quarter / 2);
  const kept: number[] = [];
  for (const angle of angles) {
    if (kept.every((other) => Math.abs(Math.sin(angle - other)) > SAME_DIRECTION)) kept.push(angle);
  }
  return kept.map((angle) => ({ x: Math.cos(angle), y: Math.sin(angle) }));
}

/** Of the outline as a wire: an axis of symmetry is a principal axis, or all directions are alike. */
function principalAngle(outer: Ring, { x: cx, y: cy }: Point): number {
  let [xx, xy, yy] = [0, 0, 0];
  forEachEdge(outer, (ax, ay, bx, by) => {
    const length = Math.hypot(bx - ax, by - ay);
    // Simpson's rule is exact for the square of a linear function.
    for (const [share, weight] of [
      [0, 1],
      [0.5, 4],
      [1, 1],
    ] as const) {
      const [x, y] = [ax + share * (bx - ax) - cx, ay + share * (by - ay) - cy];
      xx += weight * length * x * x;
      xy += weight * length * x * y;
      yy += weight * length * y * y;
    }
  });
  return Math.atan2(2 * xy, xx - yy) / 2;
}

function longestEdgeAngle(outer: Ring): number {
  let [longest, angle] = [0, 0];
  forEachEdge(outer, (ax, ay, bx, by) => {
    const length = Math.hypot(bx - ax, by - ay);
    if (length > longest + MIRRORED) [longest, angle] = [length, Math.atan2(by - ay, bx - ax)];
  });
  return angle;
}

/** Evenly along the ring by number of edges, the corners of long edges among them. */
function samplesOf(outer: Ring): Point[] {
  const points: Point[] = [];
  forEachEdge(outer, (ax, ay, bx, by) => {
    points.push({ x: ax, y: ay }, { x: (ax + bx) / 2, y: (ay + by) / 2 });
  });
  checkpoint(SAMPLES);
  const step = Math.max(1, points.length / SAMPLES);
  return Array.from({ length: Math.floor(points.length / step) }, (_, i) => points[Math.floor(i * step)] as Point);
}

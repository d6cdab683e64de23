/** Lines that a shape may be mirrored about. Sheet mm. */
import type { Point } from '../../../geometry/base/curve-types';
import { add, dot, normalise, perpendicular, scale, subtract } from '../../../geometry/base/vector';
import type { RingShape } from './ring-shape';

export interface Axis {
  readonly point: Point;
  /** Of length 1, upwards on the screen, or to the right where it is level. */
  readonly along: Point;
}

/** Of the moments of a shape the largest few say where its axes are. */
const MOMENTS_ASKED = 2;
/** Sine of the angle below which an axis counts as upright or level, and two directions as one. */
const SAME_DIRECTION = 0.01;

export function mirrorAbout({ point, along }: Axis, place: Point): Point {
  const across = perpendicular(along);
  return add(place, scale(across, -2 * dot(subtract(place, point), across)));
}

/** The axis about which the second place is the mirror image of the first. */
export function axisBetween(a: Point, b: Point): Axis | undefined {
  const along = normalise(perpendicular(subtract(b, a)));
  return along && { point: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, along: upwards(along) };
}

/** The axes that a shape may have: upright and level, then those that its moments allow for. */
export function axesThrough({ middle, moments }: RingShape): Axis[] {
  const angles = [Math.PI / 2, 0];
  const ranked = moments.map(({ size, angle }, i) => ({ size, angle, k: i + 1 })).sort((a, b) => b.size - a.size);
  for (const { angle, k } of ranked.slice(0, MOMENTS_ASKED)) {
    for (let turn = 0; turn < k; turn += 1) angles.push((angle + Math.PI * turn) / k);
  }
  const kept: number[] = [];
  for (const angle of angles) {
    if (kept.every((other) => Math.abs(Math.sin(angle - other)) > SAME_DIRECTION)) kept.push(angle);
  }
  return kept.map((angle) => ({ point: middle, along: upwards(directionAt(angle)) }));
}

function directionAt(angle: number): Point {
  const quarters = (2 * angle) / Math.PI;
  // Sines and cosines of right angles are not quite 0 in numbers.
  if (Number.isInteger(quarters)) return quarters % 2 === 0 ? { x: 1, y: 0 } : { x: 0, y: 1 };
  return { x: Math.cos(angle), y: Math.sin(angle) };
}

/** The same line, named in one way only. */
export function upwards(along: Point): Point {
  const level = Math.abs(along.y) < 1e-9;
  return (level ? along.x < 0 : along.y > 0) ? scale(along, -1) : along;
}

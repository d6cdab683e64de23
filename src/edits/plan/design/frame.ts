/** A drawing as seen by somebody who holds it upright in another way: x to the right, y upwards. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Box, Ring } from '../../../geometry/base/polygon-types';
import { dot } from '../../../geometry/base/vector';

export interface Frame {
  /** Both of length 1, square to each other. */
  readonly right: Point;
  readonly up: Point;
}

/** @param angle radians by which the line of letters is turned, clockwise on the screen */
export function frameAt(angle: number): Frame {
  const [cos, sin] = angle === 0 ? [1, 0] : [Math.cos(angle), Math.sin(angle)];
  return { right: { x: cos, y: sin }, up: { x: sin, y: -cos } };
}

/** In the coordinates of the frame: y grows upwards. */
export function boxIn({ right, up }: Frame, ring: Ring): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  checkpoint(ring.length / 8);
  for (let i = 0; i < ring.length; i += 2) {
    const point = { x: defined(ring[i]), y: defined(ring[i + 1]) };
    const [x, y] = [dot(point, right), dot(point, up)];
    [minX, minY] = [Math.min(minX, x), Math.min(minY, y)];
    [maxX, maxY] = [Math.max(maxX, x), Math.max(maxY, y)];
  }
  return { minX, minY, maxX, maxY };
}

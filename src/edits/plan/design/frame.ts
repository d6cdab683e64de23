/** A drawing as seen by somebody who holds it upright in another way: x to the right, y upwards. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Box, Region, Ring } from '../../../geometry/base/polygon-types';
import { forEachEdge, ringsOf } from '../../../geometry/base/ring';
import { dot } from '../../../geometry/base/vector';

export interface Frame {
  /** Both of length 1, square to each other. */
  readonly right: Point;
  readonly up: Point;
}

/** @param angle radians by which the line of letters is turned, clockwise on the screen */
export function frameAt(angle: number): Frame {
  const [cos, sin] = [exact(Math.cos(angle)), exact(Math.sin(angle))];
  return { right: { x: cos, y: sin }, up: { x: sin, y: -cos } };
}

/** Sines and cosines of right angles are not quite whole in numbers. */
function exact(value: number): number {
  const whole = Math.round(value);
  return Math.abs(value - whole) < 1e-12 ? whole : value;
}

/** Bins of a degree, and so many degrees until a square looks the same again. */
const FINE = 2;
const QUARTER = 90;
/** Degrees within which edges are of one direction. */
const WITHIN = 0.5;
/** So much of all edges, by the squares of their lengths, must run along or square to a line of letters. */
const LEAST_SHARE = 0.1;
/** So many directions are tried besides level ones. */
const MOST = 2;

/** As drawn, and turned as most of the edges are: a word may run in any direction. */
export function framesFor(openings: Region): [Frame, ...Frame[]] {
  const bins = new Float64Array(QUARTER * FINE);
  for (const ring of openings.flatMap(ringsOf)) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const turn = (Math.atan2(y1 - y0, x1 - x0) * 180) / Math.PI + 2 * QUARTER;
      const bin = Math.round((turn % QUARTER) * FINE) % bins.length;
      bins[bin] = defined(bins[bin]) + (x1 - x0) ** 2 + (y1 - y0) ** 2;
    });
  }
  const turns = directionsIn(bins).flatMap((turn) => [turn, turn - QUARTER]);
  const frame = (turn: number) => frameAt((turn * Math.PI) / 180);
  return [frame(0), frame(-QUARTER), ...turns.map(frame)];
}

/** Degrees from 0 to 90, the strongest first; level and upright ones are none. */
function directionsIn(bins: Float64Array): number[] {
  const all = bins.reduce((sum, strength) => sum + strength, 0);
  const near = (bin: number) =>
    [...Array(2 * WITHIN * FINE + 1).keys()].map((i) => (bin + i - WITHIN * FINE + bins.length) % bins.length);
  const ranked = [...bins.keys()]
    .map((bin) => ({ bin, strength: near(bin).reduce((sum, other) => sum + defined(bins[other]), 0) }))
    .filter(({ strength }) => strength >= LEAST_SHARE * all)
    .sort((a, b) => b.strength - a.strength || a.bin - b.bin);
  const kept: number[] = [0];
  for (const { bin } of ranked) {
    const apart = (other: number) => Math.min(Math.abs(bin - other), bins.length - Math.abs(bin - other));
    if (kept.every((other) => apart(other) > 4 * WITHIN * FINE)) kept.push(bin);
  }
  return kept.slice(1, 1 + MOST).map((bin) => bin / FINE);
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

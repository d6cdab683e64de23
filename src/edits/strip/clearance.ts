/** Keeps the sides of strips off the curves that they would run along. */

import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { crossFrom, distance } from '../../geometry/base/vector';
import { boundsOf, pointAt } from '../../geometry/curve/index';
import { indexStrips } from './shapes-near';
import { cornerAt, type Strip } from './strip';

/** Curves nearer to a side than this share of the strip's width, all along, run along it. */
const ALONG = 1e-5;
/** By this share a strip grows when a curve runs along its side: 0.4 µm for a bridge of 0.8 mm. */
const GROWTH = 1e-3;
const TRIES = 4;

/** The strips, each as it is or larger by a hair, so that no curve runs along its border. */
export function nudgeStrips(strips: readonly Strip[], subpaths: readonly (readonly Curve[])[]): Strip[] {
  const index = indexStrips(strips);
  const near = strips.map((): Curve[] => []);
  for (const curve of subpaths.flat()) for (const number of index(boundsOf(curve))) near[number]?.push(curve);
  return strips.map((strip, number) => nudgeStrip(strip, defined(near[number])));
}

function nudgeStrip(strip: Strip, curves: readonly Curve[]): Strip {
  let clear = strip;
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const tried = clear;
    if (!curves.some((curve) => runsAlong(curve, tried))) break;
    clear = growStrip(strip, 1 + GROWTH * (attempt + 1));
  }
  return clear;
}

function runsAlong(curve: Curve, strip: Strip): boolean {
  const [a, b, c] = strip.corners;
  const enough = ALONG * Math.min(distance(a, b), distance(b, c));
  const points = [curve.start, pointAt(curve, 1 / 3), pointAt(curve, 2 / 3), curve.end];
  return strip.corners.some((corner, index) => {
    const next = cornerAt(strip, index + 1);
    const size = distance(corner, next);
    return points.every((point) => Math.abs(crossFrom(corner, next, point)) <= enough * size);
  });
}

function growStrip({ corners }: Strip, factor: number): Strip {
  const centre = { x: mean(corners.map(({ x }) => x)), y: mean(corners.map(({ y }) => y)) };
  const [a, b, c, d] = corners.map(({ x, y }) => ({
    x: centre.x + (x - centre.x) * factor,
    y: centre.y + (y - centre.y) * factor,
  })) as [Point, Point, Point, Point];
  return { corners: [a, b, c, d] };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

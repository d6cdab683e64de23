/** Regions and lines as the text of SVG paths. */
import type { Curve, Point } from '../geometry/base/curve-types';
import type { Region, Ring } from '../geometry/base/polygon-types';
import { DRAWN_ALIKE } from '../geometry/base/tolerances';
import { flattenCurve } from '../geometry/curve/flatten';

/** SVG path data of a region, in its own units (mm), to the micrometre. Fill it by the even-odd rule. */
export function pathData(region: Region): string {
  const rings = region.flatMap(({ outer, holes }) => [outer, ...holes]);
  return rings
    .filter(({ length }) => length >= 6)
    .map(ringPath)
    .join('');
}

/** The same of one ring, which may be a line or a point. */
export function ringPath(ring: Ring): string {
  const points: string[] = [];
  for (let index = 0; index + 1 < ring.length; index += 2) {
    points.push(`${decimal(ring[index]!)} ${decimal(ring[index + 1]!)}`);
  }
  return points.length === 0 ? '' : `M${points.join('L')}Z`;
}

/**
 * Path data of curves one after the other, as chords; it is not closed, unless the last ends where the first begins.
 * @param by how far all is moved
 */
export function linePath(curves: readonly Curve[], by: Point = { x: 0, y: 0 }): string {
  const first = curves[0]?.start;
  if (!first) return '';
  const pair = (x: number, y: number) => `${decimal(x + by.x)} ${decimal(y + by.y)}`;
  const ends: number[] = [];
  for (const curve of curves) flattenCurve(curve, DRAWN_ALIKE, ends);
  const points: string[] = [];
  for (let i = 0; i + 1 < ends.length; i += 2) points.push(`L${pair(ends[i]!, ends[i + 1]!)}`);
  return `M${pair(first.x, first.y)}${points.join('')}`;
}

/** To three decimals; 0 for what is not finite, so that no word such as `NaN` gets into a picture. */
export function decimal(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return Number.isFinite(rounded) ? String(rounded === 0 ? 0 : rounded) : '0';
}

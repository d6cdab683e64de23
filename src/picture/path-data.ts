/** Regions as the text of SVG paths. */
import type { Region, Ring } from '../geometry/base/polygon-types';

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

/** To three decimals; 0 for what is not finite, so that no word such as `NaN` gets into a picture. */
export function decimal(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return Number.isFinite(rounded) ? String(rounded === 0 ? 0 : rounded) : '0';
}

/** The integer grid on which polygon algebra is done: 0.1 µm. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Box, Ring } from '../base/polygon-types';
import { OVERLAY_GRID } from '../base/tolerances';

/** Grid units per mm. */
export const UNITS_PER_MM = 1 / OVERLAY_GRID;

/** 1 km, in mm: coordinates beyond it are drawn in, so that products of grid coordinates stay sound. */
const MAX_COORDINATE = 1e6;

/** In grid units. Points that are not finite, or fall on their forerunner, are left out. */
export function toGrid(ring: Ring, units = UNITS_PER_MM): Ring {
  checkpoint(ring.length);
  const grid = new Float64Array(ring.length);
  let size = 0;
  for (let index = 0; index + 1 < ring.length; index += 2) {
    const x = roundToGrid(defined(ring[index]), units);
    const y = roundToGrid(defined(ring[index + 1]), units);
    if (Number.isNaN(x) || Number.isNaN(y)) continue;
    if (size > 0 && grid[size - 2] === x && grid[size - 1] === y) continue;
    grid[size] = x;
    grid[size + 1] = y;
    size += 2;
  }
  return grid.subarray(0, size);
}

/** `+ 0` turns −0 into 0. */
function roundToGrid(value: number, units: number): number {
  return Math.round(Math.max(-MAX_COORDINATE, Math.min(MAX_COORDINATE, value)) * units) + 0;
}

/** In mm. */
export function fromGrid(ring: Ring, units = UNITS_PER_MM): Ring {
  checkpoint(ring.length);
  return ring.map((value) => value / units);
}

/** In grid units. */
export function boxToGrid({ minX, minY, maxX, maxY }: Box): Box {
  return {
    minX: roundToGrid(minX, UNITS_PER_MM),
    minY: roundToGrid(minY, UNITS_PER_MM),
    maxX: roundToGrid(maxX, UNITS_PER_MM),
    maxY: roundToGrid(maxY, UNITS_PER_MM),
  };
}

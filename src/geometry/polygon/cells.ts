/** A region cut into cells, each with what lies round it, so that what is looked at in one go stays small. Millimetres. */
import type { Box, Region, Ring } from '../base/polygon-types';
import { boxOfRing, joinBoxes } from '../base/ring';
import { boxToGrid, fromGrid, toGrid, UNITS_PER_MM } from '../boolean/grid';
import { regionFromRings } from '../boolean/index';
import { coreOf, cutIntoTiles, type Tiles } from '../boolean/tiles';

export interface Cell {
  readonly box: Box;
  /** The region in the box and its margin. */
  readonly around: () => Region;
}

/**
 * @param box what the cells cover, as far as rings reach
 * @param count so many cells at most
 * @param least their least size
 * @param margin how far a cell is looked at beyond its border
 */
export function cellsOf(
  rings: readonly Ring[],
  box: Box,
  { count, least, margin }: { count: number; least: number; margin: number },
): Cell[] {
  const onGrid = rings.map((ring) => toGrid(ring));
  const drawn = joinBoxes(onGrid.map(boxOfRing));
  const within = boxToGrid(box);
  const [x, y] = [Math.max(within.minX, drawn.minX), Math.max(within.minY, drawn.minY)];
  const [across, down] = [Math.min(within.maxX, drawn.maxX) - x, Math.min(within.maxY, drawn.maxY) - y];
  const size = Math.ceil(Math.max(least * UNITS_PER_MM, Math.sqrt((across * down) / count)));
  const tiles: Tiles = {
    x,
    y,
    size,
    columns: Math.max(1, Math.ceil(across / size)),
    rows: Math.max(1, Math.ceil(down / size)),
    margin: Math.ceil(margin * UNITS_PER_MM),
  };
  return cutIntoTiles(onGrid, tiles).map((cell, number) => ({
    box: boxFromGrid(coreOf(tiles, number)),
    around: () =>
      regionFromRings(
        cell.map((ring) => fromGrid(ring)),
        'nonzero',
      ),
  }));
}

function boxFromGrid({ minX, minY, maxX, maxY }: Box): Box {
  return {
    minX: minX / UNITS_PER_MM,
    minY: minY / UNITS_PER_MM,
    maxX: maxX / UNITS_PER_MM,
    maxY: maxY / UNITS_PER_MM,
  };
}

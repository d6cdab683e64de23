import type { Box, Region, Ring } from '../base/polygon-types';
import { boxOfRing, growBox, joinBoxes, ringsOf } from '../base/ring';
import { NEAR_EDGE } from '../base/tolerances';
import { boxToGrid, fromGrid, toGrid, UNITS_PER_MM } from '../boolean/grid';
import { clipToBox, difference, offset, regionFromRings, union } from '../boolean/index';
import { coreOf, cutIntoTiles, type Tiles } from '../boolean/tiles';

/** So many edges are looked at in one go: what moving an outline takes grows faster than its edges. */
const MANY = 2000;

/** In widths: cells are no smaller, for round each so much more is looked at. */
const LEAST_CELL = 8;

/** In widths: what lies so far away has no say in what is thin. */
const REACH = 3;

/** What no disc of the width (mm) covers, in a box of a region; nothing where two corners alone face each other. */
export function thinWithin(region: Region, box: Box, width: number): Region {
  const around = clipToBox(region, growBox(box, REACH * width));
  const rings = around.flatMap(ringsOf);
  const edges = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  return edges > MANY ? thinByCells(rings, box, width, edges / MANY) : thinOf(around, box, width);
}

function thinOf(around: Region, box: Box, width: number): Region {
  const covered = offset(offset(offset(around, -width / 2), width / 2), NEAR_EDGE);
  return clipToBox(difference(around, covered), growBox(box, NEAR_EDGE));
}

/** Each cell by itself. What is found reaches a little beyond, so that neighbours grow together again. */
function thinByCells(rings: readonly Ring[], box: Box, width: number, cells: number): Region {
  const onGrid = rings.map((ring) => toGrid(ring));
  const tiles = tilesOver(boxToGrid(box), onGrid, width * UNITS_PER_MM, cells);
  const parts = cutIntoTiles(onGrid, tiles).map((cell, number) => {
    const around = regionFromRings(
      cell.map((ring) => fromGrid(ring)),
      'nonzero',
    );
    return thinOf(around, boxFromGrid(coreOf(tiles, number)), width);
  });
  return clipToBox(union(parts), growBox(box, NEAR_EDGE));
}

/** Over that part of the box where rings are; all in grid units. */
function tilesOver(box: Box, rings: readonly Ring[], width: number, cells: number): Tiles {
  const drawn = joinBoxes(rings.map(boxOfRing));
  const [x, y] = [Math.max(box.minX, drawn.minX), Math.max(box.minY, drawn.minY)];
  const [across, down] = [Math.min(box.maxX, drawn.maxX) - x, Math.min(box.maxY, drawn.maxY) - y];
  const size = Math.ceil(Math.max(LEAST_CELL * width, Math.sqrt((across * down) / cells)));
  return {
    x,
    y,
    size,
    columns: Math.max(1, Math.ceil(across / size)),
    rows: Math.max(1, Math.ceil(down / size)),
    margin: Math.ceil(REACH * width),
  };
}

function boxFromGrid({ minX, minY, maxX, maxY }: Box): Box {
  return {
    minX: minX / UNITS_PER_MM,
    minY: minY / UNITS_PER_MM,
    maxX: maxX / UNITS_PER_MM,
    maxY: maxY / UNITS_PER_MM,
  };
}

import type { Box, Region, Ring } from '../base/polygon-types';
import { edgesIn, growBox, ringsOf } from '../base/ring';
import { NEAR_EDGE } from '../base/tolerances';
import { clipToBox, difference, offset, union } from '../boolean/index';
import { cellsOf } from './cells';

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
  const edges = edgesIn(rings);
  return edges > MANY ? thinByCells(rings, box, width, edges / MANY) : thinOf(around, box, width);
}

function thinOf(around: Region, box: Box, width: number): Region {
  const covered = offset(offset(around, -width / 2), width / 2 + NEAR_EDGE);
  return clipToBox(difference(around, covered), growBox(box, NEAR_EDGE));
}

/** Each cell by itself. What is found reaches a little beyond, so that neighbours grow together again. */
function thinByCells(rings: readonly Ring[], box: Box, width: number, count: number): Region {
  const cells = cellsOf(rings, box, { count, least: LEAST_CELL * width, margin: REACH * width });
  const parts = cells.map((cell) => thinOf(cell.around(), cell.box, width));
  return clipToBox(union(parts), growBox(box, NEAR_EDGE));
}

/**
 * A stack in cells: each is measured by itself, and not again while nothing in it changes. Results do not depend on how
 * the cells lie, beyond the grid of 0.1 µm.
 */

import { defined } from '../base/defined';
import type { Box, Region, Ring } from '../geometry/base/polygon-types';
import { edgesIn, isSameRing, ringsOf } from '../geometry/base/ring';
import { toGrid, UNITS_PER_MM } from '../geometry/boolean/grid';
import { coreOf, cutIntoTiles, type Tiles } from '../geometry/boolean/tiles';
import { CRACK, measureTile, type TileLayer, type TileSeams } from './tile-seams';

/** What is kept of a run. */
export interface MeasuredTiles {
  readonly slip: number;
  readonly cells: Tiles;
  /** Of each layer, in painting order. */
  readonly layers: readonly CutLayer[];
  readonly seams: readonly TileSeams[];
}

interface CutLayer {
  readonly openings: Region;
  /** What it has in each cell and its margin, on the grid. */
  readonly rings: readonly (readonly Ring[])[];
}

/** Edges in a cell, about: few enough to be worked out at once, enough to outweigh the margin. */
const EDGES_PER_TILE = 1000;

/** The least side of a cell, in margins. */
const MIN_SIDE = 4;

const MAX_TILES_PER_SIDE = 64;

/**
 * @param layers what is cut, in painting order
 * @param frame mm
 * @param slip mm
 * @param earlier kept where it still holds
 */
export function measureTiles(
  layers: readonly Region[],
  frame: Box,
  slip: number,
  earlier?: MeasuredTiles,
): MeasuredTiles {
  const known = earlier?.slip === slip && fits(earlier.cells, frame) ? earlier : undefined;
  const cells = known?.cells ?? divideIntoTiles(layers, frame, slip);
  const cut = layers.map((openings, i) => cutLayer(openings, cells, known?.layers[i]));
  const sameStack = known?.layers.length === layers.length ? known : undefined;
  const seams = Array.from({ length: cells.columns * cells.rows }, (_, cell) => {
    const before = sameStack?.seams[cell];
    const same = before && cut.every(({ rings }, i) => sameRings(rings[cell], sameStack?.layers[i]?.rings[cell]));
    return same ? before : measureTile(layersIn(cut, cell), coreOf(cells, cell), slip);
  });
  return { slip, cells, layers: cut, seams };
}

function cutLayer(openings: Region, cells: Tiles, known: CutLayer | undefined): CutLayer {
  if (known?.openings === openings) return known;
  const rings = openings
    .flatMap(ringsOf)
    .map((ring) => toGrid(ring))
    .filter((ring) => ring.length >= 6);
  return { openings, rings: cutIntoTiles(rings, cells) };
}

function layersIn(cut: readonly CutLayer[], cell: number): TileLayer[] {
  return cut
    .map(({ rings }, layer) => ({ layer, rings: defined(rings[cell]) }))
    .filter(({ rings }) => rings.length > 0);
}

function sameRings(a: readonly Ring[] = [], b: readonly Ring[] = []): boolean {
  return a === b || (a.length === b.length && a.every((ring, i) => isSameRing(ring, defined(b[i]))));
}

function divideIntoTiles(layers: readonly Region[], frame: Box, slip: number): Tiles {
  const edges = layers.reduce((sum, openings) => sum + edgesIn(openings.flatMap(ringsOf)), 0);
  const [x, y] = [Math.floor(frame.minX * UNITS_PER_MM), Math.floor(frame.minY * UNITS_PER_MM)];
  const width = Math.max(1, Math.ceil(frame.maxX * UNITS_PER_MM) - x);
  const height = Math.max(1, Math.ceil(frame.maxY * UNITS_PER_MM) - y);
  const margin = Math.ceil((3 * slip + 20 * CRACK) * UNITS_PER_MM);
  const wished = Math.sqrt((width * height * EDGES_PER_TILE) / Math.max(1, edges));
  const size = Math.ceil(Math.max(wished, MIN_SIDE * margin, Math.max(width, height) / MAX_TILES_PER_SIDE));
  return { x, y, size, margin, columns: Math.ceil(width / size), rows: Math.ceil(height / size) };
}

function fits({ x, y, size, columns, rows }: Tiles, { minX, minY, maxX, maxY }: Box): boolean {
  const covers = (start: number, count: number, from: number, to: number): boolean =>
    start === Math.floor(from * UNITS_PER_MM) &&
    count === Math.max(1, Math.ceil((Math.ceil(to * UNITS_PER_MM) - start) / size));
  return covers(x, columns, minX, maxX) && covers(y, rows, minY, maxY);
}

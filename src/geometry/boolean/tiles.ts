/**
 * A plane divided into square cells, so that what changed in one place is worked out there alone; the cells are put
 * together again afterwards. Integer grid.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Box, Ring } from '../base/polygon-types';
import { boxesTouch, boxOfRing, edgesIn, forEachEdge } from '../base/ring';
import { EdgeList } from './edge-set';
import { boxToGrid, fromGrid, toGrid } from './grid';
import { buildPlanarGraph } from './half-edges';
import { traceBorders } from './overlay';
import { snapRound } from './snap-rounding';
import { computeEdgeWindings } from './winding-numbers';

export interface Tiles {
  /** Upper left corner of the first cell; all in grid units, integers. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly columns: number;
  readonly rows: number;
  /** How far a cell is looked at beyond its border. */
  readonly margin: number;
}

/** The cell itself, without its margin. Row by row. */
export function coreOf({ x, y, size, columns }: Tiles, cell: number): Box {
  const [column, row] = [cell % columns, Math.floor(cell / columns)];
  const [minX, minY] = [x + column * size, y + row * size];
  return { minX, minY, maxX: minX + size, maxY: minY + size };
}

/**
 * What of the rings lies in each cell and its margin. Rings that are cut run along the border there, to and fro where
 * need be: winding numbers inside are as before. Rings beyond all cells are lost.
 */
export function cutIntoTiles(rings: readonly Ring[], cells: Tiles): Ring[][] {
  const { x, y, size, columns, rows, margin } = cells;
  const across = distributeToBands(rings, 0, { start: x, size, margin }, 0, columns);
  const result: Ring[][] = Array.from({ length: columns * rows }, () => []);
  across.forEach((column, i) => {
    distributeToBands(column, 1, { start: y, size, margin }, 0, rows).forEach((cell, j) => {
      result[j * columns + i] = cell;
    });
  });
  return result;
}

/** The part of the rings in a box. */
export function cutToBox(rings: readonly Ring[], { minX, minY, maxX, maxY }: Box): Ring[] {
  const below = cutAll(cutAll(rings, 0, maxX, true), 1, maxY, true);
  return cutAll(cutAll(below, 0, minX, false), 1, minY, false);
}

/** The same for rings and a box in mm. */
export function ringsWithin(rings: readonly Ring[], box: Box): Ring[] {
  const onGrid = rings.filter((ring) => boxesTouch(boxOfRing(ring), box)).map((ring) => toGrid(ring));
  return cutToBox(onGrid, boxToGrid(box)).map((ring) => fromGrid(ring));
}

interface Bands {
  readonly start: number;
  readonly size: number;
  readonly margin: number;
}

/** Halves the bands until there is one, so that each point is looked at a few times only. */
function distributeToBands(rings: readonly Ring[], axis: 0 | 1, bands: Bands, from: number, to: number): Ring[][] {
  const { start, size, margin } = bands;
  if (to - from === 1) {
    return [cutAll(cutAll(rings, axis, start + to * size + margin, true), axis, start + from * size - margin, false)];
  }
  if (rings.length === 0) return Array.from({ length: to - from }, () => []);
  const middle = (from + to) >> 1;
  const low = cutAll(rings, axis, start + middle * size + margin, true);
  const high = cutAll(rings, axis, start + middle * size - margin, false);
  return [...distributeToBands(low, axis, bands, from, middle), ...distributeToBands(high, axis, bands, middle, to)];
}

function cutAll(rings: readonly Ring[], axis: 0 | 1, limit: number, below: boolean): Ring[] {
  const kept: Ring[] = [];
  for (const ring of rings) {
    checkpoint();
    const box = boxOfRing(ring);
    const [low, high] = axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY];
    if (below ? high <= limit : low >= limit) kept.push(ring);
    else if (below ? low < limit : high > limit) kept.push(cutRing(ring, axis, limit, below));
  }
  return kept.filter((ring) => ring.length >= 6);
}

/** One side of a line (Sutherland and Hodgman, "Reentrant polygon clipping", 1974). Crossings are rounded. */
function cutRing(ring: Ring, axis: 0 | 1, limit: number, below: boolean): Ring {
  checkpoint(ring.length);
  const points: number[] = [];
  const push = (x: number, y: number): void => {
    const size = points.length;
    if (size === 0 || points[size - 2] !== x || points[size - 1] !== y) points.push(x, y);
  };
  const inside = (value: number): boolean => (below ? value <= limit : value >= limit);
  let x0 = defined(ring[ring.length - 2]);
  let y0 = defined(ring[ring.length - 1]);
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const x1 = defined(ring[i]);
    const y1 = defined(ring[i + 1]);
    const v0 = axis === 0 ? x0 : y0;
    const v1 = axis === 0 ? x1 : y1;
    if (inside(v0) !== inside(v1)) {
      const t = (limit - v0) / (v1 - v0);
      if (axis === 0) push(limit, Math.round(y0 + t * (y1 - y0)));
      else push(Math.round(x0 + t * (x1 - x0)), limit);
    }
    if (inside(v1)) push(x1, y1);
    x0 = x1;
    y0 = y1;
  }
  return Float64Array.from(points);
}

/**
 * The union of rings each of which lies in one cell, and meets others of its cell in points only. Nothing is cut but
 * edges that end on the border of a cell, where rounding may have set neighbours apart by a unit.
 * @returns undefined when rounding does not come to rest, which no known input brings about
 */
export function joinTiles(rings: readonly Ring[], { x, y, size }: Tiles): Ring[] | undefined {
  const edges = new EdgeList(edgesIn(rings));
  const onBorder = (px: number, py: number): boolean => (px - x) % size === 0 || (py - y) % size === 0;
  for (const ring of rings) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      edges.push(x0, y0, x1, y1, 1, 0, onBorder(x0, y0) || onBorder(x1, y1) ? 1 : 0);
    });
  }
  const noded = snapRound(edges);
  if (!noded) return undefined;
  const graph = buildPlanarGraph(noded.edges);
  const { first } = computeEdgeWindings(noded, graph);
  return traceBorders(graph, (face) => first[face] !== 0);
}

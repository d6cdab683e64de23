/**
 * Unions of many polygons that lie over each other, as dots of spray or strokes of a brush. All their edges cut each other, though most
 * lie inside another polygon and do not show: so neighbours are united first, a few at a time, and what shows of them
 * after that, as long as it becomes less.
 */
import { checkpoint } from '../../base/checkpoint';
import type { Box, Region } from '../base/polygon-types';
import { boxOfRing, edgesIn, ringsOf } from '../base/ring';
import { indexBoxes } from '../spatial/clusters';

/** Fewer polygons are as soon united at once. */
const FEW = 64;

/** Polygons lie over each other where the box of one meets so many others on average. */
const OTHERS = 12;

/** So many boxes tell how many others they meet. */
const SAMPLES = 64;

/** Polygons that are united at a time. */
const GROUP = 4;

/** So many groups are tried first: all are worth their time where no more than this share of the edges of those is left. */
const TRIALS = 8;
const PAYS = 0.8;

export function isDense(boxes: readonly Box[]): boolean {
  if (boxes.length < FEW) return false;
  const index = indexBoxes(boxes);
  const step = Math.ceil(boxes.length / SAMPLES);
  const sample = boxes.filter((_, i) => i % step === 0);
  const met = sample.reduce((sum, { minX, minY, maxX, maxY }) => {
    const others = index.search(minX, minY, maxX, maxY).length;
    checkpoint(others);
    return sum + others;
  }, 0);
  return met > OTHERS * sample.length;
}

/**
 * Polygons with the same union as the given ones, and fewer edges inside it where they are dense.
 * @param unite the union of a few
 */
export function thinnedOut(polygons: Region, unite: (few: Region) => Region): Region {
  let rest = polygons;
  while (isDense(rest.map(({ outer }) => boxOfRing(outer)))) {
    const groups = neighbours(rest);
    const few = groups.filter((_, i) => i % Math.ceil(groups.length / TRIALS) === 0);
    if (edgesOf(few.flatMap(unite)) > PAYS * edgesOf(few.flat())) break;
    rest = groups.flatMap(unite);
  }
  return rest;
}

function edgesOf(polygons: Region): number {
  return polygons.reduce((sum, polygon) => sum + edgesIn(ringsOf(polygon)), 0);
}

/** In columns from left to right, and there from top to bottom, a few at a time. */
function neighbours(polygons: Region): Region[] {
  checkpoint(polygons.length);
  const placed = polygons.map((polygon) => ({ polygon, ...middleOf(boxOfRing(polygon.outer)) }));
  const height = Math.ceil(Math.sqrt(placed.length / GROUP)) * GROUP;
  const columns = inRuns(
    placed.sort((a, b) => a.x - b.x),
    height,
  );
  return columns.flatMap((column) =>
    inRuns(
      column.sort((a, b) => a.y - b.y),
      GROUP,
    ).map((few) => few.map(({ polygon }) => polygon)),
  );
}

function middleOf({ minX, minY, maxX, maxY }: Box): { readonly x: number; readonly y: number } {
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

function inRuns<T>(items: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, i) => items.slice(i * size, (i + 1) * size));
}

/** Marks that would lie over each other become one, with their count: the picture stays to be seen. */
import type { Point } from '../../geometry/base/curve-types';

export interface Placed {
  /** In window pixels. */
  readonly at: Point;
  /** Stands by itself, whatever is near. */
  readonly selected: boolean;
}

/** Pixels within which marks are taken together. */
export const CLUSTER_ROOM = 32;

/**
 * Each mark joins the nearest earlier one that stands for a cluster and is near enough, else it stands for one itself.
 * @param marks the most serious first: they stand for their clusters
 * @returns the members of each cluster, the one that stands for it first
 */
export function clustersOf<Mark extends Placed>(marks: readonly Mark[], room = CLUSTER_ROOM): Mark[][] {
  const clusters: Mark[][] = [];
  const cells = new Map<string, Mark[][]>();
  const cellOf = (value: number) => Math.floor(value / room);
  for (const mark of marks) {
    const [column, row] = [cellOf(mark.at.x), cellOf(mark.at.y)];
    const near = mark.selected ? undefined : nearest(mark.at, neighbours(cells, column, row), room);
    if (near) near.push(mark);
    else {
      const made = [mark];
      clusters.push(made);
      if (mark.selected) continue;
      const key = `${column},${row}`;
      cells.set(key, [...(cells.get(key) ?? []), made]);
    }
  }
  return clusters;
}

function neighbours<Mark>(cells: ReadonlyMap<string, Mark[][]>, column: number, row: number): Mark[][] {
  const found: Mark[][] = [];
  for (let x = column - 1; x <= column + 1; x += 1) {
    for (let y = row - 1; y <= row + 1; y += 1) found.push(...(cells.get(`${x},${y}`) ?? []));
  }
  return found;
}

function nearest<Mark extends Placed>({ x, y }: Point, clusters: readonly Mark[][], room: number): Mark[] | undefined {
  let [best, bestDistance]: [Mark[] | undefined, number] = [undefined, room];
  for (const cluster of clusters) {
    const at = cluster[0]?.at;
    const away = at ? Math.hypot(at.x - x, at.y - y) : Infinity;
    if (away < bestDistance) [best, bestDistance] = [cluster, away];
  }
  return best;
}

/** The middle of a cluster's members. */
export function middleOf(members: readonly Placed[]): Point {
  const sum = members.reduce(({ x, y }, { at }) => ({ x: x + at.x, y: y + at.y }), { x: 0, y: 0 });
  return { x: sum.x / members.length, y: sum.y / members.length };
}

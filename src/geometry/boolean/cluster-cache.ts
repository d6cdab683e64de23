/** Work that is done cluster by cluster, kept so that a cluster of the same polygons need not be solved again. */

import { defined } from '../../base/defined';
import type { Region } from '../base/polygon-types';
import { boxOfRing } from '../base/ring';
import { clusterBoxes } from '../spatial/clusters';

export interface CachedCluster {
  readonly members: Region;
  readonly result: Region;
}

/**
 * The region's polygons in clusters whose boxes come within `margin` mm of each other, and what `solve` makes of each.
 * @param earlier clusters solved before in the same way; they hold for the very same polygon objects in the same order
 */
export function solveClusters(
  region: Region,
  margin: number,
  solve: (members: Region) => Region,
  earlier: readonly CachedCluster[] = [],
): CachedCluster[] {
  const known = new Map(earlier.map((cluster) => [cluster.members[0], cluster]));
  return clusterBoxes(
    region.map(({ outer }) => boxOfRing(outer)),
    margin,
  ).map((numbers) => {
    const members = numbers.map((number) => defined(region[number]));
    const before = known.get(members[0]);
    return before && isSameList(before.members, members) ? before : { members, result: solve(members) };
  });
}

export function resultOf(clusters: readonly CachedCluster[]): Region {
  return clusters.flatMap(({ result }) => result);
}

function isSameList(a: Region, b: Region): boolean {
  return a.length === b.length && a.every((polygon, i) => polygon === b[i]);
}

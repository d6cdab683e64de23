/** What differs between two regions that were measured from nearly the same drawing. */
import { difference } from './polygons';
import type { Polygon, Region, Ring } from './region';

/**
 * The area in either region but not in both, in mm. Polygons that are the same to the last digit are set aside first, so
 * the cost is that of what changed.
 */
export function symmetricDifference(a: Region, b: Region): Region {
  const [onlyA, onlyB] = withoutCommon(a, b);
  if (onlyA.length === 0 || onlyB.length === 0) return [...onlyA, ...onlyB];
  return [...difference(onlyA, onlyB), ...difference(onlyB, onlyA)];
}

function withoutCommon(a: Region, b: Region): [Region, Region] {
  const unmatched = new Map<string, Polygon[]>();
  for (const polygon of b) {
    const key = keyOf(polygon);
    const list = unmatched.get(key);
    if (list) list.push(polygon);
    else unmatched.set(key, [polygon]);
  }
  const onlyA = a.filter((polygon) => {
    const list = unmatched.get(keyOf(polygon)) ?? [];
    const twin = list.findIndex((other) => isSamePolygon(polygon, other));
    if (twin >= 0) list.splice(twin, 1);
    return twin < 0;
  });
  return [onlyA, [...unmatched.values()].flat()];
}

function keyOf({ outer, holes }: Polygon): string {
  return `${outer.length} ${holes.length} ${outer[0]} ${outer[1]}`;
}

function isSamePolygon(a: Polygon, b: Polygon): boolean {
  return a.holes.length === b.holes.length && isSameRing(a.outer, b.outer) &&
    a.holes.every((hole, i) => isSameRing(hole, b.holes[i] as Ring));
}

function isSameRing(a: Ring, b: Ring): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}

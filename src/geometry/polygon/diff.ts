/** What differs between two regions that were measured from nearly the same drawing. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Polygon, Region, Ring } from '../base/polygon-types';
import { isSameRing, ringsOf } from '../base/ring';
import { exclusion } from '../boolean/index';

/**
 * The area in either region but not in both, in mm. Polygons that are the same to the last digit are set aside first,
 * so the cost is that of what changed.
 */
export function symmetricDifference(a: Region, b: Region): Region {
  const [onlyA, onlyB] = withoutCommon(a, b);
  if (onlyA.length === 0 || onlyB.length === 0) return [...onlyA, ...onlyB];
  return exclusion(onlyA, onlyB);
}

function withoutCommon(a: Region, b: Region): [Region, Region] {
  const twins = matchIdentical(a, b);
  const matched = new Set(twins);
  return [a.filter((_, i) => twins[i] === undefined), b.filter((_, i) => !matched.has(i))];
}

/** For each polygon of `a` the number of one in `b` that is the same to the last digit; each is given once. */
export function matchIdentical(a: Region, b: Region): (number | undefined)[] {
  const present = new Set(a);
  const places = new Map(b.map((polygon, i) => [polygon, i]));
  // Most are the very objects that they were.
  const unmatched = new Map<string, number[]>();
  b.forEach((polygon, i) => {
    if (present.has(polygon)) return;
    const key = keyOf(polygon);
    const list = unmatched.get(key);
    if (list) list.push(i);
    else unmatched.set(key, [i]);
  });
  return a.map((polygon) => {
    checkpoint();
    const place = places.get(polygon);
    if (place !== undefined) return place;
    const list = unmatched.get(keyOf(polygon)) ?? [];
    const twin = list.findIndex((other) => isSamePolygon(polygon, defined(b[other])));
    return twin < 0 ? undefined : list.splice(twin, 1)[0];
  });
}

/**
 * The region, with the very objects of `known` for its rings and polygons that are the same to the last digit. Later
 * comparisons find those at a glance.
 */
export function reuseUnchanged(region: Region, known: Region): Region {
  const [present, before] = [new Set(region), new Set(known)];
  const strange = region.filter((polygon) => !before.has(polygon));
  const gone = known.filter((polygon) => !present.has(polygon));
  if (strange.length === 0 || gone.length === 0) return region;
  const twinOf = findIdentical(gone.flatMap(ringsOf));
  const recognised = strange.map(({ outer, holes }) => ({ outer: twinOf(outer), holes: holes.map(twinOf) }));
  const twins = matchIdentical(recognised, gone);
  const found = new Map(strange.map((polygon, i) => [polygon, gone[twins[i] ?? -1] ?? recognised[i]]));
  return region.map((polygon) => found.get(polygon) ?? polygon);
}

/** The very object, for a ring that is the same to the last digit. */
function findIdentical(rings: readonly Ring[]): (ring: Ring) => Ring {
  const present = new Set(rings);
  let byKey: ReadonlyMap<string, Ring> | undefined;
  return (ring) => {
    if (present.has(ring)) return ring;
    byKey ??= new Map(rings.map((each) => [keyOfRing(each), each]));
    const twin = byKey.get(keyOfRing(ring));
    return twin && isSameRing(ring, twin) ? twin : ring;
  };
}

function keyOfRing(ring: Ring): string {
  return `${ring.length} ${ring[0]} ${ring[1]}`;
}

function keyOf({ outer, holes }: Polygon): string {
  return `${outer.length} ${holes.length} ${outer[0]} ${outer[1]}`;
}

function isSamePolygon(a: Polygon, b: Polygon): boolean {
  return (
    a.holes.length === b.holes.length &&
    isSameRing(a.outer, b.outer) &&
    a.holes.every((hole, i) => isSameRing(hole, defined(b.holes[i])))
  );
}

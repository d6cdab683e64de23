/**
 * Thin parts of a region that has changed in places since they were last found.
 *
 * Whether a place is thin, and what faces it, depends on the boundary within one disc of the width only. So a polygon
 * that is the same as before has the same thin parts. In a polygon that has changed, rings are put into groups, such
 * that rings of different groups are farther apart than the width: no disc of the width touches two groups, hence no thin
 * part has sides in two, and between groups such a disc passes, so the polygon is not thin as a whole. A group that is
 * made of the same rings as before has the same thin parts; the others are searched, each in a polygon made of its rings
 * alone. Only what a neck holds is a matter of the whole polygon: where any neck holds something, the polygon is
 * searched as a whole.
 */
import { groupsOf, indexBoxes, unite } from './clusters';
import { twinsIn } from './compare-regions';
import { findThinParts, type ThinPartOptions } from './find-thin-parts';
import type { Box, Polygon, Region, Ring } from './region';
import { boxOfRing, forEachEdge, growBox, isSameRing, joinBoxes, ringOfBox } from './rings';
import type { ThinPart } from './thin-parts';

/** What was found before, in which region, with the same width and options. */
export interface EarlierThinParts {
  readonly region: Region;
  readonly parts: readonly ThinPart[];
}

/** mm: how far a part's end may lie beside the ring it was found on. */
const BESIDE = 1e-5;

/** The same as `findThinParts`, within the last digits of a double. */
export function findThinPartsAgain(
  region: Region, width: number, earlier: EarlierThinParts, options: ThinPartOptions = {},
): ThinPart[] {
  const twins = twinsIn(region, earlier.region);
  const partsOf = partsByPolygon(earlier.parts);
  const matched = new Set(twins);
  const changed = earlier.region.flatMap((polygon, i) => (matched.has(i) ? [] : [{ polygon, parts: partsOf.get(i) ?? [] }]));
  return region.flatMap((polygon, number) => {
    const twin = twins[number];
    const before = changed.find((other) => isSameRing(other.polygon.outer, polygon.outer));
    const parts = twin === undefined ? partsWithin(polygon, width, before, options) : partsOf.get(twin) ?? [];
    return parts.map((part) => ({ ...part, polygon: number }));
  });
}

function partsByPolygon(parts: readonly ThinPart[]): Map<number, ThinPart[]> {
  const found = new Map<number, ThinPart[]>();
  for (const part of parts) {
    const list = found.get(part.polygon);
    if (list) list.push(part);
    else found.set(part.polygon, [part]);
  }
  return found;
}

interface Earlier {
  readonly polygon: Polygon;
  readonly parts: readonly ThinPart[];
}

function partsWithin(
  polygon: Polygon, width: number, before: Earlier | undefined, options: ThinPartOptions,
): readonly ThinPart[] {
  const whole = () => findThinParts([polygon], width, options);
  if (!before || before.parts.some(({ kind, holds }) => kind === 'whole' || holds)) return whole();
  const known = groupRings(before.polygon, width);
  const groups = groupRings(polygon, width);
  if (groups.length === 1) return whole();
  const partsOf = partsByGroup(known, before.parts);
  if (!partsOf) return whole();
  const knownBy = new Map(known.map((group) => [keyOf(group), group]));
  const parts: ThinPart[] = [];
  for (const group of groups) {
    const same = knownBy.get(keyOf(group));
    const found = same && isSameGroup(group, same)
      ? partsOf.get(same) ?? []
      : findThinParts([polygonOfGroup(group, width)], width, options);
    if (found.some(({ holds }) => holds)) return whole();
    parts.push(...found);
  }
  return parts;
}

/** Rings of one polygon that may face each other within a disc. */
interface RingGroup {
  readonly outer: Ring | undefined;
  readonly holes: readonly Ring[];
  /** Of the holes; none when there are none. */
  readonly box: Box;
}

function groupRings({ outer, holes }: Polygon, width: number): RingGroup[] {
  const boxes = holes.map((hole) => growBox(boxOfRing(hole), 0.51 * width));
  // The outer ring comes last: it has no box of its own, but touches what comes near to one of its edges.
  const parents = Int32Array.from({ length: holes.length + 1 }, (_, i) => i);
  if (boxes.length > 0) {
    const index = indexBoxes(boxes);
    const join = (member: number, { minX, minY, maxX, maxY }: Box) => {
      index.search(minX, minY, maxX, maxY, (other) => {
        unite(parents, member, other);
        return false;
      });
    };
    boxes.forEach((box, member) => join(member, box));
    forEachEdge(outer, (x0, y0, x1, y1) => {
      const box = { minX: Math.min(x0, x1), minY: Math.min(y0, y1), maxX: Math.max(x0, x1), maxY: Math.max(y0, y1) };
      join(holes.length, growBox(box, 0.51 * width));
    });
  }
  return groupsOf(parents).map((members) => {
    const own = members.flatMap((member) => holes[member] ?? []);
    return { outer: members.includes(holes.length) ? outer : undefined, holes: own, box: joinBoxes(own.map(boxOfRing)) };
  });
}

function keyOf({ outer, holes: [first] }: RingGroup): string {
  return `${outer === undefined} ${first?.[0]} ${first?.[1]}`;
}

function isSameGroup(a: RingGroup, b: RingGroup): boolean {
  const [outer, other] = [a.outer, b.outer];
  return (outer && other ? isSameRing(outer, other) : outer === other) && a.holes.length === b.holes.length &&
    a.holes.every((hole, i) => isSameRing(hole, b.holes[i] as Ring));
}

/** A polygon with the group's rings and, beyond all discs that touch them, a border of its own where it needs one. */
function polygonOfGroup({ outer, holes, box }: RingGroup, width: number): Polygon {
  return { outer: outer ?? ringOfBox(growBox(box, 3 * width)), holes };
}

/** By the ring on which a part has its first end; undefined where that is not clear. */
function partsByGroup(groups: readonly RingGroup[], parts: readonly ThinPart[]): Map<RingGroup, ThinPart[]> | undefined {
  const found = new Map<RingGroup, ThinPart[]>();
  const inner = groups.filter(({ holes }) => holes.length > 0);
  const rest = groups.find(({ outer }) => outer !== undefined);
  const index = inner.length > 0 ? indexBoxes(inner.map(({ box }) => box)) : undefined;
  for (const part of parts) {
    const { x, y } = part.from;
    const near = index?.search(x - BESIDE, y - BESIDE, x + BESIDE, y + BESIDE) ?? [];
    const owners = near.flatMap((i) => inner[i] ?? []).filter((group) => group !== rest && liesOn(group, x, y));
    const owner = owners[0] ?? rest;
    if (!owner || owners.length > 1) return undefined;
    const list = found.get(owner);
    if (list) list.push(part);
    else found.set(owner, [part]);
  }
  return found;
}

function liesOn({ holes }: RingGroup, x: number, y: number): boolean {
  return holes.some((hole) => {
    let near = false;
    forEachEdge(hole, (x0, y0, x1, y1) => {
      const square = (x1 - x0) ** 2 + (y1 - y0) ** 2;
      const t = square > 0 ? Math.max(0, Math.min(1, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / square)) : 0;
      if (Math.hypot(x0 + t * (x1 - x0) - x, y0 + t * (y1 - y0) - y) <= BESIDE) near = true;
    });
    return near;
  });
}

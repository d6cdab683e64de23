/**
 * Thin parts of a region that has changed in places since they were last found.
 *
 * Whether a place is thin, and what faces it there, depends on the boundary within one disc of the width only. So a
 * polygon that is the same as before has the same thin parts; and in a polygon whose holes have changed, a part that
 * keeps farther than the width from all that came and went is the same part as before. What is left is searched in a
 * polygon made of the holes near by: those near what changed, and near the parts that were there. A part found in it is
 * right if no hole that was left out comes within the width of it; otherwise those holes are added, and the search is
 * made again.
 *
 * What a neck holds depends on all that lies on one side of it. That side is within the hole that both ends of the neck
 * lie on, or is the rest of the polygon: so it is kept, or searched, together with all near that hole.
 */
import type { Point } from '../base/curve-types';
import type { Box, Polygon, Region, Ring } from '../base/polygon-types';
import { boxOfRing, distanceToEdge, forEachEdge, growBox, isSameRing, joinBoxes, ringOfBox } from '../base/ring';
import { OVERLAY_GRID } from '../base/tolerances';
import { areaOf } from '../boolean/index';
import { matchIdentical } from '../polygon/diff';
import { RingIndex } from '../spatial/ring-index';
import { findThinParts, type ThinPartOptions } from './index';
import type { ThinPart } from './types';

/** What was found before, in which region, with the same width and options. */
export interface PreviousThinParts {
  readonly region: Region;
  readonly parts: readonly ThinPart[];
}

/** mm: how far a part's end may lie beside the ring it was found on. */
const BESIDE = OVERLAY_GRID / 10;

/** In widths: what is nearer may matter, with some room for rounding. */
const REACH = 1.01;

/** Holes are added so many times; after that, or when this share of all is in, the polygon is searched as a whole. */
const MAX_ROUNDS = 8;
const MAX_HOLES = 0.7;

/** The same as `findThinParts`, within the last digits of a double. */
export function findThinPartsIncrementally(
  region: Region,
  width: number,
  earlier: PreviousThinParts,
  options: ThinPartOptions = {},
): ThinPart[] {
  const twins = matchIdentical(region, earlier.region);
  const partsOf = partsByPolygon(earlier.parts);
  const matched = new Set(twins);
  const changed = earlier.region.flatMap((polygon, i) =>
    matched.has(i) ? [] : [{ polygon, parts: partsOf.get(i) ?? [] }],
  );
  return region.flatMap((polygon, number) => {
    const twin = twins[number];
    if (twin !== undefined) return (partsOf.get(twin) ?? []).map((part) => ({ ...part, polygon: number }));
    const before = changed.find((other) => isSameRing(other.polygon.outer, polygon.outer));
    const parts = before && new ChangedPolygon(polygon, before, width, options).parts();
    return (parts ?? findThinParts([polygon], width, options)).map((part) => ({ ...part, polygon: number }));
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

interface PreviousPolygon {
  readonly polygon: Polygon;
  readonly parts: readonly ThinPart[];
}

/** A polygon with the outer ring of an earlier one, but other holes. */
class ChangedPolygon {
  private readonly reach: number;
  /** Of the holes that came, and of those that went. */
  private readonly changes: RingIndex;
  private readonly near: RingIndex;
  /** mm² */
  private readonly area: number;

  private readonly polygon: Polygon;
  private readonly before: PreviousPolygon;
  private readonly width: number;
  private readonly options: ThinPartOptions;

  constructor(polygon: Polygon, before: PreviousPolygon, width: number, options: ThinPartOptions) {
    this.polygon = polygon;
    this.before = before;
    this.width = width;
    this.options = options;

    this.reach = REACH * width;
    const [now, then] = [polygon.holes, before.polygon.holes];
    this.changes = new RingIndex([...ringsNotAmong(now, then), ...ringsNotAmong(then, now)]);
    this.near = new RingIndex([polygon.outer, ...polygon.holes]);
    this.area = areaOf(polygon);
  }

  /** Undefined where it takes a search of the whole polygon. */
  parts(): ThinPart[] | undefined {
    const { parts } = this.before;
    if (parts.some(({ kind }) => kind === 'whole')) return undefined;
    const [gone, kept] = [
      parts.filter((part) => this.isAffected(part)),
      parts.filter((part) => !this.isAffected(part)),
    ];
    if (!kept.every((part) => this.holdsTheSame(part))) return undefined;
    const found = this.searchRound(gone.map(({ extent }) => extent));
    return found && [...kept, ...found];
  }

  private isAffected({ extent }: ThinPart): boolean {
    return this.changes.comeNear(extent, this.reach);
  }

  private holdsTheSame({ holds, from }: ThinPart): boolean {
    if (!holds) return true;
    const hole = this.holeOfPocket(from, Math.min(this.area, areaOf(this.before.polygon)));
    return hole !== undefined && !this.changes.comeNear(boxOfRing(hole), this.reach);
  }

  /** The hole on which a neck's end lies, if the pocket behind the neck is for sure the smaller side of `area` mm². */
  private holeOfPocket(end: Point, area: number): Ring | undefined {
    const hole = this.holeAt(end);
    if (!hole) return undefined;
    const { minX, minY, maxX, maxY } = boxOfRing(hole);
    return (maxX - minX) * (maxY - minY) < area / 2 ? hole : undefined;
  }

  private holeAt(place: Point): Ring | undefined {
    const box = { minX: place.x, minY: place.y, maxX: place.x, maxY: place.y };
    const holes = this.near.near(box, BESIDE).filter((ring) => ring !== this.polygon.outer && liesOn(ring, place));
    return holes.length === 1 ? holes[0] : undefined;
  }

  private searchRound(gone: readonly Box[]): ThinPart[] | undefined {
    const rings = new Set<Ring>();
    const add = (box: Box, margin: number) => this.near.near(box, margin).forEach((ring) => rings.add(ring));
    for (const box of [...gone, ...this.changes.intervals()]) add(box, 2 * this.reach);
    for (let round = 0; round < MAX_ROUNDS && rings.size <= MAX_HOLES * this.polygon.holes.length + 1; round += 1) {
      const searched = rings.size;
      const found = this.searchAmong(rings);
      if (!found) return undefined;
      for (const { extent, holds, from } of found.parts) {
        add(extent, this.reach);
        const hole = holds && this.holeOfPocket(from, Math.min(this.area, found.area));
        if (hole) add(boxOfRing(hole), this.reach);
        else if (holds) return undefined;
      }
      if (rings.size === searched) return found.parts;
    }
    return undefined;
  }

  /**
   * Among the rings alone. In place of the outer ring, if that is not one of them, there is a border so far off that it
   * faces none, and that within it there is more beside them than in all of them.
   */
  private searchAmong(rings: ReadonlySet<Ring>): { parts: ThinPart[]; area: number } | undefined {
    const { outer, holes } = this.polygon;
    const some = holes.filter((hole) => rings.has(hole));
    if (some.length === 0 && !rings.has(outer)) return { parts: [], area: 0 };
    const around = joinBoxes(some.map(boxOfRing));
    const far = 4 * this.width + Math.max(around.maxX - around.minX, around.maxY - around.minY);
    const part = { outer: rings.has(outer) ? outer : ringOfBox(growBox(around, far)), holes: some };
    const found = findThinParts([part], this.width, this.options);
    if (found.some(({ kind }) => kind === 'whole')) return undefined;
    return { parts: found.filter((each) => this.isAffected(each)), area: areaOf(part) };
  }
}

const NO_RING = new Float64Array(0);

function keyOf(ring: Ring): string {
  return `${ring.length} ${ring[0]} ${ring[1]}`;
}

/** The rings that are not among others. Most are the very objects that they were. */
function ringsNotAmong(rings: readonly Ring[], others: readonly Ring[]): Ring[] {
  const [here, there] = [new Set(rings), new Set(others)];
  const strange = rings.filter((ring) => !there.has(ring));
  const twins = new Map(others.filter((ring) => !here.has(ring)).map((ring) => [keyOf(ring), ring]));
  return strange.filter((ring) => !isSameRing(ring, twins.get(keyOf(ring)) ?? NO_RING));
}

function liesOn(ring: Ring, { x, y }: Point): boolean {
  let near = false;
  forEachEdge(ring, (x0, y0, x1, y1) => {
    if (distanceToEdge(x, y, x0, y0, x1, y1) <= BESIDE) near = true;
  });
  return near;
}

/**
 * The algebra of regions. All results lie on a grid of 0.1 µm, turn as `region.ts` says, and hold each hole in its own
 * outer ring. Polygons whose boxes touch nothing are passed on as they are.
 */

import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Box, FillRule, Polygon, Region, Ring } from '../base/polygon-types';
import {
  boxContainsBox,
  boxesTouch,
  boxOfRing,
  growBox,
  perimeter,
  polygonOfBox,
  reverseRing,
  ringContains,
  ringsOf,
  signedArea,
} from '../base/ring';
import { TOUCHING, WRITTEN_STEP } from '../base/tolerances';
import { clusterBoxes } from '../spatial/clusters';
import { type Join, offsetRings } from './clipper';
import { type CachedCluster, resultOf, solveClusters } from './cluster-cache';
import { withoutCovered } from './covered';
import { isDense, thinnedOut } from './dense-union';
import { distinctRings } from './distinct-rings';
import { nestRings } from './nest';
import { combineRings, fillOfOneWayRing } from './overlay';
import { ringsWithin } from './tiles';

export type { FillRule } from '../base/polygon-types';
export type { Join } from './clipper';
export { type PinchSplit, splitAtPinchPoints, splitAtPinchPointsAgain } from './pinch-points';

/** Two grid units, in mm: boxes closer than this may interact after rounding to the grid. */
const NEAR = TOUCHING;

/** In mm: how far round joins may stay from true arcs when nothing else is asked for. */
const ARC_TOLERANCE = WRITTEN_STEP;

/** What a renderer fills: the rings (each closed, of any course, crossing at will) read by the fill rule. */
export function regionFromRings(rings: readonly Ring[], fillRule: FillRule): Region {
  const alone = fillRule === 'nonzero' && isDense(rings.map(boxOfRing)) && fillsOfLikeRings(rings);
  return alone ? union(alone) : nestRings(combineRings('union', rings, [], fillRule));
}

/** What each ring fills, where all wind the same way, so that none takes away from another; undefined otherwise. */
function fillsOfLikeRings(rings: readonly Ring[]): Region[] | undefined {
  const areas = rings.map(signedArea);
  if (!areas.every((area) => area >= 0) && !areas.every((area) => area <= 0)) return undefined;
  const fills: Region[] = [];
  for (const ring of distinctRings(rings)) {
    const fill = fillOfOneWayRing(ring);
    if (!fill) return undefined;
    fills.push(nestRings(fill));
  }
  return fills;
}

export function union(regions: readonly Region[]): Region {
  return resultOf(solveClusters(regions.flat(), NEAR, uniteMany));
}

/**
 * The union of regions whose own polygons are united already, each region once, with what a later union can take over. What
 * lies alone in its place is passed on as it is.
 */
export function unionByCluster(regions: readonly Region[], earlier?: readonly CachedCluster[]): CachedCluster[] {
  const owners = ownersOf(regions);
  const solve = (cluster: Region): Region => {
    const owner = owners.get(defined(cluster[0]));
    return owner && cluster.every((polygon) => owners.get(polygon) === owner) ? cluster : uniteMany(cluster);
  };
  return solveClusters(regions.flat(), NEAR, solve, earlier);
}

/** The region of each polygon; undefined where two have it. */
function ownersOf(regions: readonly Region[]): Map<Polygon, Region | undefined> {
  const owners = new Map<Polygon, Region | undefined>();
  for (const region of regions)
    for (const polygon of region) owners.set(polygon, owners.has(polygon) ? undefined : region);
  return owners;
}

function uniteMany(polygons: Region): Region {
  return unite(thinnedOut(withoutCovered(polygons), unite));
}

function unite(polygons: Region): Region {
  const seen = withoutCovered(polygons);
  return seen.length === 1 ? seen : nestRings(combineRings('union', seen.flatMap(ringsOf), [], 'nonzero'));
}

function inClusters<T>(items: readonly T[], boxOf: (item: T) => Box, solve: (cluster: T[]) => Region): Region {
  const clusters = clusterBoxes(items.map(boxOf), NEAR);
  return clusters.flatMap((members) => solve(members.flatMap((member) => defined(items[member]))));
}

/** What of `a` lies outside `b`. */
export function difference(a: Region, b: Region): Region {
  return combine('difference', a, b);
}

/** What lies in one of two regions alone. Edges that both have go at once, so that little is left to do where they are nearly alike. */
export function exclusion(a: Region, b: Region): Region {
  const rings = [...a.flatMap(ringsOf), ...b.flatMap(ringsOf).map(reverseRing)];
  return nestRings(combineRings('union', rings, [], 'nonzero'));
}

export function intersection(a: Region, b: Region): Region {
  return combine('intersection', a, b);
}

interface Side {
  readonly polygon: Polygon;
  readonly first: boolean;
}

function combine(operation: 'difference' | 'intersection', a: Region, b: Region): Region {
  const sides: Side[] = [
    ...a.map((polygon) => ({ polygon, first: true })),
    ...b.map((polygon) => ({ polygon, first: false })),
  ];
  return inClusters(
    sides,
    (side) => boxOfPolygon(side.polygon),
    (cluster) => {
      const subject = cluster.filter((side) => side.first).map((side) => side.polygon);
      const clip = cluster.filter((side) => !side.first).map((side) => side.polygon);
      if (subject.length === 0) return [];
      if (clip.length === 0) return operation === 'difference' ? subject : [];
      return nestRings(combineRings(operation, subject.flatMap(ringsOf), clip.flatMap(ringsOf), 'nonzero'));
    },
  );
}

/** mm: what is cut off in haste, so far from a box, does not show in it. */
const CLIP_MARGIN = 1;

/** What of the region lies in the box; polygons wholly inside are passed on as they are. */
export function clipToBox(region: Region, box: Box): Region {
  const clip = ringsOf(polygonOfBox(box));
  const around = growBox(box, CLIP_MARGIN);
  return region.flatMap((polygon) => {
    const own = boxOfPolygon(polygon);
    if (boxContainsBox(box, own)) return [polygon];
    if (!boxesTouch(box, own)) return [];
    return nestRings(combineRings('intersection', ringsWithin(ringsOf(polygon), around), clip, 'nonzero'));
  });
}

/**
 * The region grown by `delta` mm, or shrunk when negative. Round joins stay within `tolerance` mm of true arcs;
 * mitres longer than ten times the offset are cut off.
 */
export function offset(region: Region, delta: number, join: Join = 'round', tolerance = ARC_TOLERANCE): Region {
  return delta === 0 ? region : resultOf(offsetByCluster(region, delta, join, tolerance));
}

/** The same, with what a later one by the same delta, join and tolerance can take over; delta is not 0. */
export function offsetByCluster(
  region: Region,
  delta: number,
  join: Join = 'round',
  tolerance = ARC_TOLERANCE,
  earlier?: readonly CachedCluster[],
): CachedCluster[] {
  const reach = delta > 0 ? delta * (join === 'miter' ? 10 : 2) : 0;
  const move = (cluster: Region): Region =>
    nestRings(combineRings('union', offsetRings(cluster.flatMap(ringsOf), delta, join, tolerance), [], 'nonzero'));
  return solveClusters(region, 2 * reach + NEAR, move, earlier);
}

/**
 * What remains of the box without the openings. Openings that keep clear of the box's border are turned inside out
 * (their outer rings become holes, their holes pieces); only those at the border are cut off by a real difference.
 */
export function complementInBox(openings: Region, box: Box): Region {
  const inner = growBox(box, -NEAR);
  const clear = openings.filter((polygon) => boxContainsBox(inner, boxOfPolygon(polygon)));
  const others = openings.filter((polygon) => !boxContainsBox(inner, boxOfPolygon(polygon)));
  const frame: Region = combineRings('union', [polygonOfBox(box).outer], [], 'nonzero').map((outer) => ({
    outer,
    holes: [],
  }));
  const rest = others.length > 0 ? difference(frame, others) : frame;
  return nestRings([...rest.flatMap(ringsOf), ...clear.flatMap(ringsOf).map(reverseRing)]);
}

type Measurable = Region | Polygon | Ring;

/** In mm², holes taken off; of a ring, without sign. */
export function areaOf(shape: Measurable): number {
  if (isRing(shape)) return Math.abs(signedArea(shape));
  if (isRegion(shape)) return shape.reduce((sum, polygon) => sum + areaOf(polygon), 0);
  return shape.holes.reduce((area, hole) => area - areaOf(hole), areaOf(shape.outer));
}

/** In mm, holes counted too. */
export function perimeterOf(shape: Measurable): number {
  if (isRing(shape)) return perimeter(shape);
  if (isRegion(shape)) return shape.reduce((sum, polygon) => sum + perimeterOf(polygon), 0);
  return ringsOf(shape).reduce((sum, ring) => sum + perimeter(ring), 0);
}

function isRing(shape: Measurable): shape is Ring {
  return shape instanceof Float64Array;
}

function isRegion(shape: Region | Polygon): shape is Region {
  return Array.isArray(shape);
}

/** On the boundary either answer may come. */
export function regionContains(region: Region, point: Point): boolean {
  return region.some(({ outer, holes }) => {
    return ringContains(outer, point) && !holes.some((hole) => ringContains(hole, point));
  });
}

export function boxOfPolygon(polygon: Polygon): Box {
  return boxOfRing(polygon.outer);
}

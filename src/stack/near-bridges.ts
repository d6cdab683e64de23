/** Bridges of sheets that are one painted region, where both can lie bare when a sheet slips. Millimetres. */
import { defined } from '../base/defined';
import type { Point } from '../geometry/base/curve-types';
import type { Polygon, Region } from '../geometry/base/polygon-types';
import { growBox, pointsOf, ringsOf } from '../geometry/base/ring';
import { MEANT_TO_MEET } from '../geometry/base/tolerances';
import { boxOfPolygon, difference, intersection, offset, union } from '../geometry/boolean/index';
import {
  buildSegmentIndex,
  forEachSegmentInBox,
  nearestSegment,
  type SegmentIndex,
} from '../geometry/spatial/segment-index';

/** Two places that each only the other sheet paints. */
export interface NearBridges {
  /** The layer whose sheet keeps the first place bare. */
  readonly layer: number;
  /** mm between the two */
  readonly distance: number;
  /** On the edge of that layer's own bridge, and of the other. */
  readonly at: Point;
  readonly facing: Point;
}

/**
 * Where one sheet keeps ground bare that the others paint, nearer than `limit` to ground that those keep bare. Sheets
 * that slip by no more than the distance of the two leave nothing bare: what slips is B₁ ∩ (B₂ + s), and that is empty.
 * @param layers the openings of each, in painting order
 * @param firsts for each layer the first of those that are one painted region with it
 * @param limit mm for each layer
 */
export function nearBridges(
  layers: readonly Region[],
  firsts: readonly number[],
  limit: (layer: number) => number,
): NearBridges[] {
  return layers.flatMap((openings, layer) => {
    const first = defined(firsts[layer]);
    if (first === layer) return [];
    const others = union(layers.filter((_, other) => other !== layer && firsts[other] === first));
    const index = buildSegmentIndex(keptBare(others, openings));
    return keptBare(openings, others).flatMap((bridge) => nearestOf(bridge, index, limit(layer), layer));
  });
}

/** What a sheet keeps bare of the ground that others paint. */
function keptBare(openings: Region, others: Region): Region {
  return withoutSlivers(difference(others, openings));
}

/** Without what comes of curves that are written anew. */
export function withoutSlivers(region: Region): Region {
  return offset(offset(region, -MEANT_TO_MEET), MEANT_TO_MEET);
}

/** mm, 0 where they have ground in common. */
export function distanceBetween(one: Region, other: Region): number {
  if (intersection(one, other).length > 0) return 0;
  const index = buildSegmentIndex(other);
  const nearest = one.flatMap((polygon) => nearestOf(polygon, index, Infinity, 0));
  return Math.min(...nearest.map(({ distance }) => distance));
}

/** Ground that is apart comes nearest at a corner of the one or of the other. */
function nearestOf(bridge: Polygon, others: SegmentIndex, limit: number, layer: number): NearBridges[] {
  const own = buildSegmentIndex([bridge]);
  const from = ringsOf(bridge)
    .flatMap(pointsOf)
    .flatMap((at) => {
      const near = nearestSegment(others, at, limit);
      return near ? [{ layer, distance: near.distance, at, facing: near.point }] : [];
    });
  const back = cornersNear(others, bridge, limit).flatMap((facing) => {
    const near = nearestSegment(own, facing, limit);
    return near ? [{ layer, distance: near.distance, at: near.point, facing }] : [];
  });
  const all = [...from, ...back].filter(({ distance }) => distance < limit);
  return all.length > 0 ? [all.reduce((least, each) => (each.distance < least.distance ? each : least))] : [];
}

/** Of the edges that are near. */
function cornersNear(index: SegmentIndex, polygon: Polygon, reach: number): Point[] {
  const corners: Point[] = [];
  forEachSegmentInBox(index, growBox(boxOfPolygon(polygon), reach), (edge) => {
    corners.push({ x: defined(index.x0[edge]), y: defined(index.y0[edge]) });
    corners.push({ x: defined(index.x1[edge]), y: defined(index.y1[edge]) });
  });
  return corners;
}

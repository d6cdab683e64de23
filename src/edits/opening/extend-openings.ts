/** Extends a layer's openings over a region: the outlines that bound them there move out, and stay what they are. */
import { checkpoint } from '../../base/checkpoint';
import type { Point } from '../../geometry/base/curve-types';
import type { Box, Region } from '../../geometry/base/polygon-types';
import { boxesTouch, boxOfRing, forEachEdge, growBox, joinBoxes, ringsOf } from '../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { regionContains } from '../../geometry/boolean/index';
import type { Sheet } from '../../sheet/types';
import type { EditResult } from '../element/result';
import { type BoundaryPlace, FacingBoundary } from './facing';
import type { MovableBoundary } from './movable-boundary';
import { moveOutlines } from './move-outlines';

/** mm beside the boundary, where it is asked on which side of it the region lies. */
const BESIDE = 2 * DRAWN_ALIKE;

/** Radians: the region's end may run aslant to the outline, and cut off what lies straight outward of it. */
const SLANTS = [-2, -1, 1, 2].map((step) => (step * Math.PI) / 9);

/** Of what is reached aslant: so much less straight outward is such an end. */
const CUT_OFF = 0.9;

/**
 * @param region mm, what the openings are to cover as well, from their boundary on
 * @param reach mm, how far it goes beyond their boundary at most
 */
export function extendOpenings(sheet: Sheet, region: Region, reach: number): EditResult {
  const boundary = new ExtendedBoundary(sheet, region, reach);
  return moveOutlines(sheet, { boundary, bank: 'both', width: reach });
}

/** The boundary of openings, which gives way until a region is covered. */
class ExtendedBoundary implements MovableBoundary {
  readonly extent: Box;
  private readonly region: Region;
  private readonly boundary: FacingBoundary;
  private readonly reach: number;

  constructor({ openings }: Sheet, region: Region, reach: number) {
    this.region = region;
    this.reach = reach;
    this.extent = growBox(joinBoxes(region.map(({ outer }) => boxOfRing(outer))), DRAWN_ALIKE);
    const near = openings.filter(({ outer }) => boxesTouch(boxOfRing(outer), this.extent));
    this.boundary = new FacingBoundary(near.flatMap(ringsOf), this.extent, reach);
  }

  placesAt(point: Point): BoundaryPlace[] {
    return this.boundary.placesAt(point);
  }

  outwardAt(point: Point, normal: Point): Point | undefined {
    return this.boundary.outwardAt(point, normal);
  }

  /** How far the region reaches outward from a place of the boundary: mm. */
  needAt({ at, outward }: BoundaryPlace): number {
    const [x, y] = [-BESIDE * outward.y, BESIDE * outward.x];
    // Where the region ends with a side of the outline, its corner is on the border of both.
    const places = [at, { x: at.x + x, y: at.y + y }, { x: at.x - x, y: at.y - y }];
    const begin = places.filter((place) => regionContains(this.region, moved(place, outward, BESIDE)));
    const straight = Math.max(0, ...begin.map((place) => this.reachFrom(place, outward)));
    const aslant = SLANTS.flatMap((angle) =>
      begin.map((place) => Math.cos(angle) * this.reachFrom(place, turned(outward, angle))),
    );
    const most = Math.max(0, ...aslant);
    // Beyond that a ray runs along the region, into what is another side's to reach.
    return Math.min(straight < CUT_OFF * most ? most : straight, this.reach);
  }

  private reachFrom(from: Point, direction: Point): number {
    let nearest = Infinity;
    for (const ring of this.region.flatMap(ringsOf)) {
      checkpoint(ring.length);
      forEachEdge(ring, (x0, y0, x1, y1) => {
        const way = crossingOf(from, direction, x0, y0, x1, y1);
        if (way !== undefined && way > BESIDE && way < nearest) nearest = way;
      });
    }
    return Number.isFinite(nearest) ? nearest : 0;
  }
}

function moved({ x, y }: Point, direction: Point, by: number): Point {
  return { x: x + by * direction.x, y: y + by * direction.y };
}

function turned({ x, y }: Point, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: x * cos - y * sin, y: x * sin + y * cos };
}

/** How far along a ray an edge crosses it; undefined where it does not. */
function crossingOf(
  { x, y }: Point,
  direction: Point,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): number | undefined {
  // Across the ray, and along it.
  const [across0, across1] = [
    (x0 - x) * direction.y - (y0 - y) * direction.x,
    (x1 - x) * direction.y - (y1 - y) * direction.x,
  ];
  if (across0 > 0 === across1 > 0) return undefined;
  const t = across0 / (across0 - across1);
  return (x0 + t * (x1 - x0) - x) * direction.x + (y0 + t * (y1 - y0) - y) * direction.y;
}

/** How wide a region is where two stretches of its boundary face each other. Millimetres. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Box, Ring } from '../../geometry/base/polygon-types';
import { forEachEdge } from '../../geometry/base/ring';
import { ON_CURVE } from '../../geometry/base/tolerances';
import { cross, distance, dot, normalise } from '../../geometry/base/vector';
import { PointIndex } from '../../geometry/spatial/point-index';

/** A disc that touches the boundary in two places, and nothing reaches into it that faces the first of them. */
export interface FacingDisc {
  readonly centre: Point;
  readonly radius: number;
  /** Where it touches the other side. */
  readonly touch: Point;
}

/** A place of the boundary with the normal that points out of the region. */
export interface BoundaryPlace {
  readonly at: Point;
  readonly outward: Point;
}

/** mm: a curve that lies farther beside the boundary is none of it. */
const BESIDE = 4 * ON_CURVE;

/** Cosine of the angle by which curve and boundary may differ in direction. */
const ALIKE = Math.cos(Math.PI / 6);

/** Two places face each other where their normals are at least so far apart: the corners of a square do not. */
const FACING = Math.cos((110 * Math.PI) / 180);

/** The boundary near a place, as points close enough that a disc between two of them hardly passes. */
export class FacingBoundary {
  readonly places: readonly BoundaryPlace[];
  private readonly widest: number;
  private readonly index: PointIndex;

  /**
   * @param rings of one region
   * @param within where the boundary counts
   * @param widest mm: discs of a larger radius are not asked for
   */
  constructor(rings: readonly Ring[], within: Box, widest: number) {
    this.widest = widest;
    this.places = rings.flatMap((ring) => placesOn(ring, within, widest / 8));
    this.index = new PointIndex(this.places.map(({ at }) => at));
  }

  /** The boundary's places at a point, one for each direction that it looks to there. */
  placesAt(point: Point): BoundaryPlace[] {
    return this.near(point, 2 * ON_CURVE).filter(({ at }) => distance(at, point) < 2 * ON_CURVE);
  }

  /** The outward normal at a point of a curve, of the two given; undefined where the curve is no boundary there. */
  outwardAt(point: Point, normal: Point): Point | undefined {
    let best: { outward: Point; along: number } | undefined;
    for (const { at, outward } of this.near(point, this.widest / 4)) {
      const [dx, dy] = [point.x - at.x, point.y - at.y];
      const along = dot(outward, normal);
      if (Math.abs(dx * outward.x + dy * outward.y) > BESIDE + 0.1 * Math.hypot(dx, dy)) continue;
      if (!best || Math.abs(along) > Math.abs(best.along)) best = { outward, along };
    }
    if (!best || Math.abs(best.along) < ALIKE) return undefined;
    return best.along > 0 ? normal : { x: -normal.x, y: -normal.y };
  }

  /** The largest disc at a place that nothing which faces it reaches into; undefined where that is the widest asked for. */
  discAt({ at, outward }: BoundaryPlace): FacingDisc | undefined {
    let radius = this.widest;
    let touch: Point | undefined;
    // No disc of the widest radius through the place reaches farther.
    for (const { at: other, outward: facing } of this.near(at, 2 * this.widest)) {
      if (dot(outward, facing) > FACING) continue;
      const [dx, dy] = [at.x - other.x, at.y - other.y];
      const square = dx * dx + dy * dy;
      const across = dx * outward.x + dy * outward.y;
      if (square >= 2 * across * radius) continue;
      radius = square / (2 * across);
      touch = other;
    }
    if (!touch) return undefined;
    return { centre: { x: at.x - radius * outward.x, y: at.y - radius * outward.y }, radius, touch };
  }

  /** Within a square. */
  private near(point: Point, reach: number): BoundaryPlace[] {
    return this.index.near(point, reach).map((i) => defined(this.places[i]));
  }
}

function placesOn(ring: Ring, { minX, minY, maxX, maxY }: Box, step: number): BoundaryPlace[] {
  const places: BoundaryPlace[] = [];
  const push = (x: number, y: number, outward: Point) => {
    if (x >= minX && x <= maxX && y >= minY && y <= maxY) places.push({ at: { x, y }, outward });
  };
  let before = lastNormal(ring);
  forEachEdge(ring, (x0, y0, x1, y1) => {
    const outward = outwardOf(x0, y0, x1, y1);
    if (!outward) return;
    if (before) for (const normal of normalsBetween(before, outward)) push(x0, y0, normal);
    before = outward;
    if (Math.max(x0, x1) < minX || Math.min(x0, x1) > maxX || Math.max(y0, y1) < minY || Math.min(y0, y1) > maxY)
      return;
    const count = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / step));
    for (let i = 0; i <= count; i += 1) push(x0 + (i / count) * (x1 - x0), y0 + (i / count) * (y1 - y0), outward);
  });
  return places;
}

/** Rings have their region on the right as seen on the screen: the outward normal is on the left. */
function outwardOf(x0: number, y0: number, x1: number, y1: number): Point | undefined {
  return normalise({ x: y1 - y0, y: x0 - x1 });
}

/** Of the edge before the one that `forEachEdge` gives first. */
function lastNormal(ring: Ring): Point | undefined {
  let last: Point | undefined;
  let first = true;
  forEachEdge(ring, (x0, y0, x1, y1) => {
    if (!first) last = outwardOf(x0, y0, x1, y1) ?? last;
    first = false;
  });
  return last;
}

/** Where material reaches into the region with a corner, all directions between its two sides look into the region. */
function normalsBetween(before: Point, after: Point): Point[] {
  const turn = Math.atan2(cross(before, after), dot(before, after));
  if (turn > -CORNER) return [];
  const count = Math.ceil(-turn / CORNER);
  return Array.from({ length: count - 1 }, (_, i) => {
    const angle = (turn * (i + 1)) / count;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return { x: before.x * cos - before.y * sin, y: before.x * sin + before.y * cos };
  });
}

/** Radians: corners that turn by less need no directions between those of their sides. */
const CORNER = Math.PI / 18;

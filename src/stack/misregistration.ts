/** What sheets that land out of register leave bare of the ground that the drawing paints. Millimetres, y down. */
import type { Matrix, Point } from '../geometry/base/curve-types';
import { apply, translation } from '../geometry/base/matrix';
import type { Box, Polygon, Region } from '../geometry/base/polygon-types';
import { boxOfRing, joinBoxes } from '../geometry/base/ring';
import { MEANT_TO_MEET } from '../geometry/base/tolerances';
import { areaOf, difference, intersection, offset, perimeterOf, union } from '../geometry/boolean/index';
import { transformRegion } from '../geometry/polygon/transform';
import { CRACK } from './tile-seams';

/** mm: how far round joins may stay from true arcs here. */
const TOLERANCE = MEANT_TO_MEET;

/** Steps of halving that find the safe slip to a hundredth of a usual allowance. */
const HALVINGS = 6;

export interface ExposedGround {
  /** Between colours: not so near to ground that was bare before that it is the edge of what moved. */
  readonly seams: Region;
  /** mm² of them */
  readonly area: number;
  /** mm² of all that was painted and is bare now, the edges of what moved included. */
  readonly whole: number;
}

export interface Sweep {
  /** mm² of bare ground between colours for a slip to each side, the first to the right, then on clockwise. */
  readonly areas: readonly number[];
  /** All ground that a slip of no more than this, to any side, may lay bare. */
  readonly seams: Region;
  /** mm: the farthest slip to any side that lays nothing bare, or the one looked at where that does not either. */
  readonly safe: number;
}

/** The layers' openings as they are painted, each the union of what the ones beside it leave. */
export class MisregistrationModel {
  private readonly painted: Region;
  private readonly cores = new Map<number, Region>();

  private readonly layers: readonly Region[];

  /** @param layers the openings of each, in painting order */
  constructor(layers: readonly Region[]) {
    this.layers = layers;

    this.painted = union(layers);
  }

  /**
   * @param places where each layer lands; undefined where in register
   * @param allowance mm: what is nearer to the outline than twice this, or than the slip where that is more, is outline
   */
  exposedAfter(places: readonly (Matrix | undefined)[], allowance: number): ExposedGround {
    const landed = this.layers.map((openings, index) => moveRegion(openings, places[index]));
    const bare = withoutCracks(difference(this.painted, union(landed)));
    const slips = this.layers.map((openings, index) => farthest(openings, places[index]));
    const seams = withoutCracks(intersection(bare, this.core(Math.max(...slips, 2 * allowance))));
    return { seams, area: areaOf(seams), whole: areaOf(bare) };
  }

  /**
   * One layer slips to every side in turn.
   * @param slip mm
   * @param directions how many, evenly round
   */
  sweep(layer: number, slip: number, directions: number): Sweep {
    // A layer that is not there bares nothing.
    const openings = this.layers[layer] ?? [];
    const alone = this.onlyPaintedBy(layer, slip);
    const areas = Array.from({ length: directions }, (_, index) => {
      const angle = (index / directions) * 2 * Math.PI;
      const there = moveRegion(openings, translation(slip * Math.cos(angle), slip * Math.sin(angle)));
      return areaOf(withoutCracks(difference(alone, there)));
    });
    const openedBy = (distance: number) =>
      withoutCracks(difference(alone, offset(openings, -distance, 'round', TOLERANCE)));
    const seams = openedBy(slip);
    return { areas, seams, safe: seams.length === 0 ? slip : bisectSlip(openedBy, slip) };
  }

  /** What no other layer covers, away from the outline. */
  private onlyPaintedBy(layer: number, slip: number): Region {
    return difference(this.core(2 * slip), union(this.layers.filter((_, index) => index !== layer)));
  }

  /** The painted ground without a rim, in mm, where an edge is outline and no seam. */
  private core(rim: number): Region {
    const known = this.cores.get(rim);
    if (known) return known;
    const closed = offset(this.painted, CRACK, 'round', TOLERANCE);
    const core = offset(closed, -CRACK - rim, 'round', TOLERANCE);
    // A drag asks for ever other slips.
    if (this.cores.size > 4) this.cores.clear();
    this.cores.set(rim, core);
    return core;
  }
}

/** Of a whole layer, whose edge is no seam where the ground ends there: so it is tried and not read from widths. */
function bisectSlip(openedBy: (distance: number) => Region, slip: number): number {
  let [safe, open] = [0, slip];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (safe + open) / 2;
    if (openedBy(middle).length === 0) safe = middle;
    else open = middle;
  }
  return safe;
}

function moveRegion(region: Region, place: Matrix | undefined): Region {
  return place ? transformRegion(region, place) : region;
}

/** How far a place takes the corner of the layer's box that it takes farthest, in mm. */
function farthest(openings: Region, place: Matrix | undefined): number {
  if (!place || openings.length === 0) return 0;
  const box = joinBoxes(openings.map(({ outer }) => boxOfRing(outer)));
  return Math.max(
    ...corners(box).map((corner) => {
      const there = apply(place, corner);
      return Math.hypot(there.x - corner.x, there.y - corner.y);
    }),
  );
}

function corners(box: Box): Point[] {
  const { minX, minY, maxX, maxY } = box;
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** A sliver is thinner on the whole than a crack: its area over half its outline. */
function withoutCracks(region: Region): Region {
  return region.filter((polygon: Polygon) => 2 * areaOf(polygon) > CRACK * perimeterOf(polygon));
}

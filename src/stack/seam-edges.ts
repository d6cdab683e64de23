/** The edges of a cell's map, as its seams look at them. Integer grid; layers by their number in the cell. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Box } from '../geometry/base/polygon-types';
import { boxContainsBox, growBox, joinBoxes } from '../geometry/base/ring';
import { MEANT_TO_MEET, OVERLAY_GRID } from '../geometry/base/tolerances';
import { hypotenuse } from '../geometry/base/vector';
import { type LayeredOverlay, MAX_LAYERS } from '../geometry/boolean/layered-overlay';
import { nearestApproach, type ParameterInterval, type Segment } from '../geometry/spatial/segment-distance';

/** The layer of the map that says where bare ground is far enough. */
const DEEP = 1 << (MAX_LAYERS - 1);

/** Grid units: bare ground this narrow is a crack. Twice `CRACK`, and what rounding adds. */
const CRACK_WIDTH = (2 * MEANT_TO_MEET) / OVERLAY_GRID + 5;

/** The cosine between a crack's course across and the way to its other side: edges that run on are not across. */
const SQUARE_ENOUGH = 0.7;

/** No layers at all, and none of `MAX_LAYERS` either. */
const UNKNOWN = -1;

const WHOLE: ParameterInterval = { from: 0, to: 1 };

/** A bit of the border of the ground that one layer alone covers. */
export interface SingleCoverageEdge {
  readonly edge: number;
  readonly segment: Segment;
  /** What of it lies in the box asked for. */
  readonly interval: ParameterInterval;
  /** The other layers on its other side. */
  readonly beyond: number;
  /** Whether bare ground is too near on its other side: there the seam goes on, but runs out into an outline. */
  readonly rim: boolean;
}

export class SeamEdges {
  /** Of each layer that was asked about: what lies beyond each of its edges, `UNKNOWN` where nobody asked. */
  private readonly known: (Int32Array | undefined)[] = [];

  private readonly map: LayeredOverlay;
  readonly reach: number;

  /** @param reach grid units: how far the slipping sheet's edges are looked for */
  constructor(map: LayeredOverlay, reach: number) {
    this.map = map;
    this.reach = reach;
  }

  /**
   * Where seams may be too short, whether deep within the print or not: round all borders of what one layer alone
   * covers that lie within reach of an edge of that layer, or are one, with another layer beyond. Undefined where there
   * is none.
   */
  suspectBox(): Box | undefined {
    const { coverage: cover } = this.map;
    let box: Box | undefined;
    for (let face = 0; face < cover.length; face += 1) {
      const here = defined(cover[face]);
      const there = defined(cover[face ^ 1]);
      checkpoint();
      if (here === 0 || (here & (here - 1)) !== 0 || here === there) continue;
      const own = boxOfSegment(this.segment(face >> 1));
      // Where an edge adds nothing to the box, it does not matter what it is.
      if (box && boxContainsBox(box, own)) continue;
      if (this.isSuspect(face >> 1, here, there)) box = box ? joinBoxes([box, own]) : own;
    }
    return box;
  }

  /** Whether any bare ground of the map is a crack. */
  hasCracks(): boolean {
    const { coverage: cover } = this.map;
    for (let face = 0; face < cover.length; face += 1) {
      checkpoint();
      if (cover[face] !== 0 || cover[face ^ 1] === 0) continue;
      if (this.acrossCrack(face >> 1, 31 - Math.clz32(defined(cover[face ^ 1]))) !== 0) return true;
    }
    return false;
  }

  private isSuspect(edge: number, here: number, there: number): boolean {
    const own = 31 - Math.clz32(here);
    if ((there & here) === 0) return there !== 0 || this.acrossCrack(edge, own) !== 0;
    const segment = this.segment(edge);
    let near = false;
    this.forEachNear(own, segment, (_, other) => {
      near ||= nearestApproach(segment, WHOLE, other).distance < this.reach;
      return near;
    });
    return near;
  }

  /**
   * The border of the ground deep within the print that one layer alone covers, cracks included, as far as it runs in
   * the box.
   */
  forEachSingleCoverageEdge(box: Box, visit: (own: number, border: SingleCoverageEdge) => void): void {
    const { coverage: cover } = this.map;
    for (let face = 0; face < cover.length; face += 1) {
      checkpoint();
      const here = defined(cover[face]);
      const layers = here & ~DEEP;
      if (layers === here || layers === 0 || (layers & (layers - 1)) !== 0 || cover[face ^ 1] === here) continue;
      const segment = this.segment(face >> 1);
      const stretch = intervalInBox(segment, box);
      if (!stretch) continue;
      const there = defined(cover[face ^ 1]);
      visit(31 - Math.clz32(layers), {
        edge: face >> 1,
        segment,
        interval: stretch,
        beyond: there & ~here,
        rim: (there & DEEP) === 0,
      });
    }
  }

  /** Edges of the layer within reach of the segment's box, until one answers true. */
  forEachNear(own: number, segment: Segment, visit: (edge: number, segment: Segment) => boolean): void {
    const { minX, minY, maxX, maxY } = growBox(boxOfSegment(segment), this.reach);
    this.map.noded.finder?.search(minX, minY, maxX, maxY, (edge) => {
      return this.isEdgeOf(own, edge) && visit(edge, this.segment(edge));
    });
  }

  /**
   * The layer that covers the ground beyond an edge of layer `own`: of several the uppermost, but rather one of
   * `preferred`. Undefined where there is none, or only a crack in the layer itself.
   */
  neighbourAt(edge: number, own: number, preferred: number): number | undefined {
    const known = (this.known[own] ??= new Int32Array(this.map.noded.edges.ax.length).fill(UNKNOWN));
    if (known[edge] === UNKNOWN) known[edge] = this.beyond(edge, own);
    const beyond = defined(known[edge]);
    if (beyond === 0) return undefined;
    return 31 - Math.clz32(beyond & preferred || beyond);
  }

  private beyond(edge: number, own: number): number {
    const bit = 1 << own;
    const { coverage: cover } = this.map;
    const outer = (defined(cover[2 * edge]) & bit) !== 0 ? 2 * edge + 1 : 2 * edge;
    const across = this.acrossCrack(edge, own);
    if ((across & bit) !== 0) return 0;
    return (defined(cover[outer]) | across) & ~DEEP & ~bit;
  }

  /** The layers of other edges that run along this one, the other way about, within the width of a crack. */
  private acrossCrack(edge: number, own: number): number {
    const segment = this.segment(edge);
    const { coverage: cover, noded } = this.map;
    const outer = (defined(cover[2 * edge]) & (1 << own)) !== 0 ? 2 * edge + 1 : 2 * edge;
    const x = (segment.ax + segment.bx) / 2;
    const y = (segment.ay + segment.by) / 2;
    const ground = defined(cover[outer]) & ~DEEP;
    let layers = 0;
    noded.finder?.search(x - CRACK_WIDTH, y - CRACK_WIDTH, x + CRACK_WIDTH, y + CRACK_WIDTH, (other) => {
      if (other === edge) return false;
      const beyond = this.beyondCrack(segment, outer, other, x, y);
      if (beyond !== undefined) layers |= beyond & ~ground;
      return false;
    });
    return layers;
  }

  /** What covers the far side of `other`, where it faces the segment's middle (x, y) across the ground beyond that. */
  private beyondCrack(segment: Segment, outer: number, other: number, x: number, y: number): number | undefined {
    const facing = this.segment(other);
    const [ux, uy] = [facing.bx - facing.ax, facing.by - facing.ay];
    const u = Math.max(0, Math.min(1, ((x - facing.ax) * ux + (y - facing.ay) * uy) / (ux * ux + uy * uy)));
    const [dx, dy] = [facing.ax + u * ux - x, facing.ay + u * uy - y];
    const distance = hypotenuse(dx, dy);
    if (distance > CRACK_WIDTH) return undefined;
    const [alongX, alongY] = [segment.bx - segment.ax, segment.by - segment.ay];
    const outwards = (outer & 1) === 0 ? 1 : -1;
    const away = outwards * (alongX * dy - alongY * dx);
    if (away <= SQUARE_ENOUGH * distance * hypotenuse(alongX, alongY)) return undefined;
    const leftOfOther = ux * (y - facing.ay) - uy * (x - facing.ax);
    return defined(this.map.coverage[leftOfOther > 0 ? 2 * other + 1 : 2 * other]);
  }

  isEdgeOf(layer: number, edge: number): boolean {
    const { coverage: cover } = this.map;
    return ((defined(cover[2 * edge]) ^ defined(cover[2 * edge + 1])) & (1 << layer)) !== 0;
  }

  private segment(edge: number): Segment {
    const { ax, ay, bx, by } = this.map.noded.edges;
    return { ax: defined(ax[edge]), ay: defined(ay[edge]), bx: defined(bx[edge]), by: defined(by[edge]) };
  }
}

export function boxOfSegment({ ax, ay, bx, by }: Segment): Box {
  return { minX: Math.min(ax, bx), minY: Math.min(ay, by), maxX: Math.max(ax, bx), maxY: Math.max(ay, by) };
}

function intervalInBox({ ax, ay, bx, by }: Segment, { minX, minY, maxX, maxY }: Box): ParameterInterval | undefined {
  let [from, to] = [0, 1];
  for (const [start, slope, low, high] of [
    [ax, bx - ax, minX, maxX],
    [ay, by - ay, minY, maxY],
  ] as const) {
    if (slope === 0 && (start < low || start > high)) return undefined;
    if (slope === 0) continue;
    const [one, two] = [(low - start) / slope, (high - start) / slope];
    from = Math.max(from, Math.min(one, two));
    to = Math.min(to, Math.max(one, two));
  }
  return from <= to ? { from, to } : undefined;
}

/**
 * The seams in one cell of the stack: `short-overlaps.ts` joins them. Inside, all is on the integer grid; a cell's
 * layers reach over its border by a margin that is wider than anything that matters to a place in it.
 */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Point } from '../geometry/base/curve-types';
import type { Box, Polygon, Ring } from '../geometry/base/polygon-types';
import { boxOfRing, growBox, ringsOf } from '../geometry/base/ring';
import { MEANT_TO_MEET, WRITTEN_STEP } from '../geometry/base/tolerances';
import { fromGrid, toGrid, UNITS_PER_MM } from '../geometry/boolean/grid';
import { offset } from '../geometry/boolean/index';
import {
  addLayer,
  type LayeredOverlay,
  MAX_LAYERS,
  overlayLayers,
  ringsOfCoverage,
} from '../geometry/boolean/layered-overlay';
import { nestRings } from '../geometry/boolean/nest';
import { cutToBox } from '../geometry/boolean/tiles';
import { simplifyRing } from '../geometry/polygon/simplify';
import {
  intervalWithin,
  nearestApproach,
  type ParameterInterval,
  type Segment,
} from '../geometry/spatial/segment-distance';
import { SeamEdges, type SingleCoverageEdge } from './seam-edges';

/** mm: bare ground narrower than twice this is a crack between edges that were meant to meet. */
export const CRACK = MEANT_TO_MEET;

/** mm, and in slips: how finely it is known where ground is deep enough. Widths of overlaps do not depend on it. */
const ARC_TOLERANCE = WRITTEN_STEP;
const ARC_SHARE = 0.002;

/**
 * A straight bit of the border of the ground that one sheet alone covers, where a short slip of that sheet bares it.
 */
export interface SeamPiece {
  /** The layer whose slip opens it, and the one beyond its edge. */
  readonly slipping: number;
  readonly neighbour: number;
  /** mm */
  readonly segment: Segment;
  /** Whether it is the end of a seam, across its course. */
  readonly rim: boolean;
  /** mm: the least slip that opens it, */
  readonly width: number;
  /** where it opens first, and which place on the slipping sheet's edge comes to lie there. */
  readonly at: Point;
  readonly facing: Point;
}

export interface TileSeams {
  /** Within the cell itself. */
  readonly pieces: readonly SeamPiece[];
  /** What any layer paints of the cell itself, on the grid; cut rings run along the border there. */
  readonly painted: readonly Ring[];
}

/** What a layer has in the cell and its margin. */
export interface TileLayer {
  readonly layer: number;
  readonly rings: readonly Ring[];
}

/** @param slip mm */
export function measureTile(layers: readonly TileLayer[], core: Box, slip: number): TileSeams {
  const [first, ...others] = layers;
  if (!first) return { pieces: [], painted: [] };
  if (others.length === 0) return { pieces: [], painted: cutToBox(first.rings, core) };
  const map = layers.length < MAX_LAYERS ? overlayLayers(layers.map(({ rings }) => rings)) : undefined;
  if (!map) return { pieces: [], painted: layers.flatMap(({ rings }) => cutToBox(rings, core)) };
  const painted = ringsOfCoverage(map, (cover) => cover !== 0);
  const numbers = layers.map(({ layer }) => layer);
  return { pieces: seamPieces(map, painted, { numbers, core, slip }), painted: cutToBox(painted, core) };
}

interface TileTask {
  /** Of the cell's layers, in the stack. */
  readonly numbers: readonly number[];
  readonly core: Box;
  readonly slip: number;
}

function seamPieces(map: LayeredOverlay, painted: readonly Ring[], task: TileTask): SeamPiece[] {
  const reach = task.slip * UNITS_PER_MM;
  const shallow = new SeamEdges(map, reach);
  const suspect = shallow.suspectBox();
  if (!suspect) return [];
  const around = cutToBox(painted, growBox(suspect, 4 * reach + CRACK * UNITS_PER_MM));
  const deep = addLayer(map, deepRings(around, task.slip, shallow.hasCracks()), MAX_LAYERS - 1);
  if (!deep) return [];
  const edges = new SeamEdges(deep, reach);
  const pieces: SeamPiece[] = [];
  edges.forEachSingleCoverageEdge(task.core, (own, border) => {
    pieces.push(...piecesOf(border, own, edges, task));
  });
  return pieces;
}

/** Where the nearest bare ground is farther than twice the slip: what is nearer is outline, not seam. */
function deepRings(painted: readonly Ring[], slip: number, close: boolean): Ring[] {
  const region = nestRings(painted.map((ring) => fromGrid(ring)));
  const closed = close ? offset(region, CRACK, 'bevel', ARC_TOLERANCE) : region;
  const inset = 2 * slip + (close ? CRACK : 0);
  const fineness = Math.max(ARC_TOLERANCE, ARC_SHARE * slip);
  const wide = closed
    .filter(({ outer }) => isWider(boxOfRing(outer), 2 * inset))
    .map((polygon) => drawnCoarsely(polygon, fineness));
  const deep = offset(wide, -inset, 'round', fineness);
  return deep.flatMap(ringsOf).map((ring) => toGrid(ring));
}

/** Moving an outline takes far longer than to leave out what of it does not count. */
function drawnCoarsely({ outer, holes }: Polygon, tolerance: number): Polygon {
  const coarse = (ring: Ring) => simplifyRing(ring, tolerance);
  return { outer: coarse(outer), holes: holes.map(coarse).filter((hole) => hole.length > 0) };
}

function isWider({ minX, minY, maxX, maxY }: Box, width: number): boolean {
  return maxX - minX > width && maxY - minY > width;
}

/** For each neighbour on the other side of the slipping sheet's edge, the stretches of a segment that open. */
function piecesOf(border: SingleCoverageEdge, own: number, edges: SeamEdges, task: TileTask): SeamPiece[] {
  const { segment, interval: stretch, beyond } = border;
  const found = new Map<number, Opening[]>();
  // Where colours only touch, no edge opens the seam sooner than the one that lies on it.
  const touching = edges.isEdgeOf(own, border.edge) ? edges.neighbourAt(border.edge, own, beyond) : undefined;
  if (touching !== undefined) found.set(touching, [openAtOnce(segment, stretch)]);
  edges.forEachNear(own, segment, (edge, other) => {
    const neighbour = edges.neighbourAt(edge, own, beyond);
    if (neighbour === undefined || neighbour === touching) return false;
    const opening = openingBy(other, border, edges.reach);
    if (!opening) return false;
    const list = found.get(neighbour);
    if (list) list.push(opening);
    else found.set(neighbour, [opening]);
    return false;
  });
  return [...found].flatMap(([neighbour, openings]) =>
    joined(openings).map(({ from, to, width, along, other, alongOther }) => ({
      slipping: defined(task.numbers[own]),
      neighbour: defined(task.numbers[neighbour]),
      rim: border.rim,
      width,
      at: placeOn(segment, along),
      facing: placeOn(other, alongOther),
      segment: partOf(segment, from, to),
    })),
  );
}

function openAtOnce(segment: Segment, { from, to }: ParameterInterval): Opening {
  const middle = (from + to) / 2;
  return { from, to, width: 0, along: middle, other: segment, alongOther: middle };
}

/** @param reach grid units */
function openingBy(
  other: Segment,
  { segment, interval: stretch }: SingleCoverageEdge,
  reach: number,
): Opening | undefined {
  checkpoint(4);
  const within = intervalWithin(segment, other, reach);
  if (!within) return undefined;
  const [from, to] = [Math.max(within.from, stretch.from), Math.min(within.to, stretch.to)];
  if (from > to) return undefined;
  const { distance, t, u } = nearestApproach(segment, { from, to }, other);
  return { from, to, width: distance / UNITS_PER_MM, along: t, other, alongOther: u };
}

/** A stretch of a segment that one edge of the slipping sheet opens, and how soon. */
interface Opening extends ParameterInterval {
  /** mm */
  readonly width: number;
  /** Where on the segment it opens first, and where on the other edge that comes from; from 0 to 1. */
  readonly along: number;
  readonly other: Segment;
  readonly alongOther: number;
}

/** Stretches that run into each other, as one that opens where the first of them does. */
function joined(openings: readonly Opening[]): Opening[] {
  const result: Opening[] = [];
  let last: Opening | undefined;
  for (const opening of [...openings].sort((a, b) => a.from - b.from)) {
    if (last && opening.from <= last.to + 1e-9) {
      const { width, along, other, alongOther } = opensSooner(opening, last) ? opening : last;
      last = { from: last.from, to: Math.max(last.to, opening.to), width, along, other, alongOther };
      result[result.length - 1] = last;
    } else {
      last = opening;
      result.push(opening);
    }
  }
  return result;
}

/** Of two that open as soon, the longer one counts: it has its first place in the middle of what opens. */
function opensSooner(a: Opening, b: Opening): boolean {
  return Math.abs(a.width - b.width) < 1e-9 ? a.to - a.from > b.to - b.from : a.width < b.width;
}

function placeOn({ ax, ay, bx, by }: Segment, t: number): Point {
  return { x: (ax + t * (bx - ax)) / UNITS_PER_MM, y: (ay + t * (by - ay)) / UNITS_PER_MM };
}

function partOf(segment: Segment, from: number, to: number): Segment {
  const [a, b] = [placeOn(segment, from), placeOn(segment, to)];
  return { ax: a.x, ay: a.y, bx: b.x, by: b.y };
}

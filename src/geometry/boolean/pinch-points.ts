/** Pieces that hang together by contact of no width, taken apart. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Polygon, Region, Ring } from '../base/polygon-types';
import { boxOfRing, boxOfVertices, distanceToEdge, growBox, ringOfBox, ringsOf } from '../base/ring';
import { OVERLAY_GRID, TOUCHING } from '../base/tolerances';
import { EdgeIndex } from '../spatial/edge-index';
import { mitredOffset } from './mitred-offset';
import { nearnessTo } from './near-rings';
import { nestRings } from './nest';

/** In mm: boundaries closer than this count as touching. */
const CONTACT = TOUCHING;

/** A region whose pinches were looked for. */
export interface PinchSplit {
  readonly given: Region;
  /** The rings that touch themselves or another of their polygon. */
  readonly touching: ReadonlySet<Ring>;
  /** The region with its pinches parted. */
  readonly result: Region;
}

/**
 * Polygons whose parts hold together only by corners, by a corner on an edge, or by a slit of no width become separate
 * polygons; contact is anything up to two grid units (0.2 µm). The rings that touch are moved by one grid unit, with
 * mitred corners, on a grid eight times finer, so that whatever has no width opens; all others pass unchanged.
 */
export function splitAtPinchPoints(region: Region): Region {
  return splitAtPinchPointsAgain(region).result;
}

/** The same. Rings that are the very objects of an earlier region's are not looked at, but near rings that are not. */
export function splitAtPinchPointsAgain(given: Region, earlier?: PinchSplit): PinchSplit {
  const touching = new Set(earlier ? contactsSince(given, earlier) : contactsIn(given.map(ringsOf)));
  const result = given.flatMap((polygon) => {
    const own = ringsOf(polygon).filter((ring) => touching.has(ring));
    return own.length > 0 ? splitPolygon(polygon, touching) : [polygon];
  });
  return { given, touching, result };
}

/** Of the rings of each polygon. */
function contactsIn(polygons: readonly (readonly Ring[])[]): Ring[] {
  return polygons.flatMap((rings) => [...ringsInContact(rings)]);
}

function* contactsSince(given: Region, earlier: PinchSplit): Iterable<Ring> {
  const [before, now] = [new Set(earlier.given.flatMap(ringsOf)), new Set(given.flatMap(ringsOf))];
  const changed = [...[...before].filter((ring) => !now.has(ring)), ...[...now].filter((ring) => !before.has(ring))];
  const isNear = nearnessTo(changed, CONTACT);
  for (const polygon of given) {
    const rings = ringsOf(polygon);
    const near = new Set(rings.filter(isNear));
    const found = near.size > 0 ? ringsInContact(rings.filter(nearnessTo([...near], CONTACT))) : near;
    yield* rings.filter((ring) => (near.has(ring) ? found.has(ring) : earlier.touching.has(ring)));
  }
}

/** Where the outer ring touches nothing, a box far outside stands for it while the holes are moved. */
function splitPolygon({ outer, holes }: Polygon, touching: ReadonlySet<Ring>): Region {
  const [moved, kept] = [holes.filter((hole) => touching.has(hole)), holes.filter((hole) => !touching.has(hole))];
  if (touching.has(outer)) return nestRings([...shrinkRings([outer, ...moved]), ...kept]);
  const box = growBox(boxOfRing(outer), 1);
  const border = box.minX + 0.5;
  const inside = shrinkRings([ringOfBox(box), ...moved]).filter((ring) => boxOfRing(ring).minX > border);
  return nestRings([outer, ...inside, ...kept]);
}

function shrinkRings(rings: readonly Ring[]): Ring[] {
  return mitredOffset(rings, -OVERLAY_GRID, 8);
}

/** So many vertices of a ring, one after the other, are asked about at once. */
const VERTICES_PER_QUERY = 8;

/** With more edges than this round a run, its vertices are asked about one by one: long edges lie aslant there. */
const MAX_NEARBY_EDGES = 64;

/** The rings that touch themselves or each other. */
function ringsInContact(rings: readonly Ring[]): Set<Ring> {
  const touching = new Set<Ring>();
  const edges = edgesOf(rings);
  if (edges.count === 0) return touching;
  const blocks = new EdgeIndex(edges.x, edges.y, edges.ringStart);
  const touch = (vertex: number, edge: number): void => {
    touching.add(defined(rings[defined(edges.ring[vertex])])).add(defined(rings[defined(edges.ring[edge])]));
  };
  rings.forEach((_, ring) => {
    const end = defined(edges.ringStart[ring + 1]);
    for (let vertex = defined(edges.ringStart[ring]); vertex < end; vertex += VERTICES_PER_QUERY) {
      visitContacts(edges, blocks, vertex, Math.min(end, vertex + VERTICES_PER_QUERY), touch);
    }
  });
  return touching;
}

/** Calls back with vertices from `first` up to, not including, `end`, and edges of others that they lie on. */
function visitContacts(
  edges: RingEdges,
  blocks: EdgeIndex,
  first: number,
  end: number,
  visit: (vertex: number, edge: number) => void,
): void {
  const { x, y, previous } = edges;
  const { minX, minY, maxX, maxY } = growBox(boxOfVertices(x, y, first, end), CONTACT);
  let around = 0;
  const isCrowded = () => around > MAX_NEARBY_EDGES && end - first > 1;
  blocks.search(minX, minY, maxX, maxY, (edge) => {
    for (let vertex = first; vertex < end; vertex += 1) {
      if (edge === vertex || edge === previous[vertex]) continue;
      if (isNear(edges, edge, defined(x[vertex]), defined(y[vertex]))) visit(vertex, edge);
    }
    around += 1;
    return isCrowded();
  });
  if (!isCrowded()) return;
  for (let vertex = first; vertex < end; vertex += 1) visitContacts(edges, blocks, vertex, vertex + 1, visit);
}

/** Whether a point is as near to an edge as things are that touch. */
function isNear({ x, y, next }: RingEdges, edge: number, px: number, py: number): boolean {
  const ax = defined(x[edge]);
  const bx = defined(x[defined(next[edge])]);
  if ((ax < px - CONTACT && bx < px - CONTACT) || (ax > px + CONTACT && bx > px + CONTACT)) return false;
  const ay = defined(y[edge]);
  const by = defined(y[defined(next[edge])]);
  if ((ay < py - CONTACT && by < py - CONTACT) || (ay > py + CONTACT && by > py + CONTACT)) return false;
  return distanceToEdge(px, py, ax, ay, bx, by) <= CONTACT;
}

/** Edge i runs from vertex i to vertex next[i]; ring k has those from ringStart[k] up to, without, ringStart[k + 1]. */
interface RingEdges {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly next: Uint32Array;
  readonly previous: Uint32Array;
  readonly ring: Uint32Array;
  readonly ringStart: Int32Array;
}

function edgesOf(rings: readonly Ring[]): RingEdges {
  const ringStart = new Int32Array(rings.length + 1);
  rings.forEach((ring, number) => (ringStart[number + 1] = defined(ringStart[number]) + (ring.length >> 1)));
  const count = defined(ringStart[rings.length]);
  const floats = () => new Float64Array(count);
  const numbers = () => new Uint32Array(count);
  const edges = { count, ringStart, x: floats(), y: floats(), next: numbers(), previous: numbers(), ring: numbers() };
  rings.forEach((ring, number) => {
    const start = defined(ringStart[number]);
    const end = defined(ringStart[number + 1]);
    checkpoint(end - start);
    for (let vertex = start; vertex < end; vertex += 1) {
      const after = vertex + 1 < end ? vertex + 1 : start;
      edges.x[vertex] = defined(ring[2 * (vertex - start)]);
      edges.y[vertex] = defined(ring[2 * (vertex - start) + 1]);
      edges.next[vertex] = after;
      edges.previous[after] = vertex;
      edges.ring[vertex] = number;
    }
  });
  return edges;
}

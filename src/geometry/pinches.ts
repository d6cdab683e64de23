/** Pieces that hang together by contact of no width, taken apart. */
import Flatbush from 'flatbush';
import { indexBoxes } from './clusters';
import type { Box, Polygon, Region, Ring } from './region';
import { offsetRings } from './clipper';
import { UNITS_PER_MM } from './grid';
import { nestRings } from './nest-rings';
import { boxOfRing, distanceToEdge, growBox, ringOfBox, ringsOf } from './rings';
import { boxesOfEdges } from './rings-near';

const GRID = 1 / UNITS_PER_MM;

/** In mm: boundaries closer than this count as touching. */
const CONTACT = 2 * GRID;

/** A region whose pinches were looked for. */
export interface Parted {
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
export function splitAtPinches(region: Region): Region {
  return partAtPinches(region).result;
}

/** The same. Rings that are the very objects of an earlier region's are not looked at, but near rings that are not. */
export function partAtPinches(given: Region, earlier?: Parted): Parted {
  const touching = new Set(earlier ? contactsSince(given, earlier) : contactsIn(given.map(ringsOf)));
  const result = given.flatMap((polygon) => {
    const own = ringsOf(polygon).filter((ring) => touching.has(ring));
    return own.length > 0 ? parted(polygon, touching) : [polygon];
  });
  return { given, touching, result };
}

/** Of the rings of each polygon. */
function contactsIn(polygons: readonly (readonly Ring[])[]): Ring[] {
  return polygons.flatMap((rings) => [...ringsInContact(rings)]);
}

function* contactsSince(given: Region, earlier: Parted): Iterable<Ring> {
  const [before, now] = [new Set(earlier.given.flatMap(ringsOf)), new Set(given.flatMap(ringsOf))];
  const changed = [...[...before].filter((ring) => !now.has(ring)), ...[...now].filter((ring) => !before.has(ring))];
  const isNear = nearnessTo(changed);
  for (const polygon of given) {
    const rings = ringsOf(polygon);
    const near = new Set(rings.filter(isNear));
    const found = near.size > 0 ? ringsInContact(rings.filter(nearnessTo([...near]))) : near;
    yield* rings.filter((ring) => (near.has(ring) ? found.has(ring) : earlier.touching.has(ring)));
  }
}

/** Whether an edge of a ring comes so near to one of the others' that they may touch. */
function nearnessTo(others: readonly Ring[]): (ring: Ring) => boolean {
  const boxes = others.flatMap((ring) => boxesOfEdges(ring).map((box) => growBox(box, CONTACT)));
  if (boxes.length === 0) return () => false;
  const index = indexBoxes(boxes);
  const meets = ({ minX, minY, maxX, maxY }: Box) => index.collides(minX, minY, maxX, maxY);
  return (ring) => meets(boxOfRing(ring)) && boxesOfEdges(ring).some(meets);
}

/** Where the outer ring touches nothing, a box far outside stands for it while the holes are moved. */
function parted({ outer, holes }: Polygon, touching: ReadonlySet<Ring>): Region {
  const [moved, kept] = [holes.filter((hole) => touching.has(hole)), holes.filter((hole) => !touching.has(hole))];
  if (touching.has(outer)) return nestRings([...shrunk([outer, ...moved]), ...kept]);
  const box = growBox(boxOfRing(outer), 1);
  const border = box.minX + 0.5;
  const inside = shrunk([ringOfBox(box), ...moved]).filter((ring) => boxOfRing(ring).minX > border);
  return nestRings([outer, ...inside, ...kept]);
}

function shrunk(rings: readonly Ring[]): Ring[] {
  return offsetRings(rings, -GRID, 'miter', GRID, 8);
}

/** The rings that touch themselves or each other. */
function ringsInContact(rings: readonly Ring[]): Set<Ring> {
  const touching = new Set<Ring>();
  const edges = edgesOf(rings);
  if (edges.count === 0) return touching;
  const tree = new Flatbush(edges.count);
  const { x, y, next } = edges;
  for (let edge = 0; edge < edges.count; edge += 1) {
    const [x0, y0, x1, y1] = [x[edge]!, y[edge]!, x[next[edge]!]!, y[next[edge]!]!];
    tree.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
  }
  tree.finish();
  for (let vertex = 0; vertex < edges.count; vertex += 1) {
    visitContacts(edges, tree, vertex, (edge) => touching.add(rings[edges.ring[vertex]!]!).add(rings[edges.ring[edge]!]!));
  }
  return touching;
}

/** Calls back with the edges that the vertex lies on, other than the two that meet there. */
function visitContacts(edges: RingEdges, tree: Flatbush, vertex: number, visit: (edge: number) => void): void {
  const [x, y, before] = [edges.x[vertex]!, edges.y[vertex]!, edges.previous[vertex]!];
  tree.collides(x - CONTACT, y - CONTACT, x + CONTACT, y + CONTACT, (edge) => {
    if (edge !== vertex && edge !== before && distanceFromEdge(edges, edge, x, y) <= CONTACT) visit(edge);
    return false;
  });
}

function distanceFromEdge({ x, y, next }: RingEdges, edge: number, px: number, py: number): number {
  return distanceToEdge(px, py, x[edge]!, y[edge]!, x[next[edge]!]!, y[next[edge]!]!);
}

/** Edge i runs from vertex i to vertex next[i]. */
interface RingEdges {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly next: Uint32Array;
  readonly previous: Uint32Array;
  readonly ring: Uint32Array;
}

function edgesOf(rings: readonly Ring[]): RingEdges {
  const count = rings.reduce((sum, ring) => sum + (ring.length >> 1), 0);
  const floats = () => new Float64Array(count);
  const numbers = () => new Uint32Array(count);
  const edges = { count, x: floats(), y: floats(), next: numbers(), previous: numbers(), ring: numbers() };
  let start = 0;
  rings.forEach((ring, number) => {
    const size = ring.length >> 1;
    for (let at = 0; at < size; at += 1) {
      const vertex = start + at;
      const after = at + 1 < size ? vertex + 1 : start;
      edges.x[vertex] = ring[2 * at]!;
      edges.y[vertex] = ring[2 * at + 1]!;
      edges.next[vertex] = after;
      edges.previous[after] = vertex;
      edges.ring[vertex] = number;
    }
    start += size;
  });
  return edges;
}

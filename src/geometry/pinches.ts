/** Pieces that hang together by contact of no width, taken apart. */
import Flatbush from 'flatbush';
import { indexBoxes } from './clusters';
import type { Polygon, Region, Ring } from './region';
import { offsetRings } from './clipper';
import { UNITS_PER_MM } from './grid';
import { nestRings } from './nest-rings';
import { boxOfRing, forEachEdge, growBox, isSameRing, ringsOf } from './rings';

const GRID = 1 / UNITS_PER_MM;

/** In mm: boundaries closer than this count as touching. */
const CONTACT = 2 * GRID;

const NO_RING = new Float64Array(0);

/**
 * Polygons whose parts hold together only by corners, by a corner on an edge, or by a slit of no width become separate
 * polygons; contact is anything up to two grid units (0.2 µm). Such polygons are shrunk by one grid unit, with mitred
 * corners, on a grid eight times finer, so that whatever has no width opens; the others pass unchanged.
 * @param sound polygons that are known to pass: where the region has one of them, only what is new in it is looked at
 */
export function splitAtPinches(region: Region, sound: Region = []): Region {
  const soundBy = new Map(sound.map((polygon) => [keyOf(polygon.outer), polygon]));
  return region.flatMap((polygon) => {
    const known = soundBy.get(keyOf(polygon.outer));
    const suspect = known ? newContacts(polygon, known) : polygon;
    return suspect && mayBePinched(suspect) ? shrunk(polygon) : [polygon];
  });
}

/** The outer ring, the holes that a sound polygon has not, and those whose boxes they touch; undefined if all are known. */
function newContacts(polygon: Polygon, known: Polygon): Polygon | undefined {
  if (!isSameRing(polygon.outer, known.outer)) return polygon;
  const knownBy = new Map(known.holes.map((hole) => [keyOf(hole), hole]));
  const isKnown = (hole: Ring) => isSameRing(hole, knownBy.get(keyOf(hole)) ?? NO_RING);
  const added = polygon.holes.filter((hole) => !isKnown(hole));
  if (added.length === 0) return undefined;
  const boxes = indexBoxes(added.map((hole) => growBox(boxOfRing(hole), CONTACT)));
  const near = polygon.holes.filter((hole) => {
    const { minX, minY, maxX, maxY } = boxOfRing(hole);
    return boxes.search(minX, minY, maxX, maxY).length > 0;
  });
  return { outer: polygon.outer, holes: near };
}

function keyOf(ring: Ring): string {
  return `${ring.length} ${ring[0]} ${ring[1]}`;
}

function shrunk(polygon: Polygon): Region {
  return nestRings(offsetRings(ringsOf(polygon), -GRID, 'miter', GRID, 8));
}

function mayBePinched(polygon: Polygon): boolean {
  const edges = edgesOf(polygon);
  const index = new Flatbush(edges.length / 6);
  for (let at = 0; at < edges.length; at += 6) {
    const [x0, y0, x1, y1] = [edges[at] ?? 0, edges[at + 1] ?? 0, edges[at + 2] ?? 0, edges[at + 3] ?? 0];
    index.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
  }
  index.finish();
  for (let at = 0; at < edges.length; at += 6) {
    if (touchesAnother(edges, index, at)) return true;
  }
  return false;
}

/** Whether the end of the edge at `at` lies on an edge other than the two that meet there. */
function touchesAnother(edges: Float64Array, index: Flatbush, at: number): boolean {
  const [x, y] = [edges[at + 2] ?? 0, edges[at + 3] ?? 0];
  const [self, next] = [at / 6, edges[at + 5] ?? 0];
  return index.collides(x - CONTACT, y - CONTACT, x + CONTACT, y + CONTACT, (other) => {
    return other !== self && other !== next && distanceToEdge(edges, 6 * other, x, y) <= CONTACT;
  });
}

function distanceToEdge(edges: Float64Array, at: number, x: number, y: number): number {
  const [x0, y0] = [edges[at] ?? 0, edges[at + 1] ?? 0];
  const [dx, dy] = [(edges[at + 2] ?? 0) - x0, (edges[at + 3] ?? 0) - y0];
  const square = dx * dx + dy * dy;
  const along = square > 0 ? Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / square)) : 0;
  return Math.hypot(x0 + along * dx - x, y0 + along * dy - y);
}

/** x0, y0, x1, y1, previous, next of each edge. */
function edgesOf(polygon: Polygon): Float64Array {
  const rows: number[] = [];
  for (const ring of ringsOf(polygon)) {
    const first = rows.length / 6;
    const count = ring.length / 2;
    let place = 0;
    forEachEdge(ring, (x0, y0, x1, y1) => {
      rows.push(x0, y0, x1, y1, first + ((place + count - 1) % count), first + ((place + 1) % count));
      place += 1;
    });
  }
  return Float64Array.from(rows);
}

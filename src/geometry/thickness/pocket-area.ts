/** What a chord cuts off its polygon. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import { type Boundary, TouchFinder } from './boundary-index';
import { BoundaryLoop, edgesAcrossRay, sweptAreas } from './boundary-loop';
import { type Chord, type EdgePlace, segmentsCross } from './chord';
import { boundaryPointAt } from './tangent-disc';

export interface PocketArea {
  /** mm² */
  readonly area: number;
  readonly at: Point;
}

/** From how many places of a side's boundary a point inside it is sought. */
const TRIES = 24;

/** Measures the sides of chords; sums over whole rings are made once. */
export class PocketFinder {
  private readonly swept = new Map<number, Float64Array>();
  /** For a hole and a ring, the ring's edges to the right of the hole. */
  private readonly rays = new Map<number, readonly number[]>();
  private readonly ringsOfPolygon = new Map<number, number[]>();

  private readonly boundary: Boundary;
  private readonly radius: number;

  /** `radius` (mm): points given are this far from the boundary where the sides have room. */
  constructor(boundary: Boundary, radius: number) {
    this.boundary = boundary;
    this.radius = radius;

    const { ringStart, polygon } = boundary.outline;
    for (let ring = 0; ring + 1 < ringStart.length; ring += 1) {
      const number = defined(polygon[defined(ringStart[ring])]);
      const rings = this.ringsOfPolygon.get(number);
      if (rings) rings.push(ring);
      else this.ringsOfPolygon.set(number, [ring]);
    }
  }

  /** The smaller of the two sides of a chord whose ends lie on one ring; undefined if they do not. */
  find(chord: Chord): PocketArea | undefined {
    const { outline } = this.boundary;
    const [from, to] = [this.beforeEnd(chord.from), this.beforeEnd(chord.to)];
    const ring = defined(outline.ring[from.edge]);
    if (outline.ring[to.edge] !== ring) return undefined;
    const [there, back] = [new BoundaryLoop(outline, from, to), new BoundaryLoop(outline, to, from)];
    const [thereArea, backArea] = [there.area(this.sums(ring)), back.area(this.sums(ring))];
    // Of a hole's two loops one encloses a pocket, the other the hole itself: that one's area is negative.
    const takeThere = thereArea > 0 && (backArea <= 0 || thereArea <= backArea);
    const [enclosed, other] = takeThere ? [there, back] : [back, there];
    const area = Math.max(0, takeThere ? thereArea : backArea) - this.holesIn(enclosed);
    const rest = this.polygonArea(ring) - area;
    return { area: Math.max(0, Math.min(area, rest)), at: this.pointOf(area <= rest ? enclosed : other) };
  }

  /** The same place, given as the next edge's start where it is an edge's end. */
  private beforeEnd(place: EdgePlace): EdgePlace {
    const { length, next } = this.boundary.outline;
    return place.at < defined(length[place.edge]) ? place : { ...place, edge: defined(next[place.edge]), at: 0 };
  }

  private sums(ring: number): Float64Array {
    let sums = this.swept.get(ring);
    if (!sums) {
      sums = sweptAreas(this.boundary.outline, ring);
      this.swept.set(ring, sums);
    }
    return sums;
  }

  private ringsBeside(ring: number): readonly number[] {
    const { polygon, ringStart } = this.boundary.outline;
    return this.ringsOfPolygon.get(defined(polygon[defined(ringStart[ring])]))!;
  }

  private areaOfRing(ring: number): number {
    return defined(this.sums(ring).at(-1)) / 2;
  }

  private polygonArea(ring: number): number {
    return this.ringsBeside(ring).reduce((sum, each) => sum + this.areaOfRing(each), 0);
  }

  /** mm²: of the polygon's holes that lie in the loop. */
  private holesIn(loop: BoundaryLoop): number {
    const rings = this.ringsBeside(loop.ring);
    if (rings.length === 1) return 0;
    const { x, y, ringStart } = this.boundary.outline;
    const box = loop.box();
    let area = 0;
    checkpoint(rings.length);
    for (const ring of rings) {
      const point = { x: defined(x[defined(ringStart[ring])]), y: defined(y[defined(ringStart[ring])]) };
      if (ring === loop.ring || this.areaOfRing(ring) >= 0) continue;
      if (point.x < box.minX || point.x > box.maxX || point.y < box.minY || point.y > box.maxY) continue;
      if (loop.contains(point, this.crossings(ring, loop.ring, point))) area -= this.areaOfRing(ring);
    }
    return area;
  }

  private crossings(hole: number, ring: number, point: Point): readonly number[] {
    const key = hole * this.boundary.outline.ringStart.length + ring;
    let edges = this.rays.get(key);
    if (!edges) {
      edges = edgesAcrossRay(this.boundary, ring, point);
      this.rays.set(key, edges);
    }
    return edges;
  }

  /** The centre of the largest of some discs that touch the loop from within. */
  private pointOf(loop: BoundaryLoop): Point {
    const { outline } = this.boundary;
    const finder = new TouchFinder(this.boundary);
    let best = { x: (loop.from.x + loop.to.x) / 2, y: (loop.from.y + loop.to.y) / 2 };
    let largest = 0;
    for (let turn = 0; turn < TRIES; turn += 1) {
      const piece = Math.floor(((turn + 0.5) / TRIES) * loop.pieces);
      const [low, high] = loop.spanOf(piece);
      // A loop that ends where an edge starts has a piece of no length there, with the normal of the other side.
      if (high <= low) continue;
      const element = 2 * loop.edgeOf(piece) + 1;
      const radius = Math.min(this.radius, finder.find(element, (low + high) / 2, this.radius));
      const place = boundaryPointAt(outline, element, (low + high) / 2, finder.place);
      const centre = { x: place.x + radius * place.normalX, y: place.y + radius * place.normalY };
      if (radius <= largest || segmentsCross(place, centre, loop.from, loop.to)) continue;
      largest = radius;
      best = centre;
    }
    return best;
  }
}

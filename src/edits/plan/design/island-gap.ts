/** An island with the gap about it, as places that can be compared with those of another. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { perimeter } from '../../../geometry/base/ring';
import { distance, interpolate, normalise, perpendicular, scale, subtract } from '../../../geometry/base/vector';
import { firstHit } from '../../../geometry/spatial/raycast';
import { nearestSegment, type SegmentIndex } from '../../../geometry/spatial/segment-index';
import { type RingShape, shapeOfRings } from './ring-shape';

export interface IslandGap {
  /** Number of the piece. */
  readonly piece: number;
  /** mm² */
  readonly area: number;
  readonly shape: RingShape;
  /** Places of the island's edge, even along it. */
  readonly near: readonly Point[];
  /** What they face straight across the gap. */
  readonly far: readonly Point[];
}

/** So many places of an edge are looked at. */
const SAMPLES = 48;

/** mm: nobody bridges a wider gap, so that what lies farther off makes no island another one. */
const MAX_GAP = 30;

/** So much of an edge, and of what it faces, must be alike: where letters join, the gaps about equal ones differ a little. */
const SHARE = { near: 0.97, far: 0.9 };

export function islandGap(edges: SegmentIndex, piece: number, outer: Ring, area: number): IslandGap {
  const near: Point[] = [];
  const far: Point[] = [];
  for (const { point, outward } of samplesOf(outer)) {
    checkpoint(10);
    near.push(point);
    const hit = firstHit(edges, point, outward, MAX_GAP);
    if (hit && hit.polygon !== piece) far.push(hit.point);
  }
  return { piece, area, shape: shapeOfRings([outer]), near, far };
}

/** Places of the edge at even steps, with the direction out of the island. */
function samplesOf(ring: Ring): { point: Point; outward: Point }[] {
  const step = perimeter(ring) / SAMPLES;
  const samples: { point: Point; outward: Point }[] = [];
  let [passed, next] = [0, step / 2];
  for (let i = 0; i < ring.length && step > 0; i += 2) {
    const start = { x: defined(ring[i]), y: defined(ring[i + 1]) };
    const end = { x: defined(ring[(i + 2) % ring.length]), y: defined(ring[(i + 3) % ring.length]) };
    const size = distance(start, end);
    const outward = normalise(scale(perpendicular(subtract(end, start)), -1));
    for (; outward && next < passed + size; next += step) {
      samples.push({ point: interpolate(start, end, (next - passed) / size), outward });
    }
    passed += size;
  }
  return samples;
}

/** Whether two islands may be equal, turned or mirrored: quick to tell, and never wrong where it says no. */
export function mayBeEqual(a: IslandGap, b: IslandGap, tolerance: number): boolean {
  const slack = tolerance * Math.max(a.shape.length, b.shape.length);
  return (
    Math.abs(a.area - b.area) <= slack &&
    Math.abs(a.shape.radius - b.shape.radius) <= 2 * tolerance &&
    Math.abs(a.shape.length - b.shape.length) <= 0.03 * Math.max(a.shape.length, b.shape.length) + 4 * tolerance
  );
}

/**
 * Whether an island with its gap comes to lie on another one with its own.
 * @param move of the plane, without stretching
 * @param tolerance mm, how far the edges may lie apart
 */
export function comesToLieOn(
  edges: SegmentIndex,
  island: IslandGap,
  other: IslandGap,
  move: (point: Point) => Point,
  tolerance: number,
): boolean {
  const isOther = (edge: number) => edges.polygon[edge] === other.piece;
  const isBeyond = (edge: number) => edges.polygon[edge] !== other.piece;
  return (
    lieOn(edges, island.near.map(move), tolerance, SHARE.near, isOther) &&
    lieOn(edges, island.far.map(move), tolerance, SHARE.far, isBeyond)
  );
}

/** Whether at least a share of places lies within `tolerance` mm of the edges that count. */
export function lieOn(
  edges: SegmentIndex,
  places: readonly Point[],
  tolerance: number,
  share: number,
  counts: (edge: number) => boolean = () => true,
): boolean {
  let spare = Math.floor((1 - share) * places.length);
  for (const place of places) {
    checkpoint(10);
    if (nearestSegment(edges, place, tolerance, counts)) continue;
    spare -= 1;
    if (spare < 0) return false;
  }
  return true;
}

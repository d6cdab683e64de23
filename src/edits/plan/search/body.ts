/** What has to be held: an island, or several that hang together. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { memoizeByIdentity } from '../../../geometry/base/derived-facts';
import type { Polygon } from '../../../geometry/base/polygon-types';
import { centroidOfRing, pointsOf, signedArea } from '../../../geometry/base/ring';
import { add, crossFrom, distance, scale } from '../../../geometry/base/vector';
import type { Piece } from '../../../sheet/types';

export interface Body {
  /** The convex hull's corners, once round: what reaches farthest beyond anything is among them. */
  readonly hull: readonly Point[];
  /** The centre of its outline, as the eye takes it. */
  readonly middle: Point;
  /** Its centre of mass: an opening in it weighs nothing. */
  readonly mass: Point;
  /** mm² */
  readonly area: number;
  /** mm: its greatest extent. */
  readonly size: number;
  /** mm: the least distance of two parallel lines that it lies between. */
  readonly breadth: number;
}

/** Hulls keep about so many corners. */
const CORNERS = 48;

export const bodyOf = memoizeByIdentity(
  'body of a piece',
  ({ polygon, label, area }: Piece): Body =>
    bodyFrom(
      hullOf(pointsOf(polygon.outer)),
      { middle: centroidOfRing(polygon.outer) ?? label, mass: massOf(polygon) ?? label },
      area,
    ),
);

function massOf({ outer, holes }: Polygon): Point | undefined {
  let [total, x, y] = [0, 0, 0];
  for (const ring of [outer, ...holes]) {
    const centre = centroidOfRing(ring);
    if (!centre) continue;
    const area = (ring === outer ? 1 : -1) * Math.abs(signedArea(ring));
    total += area;
    x += area * centre.x;
    y += area * centre.y;
  }
  return total > 0 ? { x: x / total, y: y / total } : undefined;
}

/** Several bodies as one. */
export function joinBodies(bodies: readonly Body[]): Body {
  const area = bodies.reduce((sum, body) => sum + body.area, 0);
  const mean = (of: (body: Body) => Point): Point =>
    bodies.reduce((sum, body) => add(sum, scale(of(body), body.area / area)), { x: 0, y: 0 });
  const centres = { middle: mean((body) => body.middle), mass: mean((body) => body.mass) };
  return bodyFrom(hullOf(bodies.flatMap(({ hull }) => hull)), centres, area);
}

function bodyFrom(whole: readonly Point[], centres: Pick<Body, 'middle' | 'mass'>, area: number): Body {
  const step = Math.ceil(whole.length / CORNERS);
  const hull = whole.filter((_, i) => i % step === 0);
  let size = 0;
  for (const a of hull) for (const b of hull) size = Math.max(size, distance(a, b));
  return { hull, ...centres, area, size, breadth: breadthOf(hull) };
}

/** The least width of a convex polygon is square to one of its sides. */
function breadthOf(hull: readonly Point[]): number {
  let least = Infinity;
  checkpoint(hull.length ** 2);
  hull.forEach((from, i) => {
    const to = defined(hull[(i + 1) % hull.length]);
    const length = distance(from, to);
    if (length > 0) least = Math.min(least, Math.max(...hull.map((p) => Math.abs(crossFrom(from, to, p)))) / length);
  });
  return Number.isFinite(least) ? least : 0;
}

/** Once round, without points on its sides (A. M. Andrew's monotone chain, 1979). */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  checkpoint(4 * sorted.length);
  if (sorted.length < 3) return sorted;
  const [lower, upper] = [chainOf(sorted), chainOf(sorted.reverse())];
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chainOf(sorted: readonly Point[]): Point[] {
  const chain: Point[] = [];
  for (const point of sorted) {
    while (chain.length > 1 && crossFrom(defined(chain.at(-2)), defined(chain.at(-1)), point) <= 0) chain.pop();
    chain.push(point);
  }
  return chain;
}

/** mm from a point to a convex hull of any number of corners; 0 inside. */
export function distanceToHull(hull: readonly Point[], point: Point): number {
  let [inside, nearest] = [hull.length > 2, Infinity];
  hull.forEach((from, i) => {
    const to = defined(hull[(i + 1) % hull.length]);
    nearest = Math.min(nearest, distanceToSide(from, to, point));
    if (crossFrom(from, to, point) < 0) inside = false;
  });
  return inside ? 0 : nearest;
}

function distanceToSide(from: Point, to: Point, point: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((point.x - from.x) * dx + (point.y - from.y) * dy) / square : 0;
  const t = Math.max(0, Math.min(1, along));
  return Math.hypot(from.x + t * dx - point.x, from.y + t * dy - point.y);
}

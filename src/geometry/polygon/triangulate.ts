/**
 * The constrained Delaunay triangulation of a ring: ears are cut off until nothing is left (G. H. Meisters, 1975), then
 * inner edges are flipped until no vertex lies within the circle round a neighbouring triangle (C. L. Lawson, 1977).
 * Quadratic in the number of points: meant for rings of some hundreds.
 */
import { incircle, orient2d } from 'robust-predicates';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Ring } from '../base/polygon-types';

/** Triangles of a ring. Corner numbers are those of the ring's points. */
export interface Triangulation {
  /** Three corners a triangle, all turning the same way as the ring. */
  readonly corners: Int32Array;
  /** Beyond the side from corner k to the next: the number of that triangle's side, or −1 where the ring runs. */
  readonly across: Int32Array;
}

/**
 * @param ring one that does not cross itself, turning so that its signed area is positive
 * @returns undefined where no ear is found: the ring crosses or touches itself
 */
export function triangulateRing(ring: Ring): Triangulation | undefined {
  const corners = cutEars(ring);
  if (!corners) return undefined;
  const across = linkSides(corners);
  flipToDelaunay(ring, corners, across);
  return { corners, across };
}

/** Positive where the corners a, b, c turn as a ring of positive area does. */
function turn(ring: Ring, a: number, b: number, c: number): number {
  // The predicate is positive the other way round.
  return -orient2d(x(ring, a), y(ring, a), x(ring, b), y(ring, b), x(ring, c), y(ring, c));
}

function cutEars(ring: Ring): Int32Array | undefined {
  const count = ring.length / 2;
  if (count < 3) return undefined;
  const next = Int32Array.from({ length: count }, (_, i) => (i + 1) % count);
  const previous = Int32Array.from({ length: count }, (_, i) => (i + count - 1) % count);
  const corners = new Int32Array(3 * (count - 2));
  const isReflex = (i: number) => turn(ring, defined(previous[i]), i, defined(next[i])) <= 0;
  let reflex = Array.from({ length: count }, (_, i) => i).filter(isReflex);
  let [left, at, filled, failed] = [count, 0, 0, 0];
  while (left > 3) {
    checkpoint(1 + reflex.length);
    const [before, after] = [defined(previous[at]), defined(next[at])];
    if (isEar(ring, before, at, after, reflex)) {
      corners.set([before, at, after], filled);
      filled += 3;
      next[before] = after;
      previous[after] = before;
      left -= 1;
      failed = 0;
      reflex = reflex.filter((i) => i !== at && ((i !== before && i !== after) || isReflex(i)));
      // Every other vertex first, so that no long fan is made.
      at = defined(next[after]);
    } else {
      failed += 1;
      if (failed > left) return undefined;
      at = after;
    }
  }
  corners.set([defined(previous[at]), at, defined(next[at])], filled);
  return corners;
}

/** Whether a triangle with the middle corner b lies within what is left of the ring. */
function isEar(ring: Ring, a: number, b: number, c: number, reflex: readonly number[]): boolean {
  if (turn(ring, a, b, c) <= 0) return false;
  return reflex.every(
    (i) =>
      i === a || i === b || i === c || turn(ring, a, b, i) < 0 || turn(ring, b, c, i) < 0 || turn(ring, c, a, i) < 0,
  );
}

function linkSides(corners: Int32Array): Int32Array {
  const across = new Int32Array(corners.length).fill(-1);
  const open = new Map<string, number>();
  for (let side = 0; side < corners.length; side += 1) {
    const [from, to] = [defined(corners[side]), defined(corners[nextSide(side)])];
    const twin = open.get(`${to} ${from}`);
    if (twin === undefined) open.set(`${from} ${to}`, side);
    else {
      across[side] = twin;
      across[twin] = side;
    }
  }
  return across;
}

/** The side of the same triangle that follows. */
export function nextSide(side: number): number {
  return side % 3 === 2 ? side - 2 : side + 1;
}

function flipToDelaunay(ring: Ring, corners: Int32Array, across: Int32Array): void {
  const open = Array.from(across.keys()).filter((side) => defined(across[side]) > side);
  // Each flip makes the least angle larger, so this ends; the bound is for what rounding might do.
  for (let turns = 0; open.length > 0 && turns < 50 * corners.length; turns += 1) {
    checkpoint(4);
    const side = defined(open.pop());
    const twin = defined(across[side]);
    if (twin < 0 || !isFlippable(ring, corners, side, twin)) continue;
    open.push(...flip(corners, across, side, twin));
  }
}

/** Whether the corner beyond lies within the circle round this triangle, and both triangles make a convex figure. */
function isFlippable(ring: Ring, corners: Int32Array, side: number, twin: number): boolean {
  const [a, b, c, d] = [side, nextSide(side), nextSide(nextSide(side)), nextSide(nextSide(twin))].map((i) =>
    defined(corners[i]),
  ) as [number, number, number, number];
  const inside = incircle(
    x(ring, a),
    y(ring, a),
    x(ring, b),
    y(ring, b),
    x(ring, c),
    y(ring, c),
    x(ring, d),
    y(ring, d),
  );
  return inside > 0 && turn(ring, c, a, d) > 0 && turn(ring, d, b, c) > 0;
}

/** Of triangles a b c and b a d makes c a d and d b c. Gives the sides round both. */
function flip(corners: Int32Array, across: Int32Array, side: number, twin: number): number[] {
  const [bc, ca] = [nextSide(side), nextSide(nextSide(side))];
  const [ad, db] = [nextSide(twin), nextSide(nextSide(twin))];
  const [beyondBc, beyondAd] = [defined(across[bc]), defined(across[ad])];
  const [c, d] = [defined(corners[ca]), defined(corners[db])];
  // The first triangle becomes a d c, with sides a–d, d–c, c–a; the other one b c d.
  corners[bc] = d;
  corners[ad] = c;
  link(across, side, beyondAd);
  link(across, twin, beyondBc);
  link(across, bc, ad);
  return [side, ca, twin, db];
}

function link(across: Int32Array, side: number, other: number): void {
  across[side] = other;
  if (other >= 0) across[other] = side;
}

const x = (ring: Ring, i: number): number => defined(ring[2 * i]);
const y = (ring: Ring, i: number): number => defined(ring[2 * i + 1]);

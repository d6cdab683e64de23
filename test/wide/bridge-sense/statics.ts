/**
 * How far islands lift on their bridges: rigid plates joined by beams that bend and twist (a grillage, by the direct
 * stiffness method; beams clamped at both ends), under an even pressure from below. Nothing of the engine is used here.
 */
import { FINENESS, type Pieces, type Point, pieceNear } from './pixels';

/** N/mm²: a spray can at 200 mm presses with 23.4 Pa in the middle of its jet. N·mm: 0.3 mm card, E t³ / 12. */
const [PRESSURE, STIFFNESS] = [23.4e-6, (3000 * 0.3 ** 3) / 12];
/** A flat strip is so much stiffer against twisting than against bending: G b t³ / 3 to E b t³ / 12, ν = 0.3. */
const TWIST = 4 / (2 * 1.3);

/** A bridge, in sheet mm. */
export interface Beam {
  readonly from: Point;
  readonly to: Point;
  readonly width: number;
}

export interface Lift {
  /** The island's number among the pieces. */
  readonly island: number;
  /** mm: how far its farthest place lifts; Infinity where it hangs on nothing. */
  readonly lift: number;
  /** mm: the longer side of its box. */
  readonly extent: number;
  /** mm: how far it reaches past its bridges. */
  readonly reach: number;
  readonly bridges: number;
}

interface Tie {
  readonly one: number;
  readonly other: number;
  readonly beam: Beam;
}

/** @param islands numbers of those that are judged; all others but the frame are carried along */
export function liftsOf(pieces: Pieces, beams: readonly Beam[], islands: readonly number[]): Lift[] {
  const ties = beams.flatMap((beam) => tieOf(pieces, beam) ?? []);
  const held = heldBy(ties);
  const bodies = [...held].filter((number) => number > 1);
  const place = new Map(bodies.map((number, i) => [number, 3 * i]));
  const moved = solve(...systemOf(pieces, ties, bodies, place));
  return islands.map((island) => {
    const own = ties.filter(({ one, other }) => one === island || other === island);
    const [minX, minY, maxX, maxY] = pieces.pieces[island]!.box;
    const extent = Math.max(maxX - minX, maxY - minY) / FINENESS;
    const reach = reachPast(pieces, island, own);
    const at = place.get(island);
    if (at === undefined) return { island, lift: Infinity, extent, reach, bridges: own.length };
    const lift = Math.max(
      ...cornersOf(pieces, island).map((point) => Math.abs(heightAt(pieces, island, moved, at, point))),
    );
    return { island, lift, extent, reach, bridges: own.length };
  });
}

function mm(value: number): number {
  return value / FINENESS;
}

function tieOf(pieces: Pieces, beam: Beam): Tie | undefined {
  const { from, to } = beam;
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  // A little behind each end.
  const inside = ({ x, y }: Point, sign: number): Point => ({
    x: (x + 0.15 * sign * dx) * FINENESS,
    y: (y + 0.15 * sign * dy) * FINENESS,
  });
  const one = pieceNear(pieces, inside(from, -1), 5);
  const other = pieceNear(pieces, inside(to, 1), 5);
  return one > 0 && other > 0 && one !== other ? { one, other, beam } : undefined;
}

/** All that hangs on the frame, which is 1, by way of ties. */
function heldBy(ties: readonly Tie[]): Set<number> {
  const held = new Set([1]);
  for (let size = 0; size < held.size; ) {
    size = held.size;
    for (const { one, other } of ties) if (held.has(one) || held.has(other)) held.add(one).add(other);
  }
  return held;
}

/** Unknown of each body: the height of its middle and its slopes by x and by y. */
function systemOf(
  pieces: Pieces,
  ties: readonly Tie[],
  bodies: readonly number[],
  place: ReadonlyMap<number, number>,
): [number[][], number[]] {
  const size = 3 * bodies.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const force = new Array<number>(size).fill(0);
  for (const number of bodies) force[place.get(number)!] = (PRESSURE * pieces.pieces[number]!.pixels) / FINENESS ** 2;
  for (const { one, other, beam } of ties) {
    const rows = [...endRows(pieces, one, beam.from, beam), ...endRows(pieces, other, beam.to, beam)];
    const places = [place.get(one), place.get(other)];
    const unknown = [0, 1, 2, 3, 4, 5].map((k) => {
      const at = places[Math.floor(k / 3)];
      return at === undefined ? -1 : at + (k % 3);
    });
    const inner = beamStiffness(beam);
    const wide = rows.map((row, r) =>
      [0, 1, 2, 3, 4, 5].map((k) => (Math.floor(k / 3) === Math.floor(r / 3) ? row[k % 3]! : 0)),
    );
    for (let a = 0; a < 6; a += 1) {
      for (let b = 0; b < 6; b += 1) {
        const [row, column] = [unknown[a]!, unknown[b]!];
        if (row < 0 || column < 0) continue;
        let sum = 0;
        for (let r = 0; r < 6; r += 1)
          for (let c = 0; c < 6; c += 1) sum += wide[r]![a]! * inner[r]![c]! * wide[c]![b]!;
        matrix[row]![column]! += sum;
      }
    }
  }
  return [matrix, force];
}

/** Height, slope along the beam and slope across it at one end, by the body's unknowns. */
function endRows(pieces: Pieces, number: number, end: Point, { from, to }: Beam): number[][] {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const middle = pieces.pieces[number]!.middle;
  return [
    [1, end.x - mm(middle.x), end.y - mm(middle.y)],
    [0, dx, dy],
    [0, -dy, dx],
  ];
}

/** Height, slope and twist at either end; roots give as if the beam were half its width longer there. */
function beamStiffness({ from, to, width }: Beam): number[][] {
  const length = Math.hypot(to.x - from.x, to.y - from.y) + width;
  const bend = (STIFFNESS * width) / length ** 3;
  const twist = (TWIST * STIFFNESS * width) / length;
  const [a, b, c, d] = [12 * bend, 6 * bend * length, 4 * bend * length ** 2, 2 * bend * length ** 2];
  return [
    [a, b, 0, -a, b, 0],
    [b, c, 0, -b, d, 0],
    [0, 0, twist, 0, 0, -twist],
    [-a, -b, 0, a, -b, 0],
    [b, d, 0, -b, c, 0],
    [0, 0, -twist, 0, 0, twist],
  ];
}

/** By elimination with pivots. */
function solve(matrix: number[][], force: number[]): number[] {
  const n = force.length;
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let r = k + 1; r < n; r += 1) if (Math.abs(matrix[r]![k]!) > Math.abs(matrix[pivot]![k]!)) pivot = r;
    [matrix[k], matrix[pivot]] = [matrix[pivot]!, matrix[k]!];
    [force[k], force[pivot]] = [force[pivot]!, force[k]!];
    for (let r = k + 1; r < n; r += 1) {
      const factor = matrix[r]![k]! / matrix[k]![k]!;
      if (factor === 0) continue;
      for (let c = k; c < n; c += 1) matrix[r]![c]! -= factor * matrix[k]![c]!;
      force[r]! -= factor * force[k]!;
    }
  }
  for (let k = n - 1; k >= 0; k -= 1) {
    for (let c = k + 1; c < n; c += 1) force[k]! -= matrix[k]![c]! * force[c]!;
    force[k]! /= matrix[k]![k]!;
  }
  return force;
}

function heightAt(pieces: Pieces, island: number, moved: readonly number[], at: number, { x, y }: Point): number {
  const { middle } = pieces.pieces[island]!;
  return moved[at]! + moved[at + 1]! * mm(x - middle.x) + moved[at + 2]! * mm(y - middle.y);
}

/** The island's leftmost and rightmost pixel of each tenth row. */
function cornersOf({ width, number, pieces }: Pieces, island: number): Point[] {
  const [minX, minY, maxX, maxY] = pieces[island]!.box;
  const points: Point[] = [];
  for (let y = minY; y <= maxY; y += y + 10 > maxY && y < maxY ? maxY - y : 10) {
    const row = [];
    for (let x = minX; x <= maxX; x += 1) if (number[y * width + x] === island) row.push(x);
    if (row.length > 0) points.push({ x: row[0]!, y }, { x: row.at(-1)!, y });
  }
  return points;
}

/** mm: how far the island reaches past the hull of its bridges' ends. */
function reachPast(pieces: Pieces, island: number, ties: readonly Tie[]): number {
  const ends = ties.map(({ one, beam }) => (one === island ? beam.from : beam.to));
  if (ends.length === 0) return Infinity;
  const hull = hullOf(ends);
  return Math.max(...cornersOf(pieces, island).map(({ x, y }) => distanceToHull({ x: mm(x), y: mm(y) }, hull)));
}

/** Counter-clockwise, by A. M. Andrew 1979. */
function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (some: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const point of some) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, point) <= 0) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return sorted.length < 2 ? sorted : [...half(sorted), ...half(sorted.reverse())];
}

function turn(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

function distanceToHull(point: Point, hull: readonly Point[]): number {
  const sides = hull.map((a, i) => [a, hull[(i + 1) % hull.length]!] as const);
  if (hull.length > 2 && sides.every(([a, b]) => turn(a, b, point) >= 0)) return 0;
  return Math.min(...sides.map(([a, b]) => distanceToSide(point, a, b)));
}

function distanceToSide({ x, y }: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / square));
  return Math.hypot(x - a.x - t * dx, y - a.y - t * dy);
}

/** Whether any bridge would fit an island: straight strips from all along its outline in all directions, on pixels. */
import { FINENESS, type Pieces } from './pixels';

/** mm: the width of a bridge, the longest one that would be thought of, and how far its end may be slanted. */
const [WIDTH, LONGEST, SLANT] = [0.8, 20, 0.8];
/** Directions all round, and starting places along the outline. */
const [DIRECTIONS, STARTS] = [48, 500];
/** Where across its width a strip is looked at. */
const LANES = [-0.48, -0.24, 0, 0.24, 0.48];

/**
 * Of the islands that are left those that a bridge fits: to what hangs, or to one of them that a bridge fits itself. Two that
 * are too far from all that hangs are no help to each other.
 */
export function thoseThatFit(pieces: Pieces, left: readonly number[]): Set<number> {
  const fitting = new Set<number>();
  for (let size = -1; size < fitting.size; ) {
    size = fitting.size;
    const loose = new Set(left.filter((number) => !fitting.has(number)));
    for (const number of loose) if (findAnyBridge(pieces, number, loose)) fitting.add(number);
  }
  return fitting;
}

/**
 * A place for a bridge, in pixels: where it leaves the island and how long it is; undefined where there is none.
 * @param loose what no bridge may lead to
 */
export function findAnyBridge(
  pieces: Pieces,
  island: number,
  loose: ReadonlySet<number> = new Set(),
): { x: number; y: number; length: number } | undefined {
  const edge = edgeOf(pieces, island);
  const step = Math.max(1, Math.floor(edge.length / STARTS));
  for (let i = 0; i < edge.length; i += step) {
    const [x, y] = edge[i]!;
    for (let k = 0; k < DIRECTIONS; k += 1) {
      const turn = (2 * Math.PI * k) / DIRECTIONS;
      const found = stripAcross(pieces, island, x, y, Math.cos(turn), Math.sin(turn));
      if (found && !loose.has(found.target)) return { x, y, length: found.length };
    }
  }
  return undefined;
}

/** Pixels of the island that are next to paint. */
function edgeOf({ width, number, pieces }: Pieces, island: number): [number, number][] {
  const [minX, minY, maxX, maxY] = pieces[island]!.box;
  const edge: [number, number][] = [];
  for (let y = minY; y <= maxY; y += 1) {
    for (let x = minX; x <= maxX; x += 1) {
      const pixel = y * width + x;
      if (number[pixel] !== island) continue;
      if ([pixel - 1, pixel + 1, pixel - width, pixel + width].some((next) => number[next] === 0)) edge.push([x, y]);
    }
  }
  return edge;
}

/** The other piece that a whole strip leads to, and how many pixels away it is. */
function stripAcross(
  pieces: Pieces,
  island: number,
  x: number,
  y: number,
  dx: number,
  dy: number,
): { target: number; length: number } | undefined {
  let target: number | undefined;
  let longest = 0;
  for (const lane of LANES) {
    const aside = lane * WIDTH * FINENESS;
    const found = laneAcross(pieces, island, x + 0.5 - dy * aside, y + 0.5 + dx * aside, dx, dy);
    if (!found || (target !== undefined && found.target !== target)) return undefined;
    target = found.target;
    longest = Math.max(longest, found.length);
  }
  return target === undefined ? undefined : { target, length: longest };
}

/** Along one line: the island, then paint, then another piece, and nothing between. */
function laneAcross(pieces: Pieces, island: number, x: number, y: number, dx: number, dy: number) {
  const { width, height, number } = pieces;
  const back = Math.round(SLANT * FINENESS);
  let left: number | undefined;
  for (let s = -back; s < LONGEST * FINENESS; s += 0.5) {
    const [atX, atY] = [Math.floor(x + s * dx), Math.floor(y + s * dy)];
    if (atX < 0 || atY < 0 || atX >= width || atY >= height) return undefined;
    const own = number[atY * width + atX]!;
    if (own === island) {
      // Back on the island after paint: the strip would run along its edge.
      if (left !== undefined && s - left > 1) return undefined;
      left = s;
    } else if (own > 0) {
      return left === undefined ? undefined : { target: own, length: s - left };
    } else if (left === undefined && s > back) return undefined;
  }
  return undefined;
}

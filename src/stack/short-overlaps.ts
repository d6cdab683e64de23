/** Gathers the pieces of short seams into connected parts, each of which is told once. Millimetres. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Point } from '../geometry/base/curve-types';
import { OVERLAY_GRID } from '../geometry/base/tolerances';
import { distance } from '../geometry/base/vector';
import { findRoot, groupsOf, indexBoxes, uniteSets } from '../geometry/spatial/clusters';
import { nearestApproach } from '../geometry/spatial/segment-distance';
import { boxOfSegment } from './seam-edges';
import type { ShortOverlap } from './seam-types';
import type { SeamPiece } from './tile-seams';

/** mm: overlaps that differ by less are equally short; of those the middle one is shown. */
const AS_SHORT = 5 * OVERLAY_GRID;

/**
 * Pieces of the same two neighbours that are no farther apart than the slip belong to one part: both sheets' views of a
 * seam do.
 * @param slip mm
 */
export function joinPieces(pieces: readonly SeamPiece[], slip: number): ShortOverlap[] {
  const pairs = new Map<string, SeamPiece[]>();
  for (const piece of pieces) {
    const key = `${Math.min(piece.slipping, piece.neighbour)} ${Math.max(piece.slipping, piece.neighbour)}`;
    const list = pairs.get(key);
    if (list) list.push(piece);
    else pairs.set(key, [piece]);
  }
  return [...pairs.values()].flatMap((own) => partsOf(own, slip).map(describe));
}

function partsOf(pieces: readonly SeamPiece[], slip: number): SeamPiece[][] {
  const boxes = pieces.map(({ segment }) => boxOfSegment(segment));
  const index = indexBoxes(boxes);
  const parents = Int32Array.from(pieces.keys());
  boxes.forEach(({ minX, minY, maxX, maxY }, self) => {
    index.search(minX - slip, minY - slip, maxX + slip, maxY + slip, (other) => {
      checkpoint(4);
      if (other > self && findRoot(parents, other) !== findRoot(parents, self) && areNear(pieces, self, other, slip)) {
        uniteSets(parents, self, other);
      }
      return false;
    });
  });
  return groupsOf(parents).map((members) => members.flatMap((member) => defined(pieces[member])));
}

function areNear(pieces: readonly SeamPiece[], a: number, b: number, slip: number): boolean {
  const [one, other] = [pieces[a]?.segment, pieces[b]?.segment];
  return one !== undefined && other !== undefined && nearestApproach(one, { from: 0, to: 1 }, other).distance <= slip;
}

function describe(pieces: readonly SeamPiece[]): ShortOverlap {
  const least = pieces.reduce((width, piece) => Math.min(width, piece.width), Infinity);
  const shortest = pieces.filter(({ width }) => width <= least + AS_SHORT);
  const middle = middleOf(shortest);
  const first = shortest.reduce((best, each) => (distance(each.at, middle) < distance(best.at, middle) ? each : best));
  const { slipping, neighbour, at, facing } = first;
  const lengthSeen = (from: number): number =>
    pieces.reduce((sum, piece) => sum + (piece.slipping === from && !piece.rim ? lengthOf(piece) : 0), 0);
  return {
    earlier: Math.min(slipping, neighbour),
    later: Math.max(slipping, neighbour),
    slipping,
    width: least,
    at,
    facing,
    length: Math.max(lengthSeen(slipping), lengthSeen(neighbour)),
    runsOut: pieces.some(({ rim }) => rim),
    course: pieces.map(({ segment }) => segment),
  };
}

function middleOf(pieces: readonly SeamPiece[]): Point {
  const sum = pieces.reduce(
    ({ x, y, length }, piece) => {
      const own = lengthOf(piece) + AS_SHORT;
      return { x: x + own * piece.at.x, y: y + own * piece.at.y, length: length + own };
    },
    { x: 0, y: 0, length: 0 },
  );
  return { x: sum.x / sum.length, y: sum.y / sum.length };
}

function lengthOf({ segment: { ax, ay, bx, by } }: SeamPiece): number {
  return Math.hypot(bx - ax, by - ay);
}

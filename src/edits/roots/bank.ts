/** The bank of an opening from a bridge's root on, as far as it is smooth. Sheet mm. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { SAME_POINT } from '../../geometry/base/tolerances';
import { distance, dot, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import type { SegmentIndex } from '../../geometry/spatial/segment-index';

/** Where a side of a strip meets the edge of an opening. */
export interface Root {
  readonly corner: Point;
  /** The number of the edge that is met. */
  readonly edge: number;
  /** Of length 1, from the corner along the strip's side into the opening. */
  readonly inward: Point;
  /** Of length 1, square to the side, away from the strip. */
  readonly away: Point;
}

/** A straight piece of the bank. */
export interface BankPiece {
  readonly start: Point;
  readonly end: Point;
  /** Of length 1, into the opening. */
  readonly normal: Point;
}

export interface Bank {
  readonly pieces: readonly BankPiece[];
  /** The numbers of their edges. */
  readonly edges: ReadonlySet<number>;
}

/** Cosine of the angle by which a bank turns where the artist means a corner. */
const CORNER = Math.cos((15 * Math.PI) / 180);
/** Sine of the angle that bank and side must have at least: else there is no corner to round. */
const MIN_SINE = Math.sin((17 * Math.PI) / 180);
const MAX_PIECES = 500;

/** @param reach mm: how far it is followed, at most up to a corner */
export function bankFrom(
  openings: SegmentIndex,
  { corner, edge, inward, away }: Root,
  reach: number,
): Bank | undefined {
  const ends = [endOf(openings, edge, true), endOf(openings, edge, false)];
  const isForward = dot(subtract(defined(ends[0]), defined(ends[1])), away) > 0;
  const step = isForward ? openings.next : openings.previous;
  const pieces: BankPiece[] = [];
  const edges = new Set<number>();
  let [at, start, left, turn] = [edge, corner, reach, 0];
  while (left > 0 && edges.size < MAX_PIECES && !edges.has(at)) {
    edges.add(at);
    const whole = endOf(openings, at, isForward);
    const size = distance(start, whole);
    const along = size > SAME_POINT ? normalise(subtract(whole, start)) : undefined;
    at = defined(step[at]);
    if (!along) continue;
    const square = perpendicular(along);
    if (turn === 0) {
      if (Math.abs(dot(square, inward)) < MIN_SINE) return undefined;
      turn = Math.sign(dot(square, inward));
    }
    const normal = scale(square, turn);
    const before = pieces.at(-1);
    if (before && dot(before.normal, normal) < CORNER) break;
    const end = size > left ? interpolate(start, whole, left / size) : whole;
    pieces.push({ start, end, normal });
    start = end;
    left -= size;
  }
  return pieces.length > 0 ? { pieces, edges } : undefined;
}

function endOf(openings: SegmentIndex, edge: number, forward: boolean): Point {
  const [x, y] = forward ? [openings.x1, openings.y1] : [openings.x0, openings.y0];
  return { x: defined(x[edge]), y: defined(y[edge]) };
}

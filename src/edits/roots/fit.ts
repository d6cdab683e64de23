/** An arc of a given radius that is tangent to a strip's side and to the bank. Sheet mm. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { boxOfRing, ringContains } from '../../geometry/base/ring';
import { FLATTENING } from '../../geometry/base/tolerances';
import { add, distance, dot, interpolate, scale, subtract } from '../../geometry/base/vector';
import { forEachSegmentInBox, type SegmentIndex } from '../../geometry/spatial/segment-index';
import type { Bank, Root } from './bank';
import { polygonAround, type RootFillet } from './fillet';

/** @param most mm of the side that the arc may take */
export function filletOf(
  openings: SegmentIndex,
  root: Root,
  bank: Bank,
  radius: number,
  most: number,
): RootFillet | undefined {
  const { corner, inward } = root;
  const touch = tangentPoint(root, bank, radius);
  if (!touch) return undefined;
  const taken = dot(subtract(touch.centre, corner), inward);
  if (taken <= 0 || taken > most) return undefined;
  const passed = bank.pieces.slice(0, touch.piece).map(({ end }) => end);
  if (passed.some((point) => distance(point, touch.centre) < radius - 2 * FLATTENING)) return undefined;
  const fillet = {
    corner,
    bank: passed,
    onBank: touch.point,
    onSide: add(corner, scale(inward, taken)),
    centre: touch.centre,
    radius,
  };
  return isFree(openings, bank, fillet) ? fillet : undefined;
}

interface Touch {
  readonly centre: Point;
  readonly point: Point;
  readonly piece: number;
}

/**
 * On the way along the bank, the first circle beside it that reaches no farther than the line of the side. Between two
 * pieces the circle swings round their common point.
 */
function tangentPoint({ corner, inward, away }: Root, { pieces }: Bank, radius: number): Touch | undefined {
  // How far a point's circle stays short of the side's line is its height less the radius.
  const height = (point: Point): number => dot(subtract(point, corner), away);
  for (const [piece, { start, end, normal }] of pieces.entries()) {
    const lean = radius * dot(normal, away) - radius;
    const [first, last] = [height(start) + lean, height(end) + lean];
    if (first >= 0) {
      if (piece === 0) return undefined;
      const rise = Math.min(1, Math.max(-1, 1 - height(start) / radius));
      const towards = add(scale(away, rise), scale(inward, Math.sqrt(1 - rise * rise)));
      return { centre: add(start, scale(towards, radius)), point: start, piece: piece - 1 };
    }
    if (last < 0) continue;
    const point = interpolate(start, end, first / (first - last));
    return { centre: add(point, scale(normal, radius)), point, piece };
  }
  return undefined;
}

/** Whether no other edge of an opening begins within. */
function isFree(openings: SegmentIndex, { edges }: Bank, fillet: RootFillet): boolean {
  const { outer } = polygonAround(fillet);
  let free = true;
  forEachSegmentInBox(openings, boxOfRing(outer), (edge) => {
    if (edges.has(edge) || edges.has(defined(openings.previous[edge]))) return;
    if (ringContains(outer, { x: defined(openings.x0[edge]), y: defined(openings.y0[edge]) })) free = false;
  });
  return free;
}

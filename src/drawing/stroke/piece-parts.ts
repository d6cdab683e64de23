/** Places along arcs and chords, and parts of them, by length. */
import type { Point } from '../../geometry/curve';
import { length } from '../../geometry/point';
import type { Piece } from './pieces';

/** The part of an arc or chord between two fractions of its length. */
export function partOfPiece(piece: Piece, from: number, to: number): Piece {
  if (from <= 0 && to >= 1) return piece;
  const [start, startDirection] = placeOn(piece, from);
  const [end, endDirection] = placeOn(piece, to);
  const arc = piece.arc && {
    ...piece.arc, from: piece.arc.from + from * piece.arc.sweep, sweep: (to - from) * piece.arc.sweep,
  };
  const smooth = piece.smooth && from <= 0;
  return { ...piece, start, end, startDirection, endDirection, length: (to - from) * piece.length, smooth, arc };
}

/** Point and direction at a fraction of an arc's or chord's length. */
export function placeOn(piece: Piece, fraction: number): readonly [Point, Point] {
  if (fraction <= 0) return [piece.start, piece.startDirection];
  if (fraction >= 1) return [piece.end, piece.endDirection];
  if (piece.arc) {
    const { centre, radius, from, sweep } = piece.arc;
    const angle = from + fraction * sweep;
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    const forward = Math.sign(sweep);
    return [
      { x: centre.x + radius * cosine, y: centre.y + radius * sine },
      { x: -forward * sine, y: forward * cosine },
    ];
  }
  const mix = (a: number, b: number): number => a + fraction * (b - a);
  const { start, end, startDirection, endDirection } = piece;
  const direction = { x: mix(startDirection.x, endDirection.x), y: mix(startDirection.y, endDirection.y) };
  const size = length(direction);
  const unit = size > 0 ? { x: direction.x / size, y: direction.y / size } : startDirection;
  return [{ x: mix(start.x, end.x), y: mix(start.y, end.y) }, unit];
}

/** Dash patterns laid along a chain of pieces. */
import { partOfPiece, placeOn } from './piece-parts';
import type { Chain, Piece } from './pieces';

export interface DashPattern {
  /** Dash, gap, dash, gap, … in pen units: an even count, with a sum above zero. */
  readonly lengths: readonly number[];
  /** Where in the pattern the line begins, pen units. */
  readonly offset: number;
}

/** How many dashes and gaps a chain will be cut into, at most. */
export function dashCount(chain: Chain, pattern: DashPattern): number {
  const period = pattern.lengths.reduce((sum, value) => sum + value, 0);
  return (lengthOfChain(chain) / period + 2) * pattern.lengths.length;
}

export function lengthOfChain(chain: Chain): number {
  return chain.pieces.reduce((sum, piece) => sum + piece.length, 0);
}

/**
 * The dashes of a chain, each a chain of its own. On a closed one a dash that runs over its start is one dash, as
 * renderers draw it.
 */
export function dashChain(chain: Chain, pattern: DashPattern): readonly Chain[] {
  if (chain.pieces.length === 0) return [chain];
  const walker = new DashWalker(pattern);
  const startsOn = walker.drawing;
  for (const piece of chain.pieces) walker.walk(piece);
  const endsOn = walker.drawing;
  const dashes = walker.finish();
  const [first, last] = [dashes[0], dashes.at(-1)];
  if (!chain.closed || !startsOn || !endsOn || dashes.length < 2 || !first || !last) return dashes;
  const joined = { ...last, pieces: [...last.pieces, ...first.pieces] };
  return [...dashes.slice(1, -1), joined];
}

/** A dash of no length is not past at its own start: with round or square caps it is a dot. */
function isPast(into: number, dash: number): boolean {
  return dash > 0 ? into >= dash : into > 0;
}

class DashWalker {
  private readonly lengths: readonly number[];
  private readonly dashes: Chain[] = [];
  private index = 0;
  private left: number;
  private current: Piece[] = [];

  constructor({ lengths, offset }: DashPattern) {
    this.lengths = lengths;
    const period = lengths.reduce((sum, value) => sum + value, 0);
    let into = ((offset % period) + period) % period;
    while (this.index < lengths.length - 1 && isPast(into, lengths[this.index] ?? 0)) {
      into -= lengths[this.index++] ?? 0;
    }
    this.left = Math.max(0, (lengths[this.index] ?? 0) - into);
  }

  get drawing(): boolean {
    return this.index % 2 === 0;
  }

  walk(piece: Piece): void {
    let done = 0;
    while (piece.length - done > this.left) {
      const next = done + this.left;
      if (this.drawing) this.take(piece, done, next);
      if (this.drawing) this.finishDash(piece, next);
      done = next;
      this.index = (this.index + 1) % this.lengths.length;
      this.left = this.lengths[this.index] ?? 0;
    }
    if (this.drawing) this.take(piece, done, piece.length);
    this.left -= piece.length - done;
  }

  finish(): readonly Chain[] {
    if (this.current.length > 0) this.dashes.push({ pieces: this.current, closed: false, spot: undefined });
    return this.dashes;
  }

  private take(piece: Piece, from: number, to: number): void {
    if (to > from) this.current.push(partOfPiece(piece, from / piece.length, to / piece.length));
  }

  private finishDash(piece: Piece, at: number): void {
    if (this.current.length > 0) {
      this.dashes.push({ pieces: this.current, closed: false, spot: undefined });
    } else {
      const [point, direction] = placeOn(piece, at / piece.length);
      this.dashes.push({ pieces: [], closed: false, spot: { at: point, direction, span: piece.span } });
    }
    this.current = [];
  }
}

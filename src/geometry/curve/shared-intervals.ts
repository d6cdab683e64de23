/** Pieces that two chains share, joined to the intervals in which they run along each other. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { distance } from '../base/vector';
import { COINCIDENCE_TOLERANCE, type CurveChain } from './curve-table';
import { pointAt } from './evaluate';
import { lengthOf } from './measure';
import { highOf, type LocatedPiece, lowOf, type SharedPiece } from './shared-pieces';
import { subCurve } from './subdivide';

export interface SharedInterval {
  /** Indices of the chains; the same twice where a chain runs along itself. */
  readonly first: number;
  readonly second: number;
  /** Whether the two chains run against each other. */
  readonly reversed: boolean;
  /** In the course of the first chain. */
  readonly pieces: readonly SharedPiece[];
  /** mm, along the first chain */
  readonly length: number;
}

/** So many runs, the latest, may still go on where a new piece is found. */
const OPEN_RUNS = 8;

/** @param found of the same two chains, all running the same way */
export function joinPieces(found: readonly LocatedPiece[], chains: readonly CurveChain[]): SharedInterval[] {
  const runs: LocatedPiece[][] = [];
  for (const piece of [...found].sort((a, b) => a.curve - b.curve || a.from - b.from)) {
    const run = runs.slice(-OPEN_RUNS).find((each) => follows(defined(each.at(-1)), piece, chains));
    if (run) run.push(piece);
    else runs.push([piece]);
  }
  return joinRound(runs, chains).map((pieces) => intervalOf(pieces, chains));
}

/** A run that ends at the end of a closed chain is one with the run that begins at its start. */
function joinRound(runs: readonly LocatedPiece[][], chains: readonly CurveChain[]): readonly LocatedPiece[][] {
  const [head, ...others] = runs;
  const first = head?.[0];
  if (!head || !first) return [];
  const tail = others.find((run) => follows(defined(run.at(-1)), first, chains));
  return tail ? [[...tail, ...head], ...others.filter((run) => run !== tail)] : runs;
}

/** Whether one piece goes on where the other ends, on both chains. */
function follows(before: LocatedPiece, after: LocatedPiece, chains: readonly CurveChain[]): boolean {
  const { first, second } = before;
  const place = (chain: number, curve: number, t: number) => pointAt(defined(chains[chain]?.[curve]), t);
  const near = 2 * COINCIDENCE_TOLERANCE;
  return (
    distance(place(first, before.curve, before.to), place(first, after.curve, after.from)) < near &&
    distance(place(second, before.otherCurve, before.otherTo), place(second, after.otherCurve, after.otherFrom)) < near
  );
}

function intervalOf(pieces: readonly LocatedPiece[], chains: readonly CurveChain[]): SharedInterval {
  const { first, second, otherFrom, otherTo } = defined(pieces[0]);
  const lengths = pieces.map(({ curve, from, to }) => lengthOf(subCurve(defined(chains[first]?.[curve]), from, to)));
  return {
    first,
    second,
    reversed: otherFrom > otherTo,
    pieces,
    length: lengths.reduce((sum, each) => sum + each, 0),
  };
}

/** Of three lines on each other, the third lies on the first and on the second; that is one cut too many, not two. */
export function withoutRepeats(stretches: readonly SharedInterval[]): SharedInterval[] {
  const kept: SharedInterval[] = [];
  const covered = new Map<string, SharedPiece[]>();
  for (const stretch of stretches) {
    const known = stretch.pieces.filter((piece) =>
      (covered.get(`${stretch.second}/${piece.otherCurve}`) ?? []).some((other) => overlap(piece, other)),
    );
    if (2 * known.length > stretch.pieces.length) continue;
    kept.push(stretch);
    checkpoint(stretch.pieces.length);
    for (const piece of stretch.pieces) {
      const key = `${stretch.second}/${piece.otherCurve}`;
      covered.set(key, [...(covered.get(key) ?? []), piece]);
    }
  }
  return kept;
}

function overlap(a: SharedPiece, b: SharedPiece): boolean {
  const [from, to] = [Math.max(lowOf(a), lowOf(b)), Math.min(highOf(a), highOf(b))];
  return to - from > 0.5 * Math.min(highOf(a) - lowOf(a), highOf(b) - lowOf(b));
}

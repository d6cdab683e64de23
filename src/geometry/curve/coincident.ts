/**
 * Where two chains of curves run along each other, however each is written. Two curves of the kinds we have are either
 * the same curve or meet in single points; so a stretch that two of them share ends at an end of one of them. Those
 * ends are projected on the other curve, and what lies between two such places is compared.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { derivedFacts, memoizeByIdentity } from '../base/derived-facts';
import type { Box } from '../base/polygon-types';
import { growBox } from '../base/ring';
import { clusterBoxes } from '../spatial/clusters';
import { SequenceIndex } from '../spatial/sequence-index';
import { boxesOfChain, COINCIDENCE_TOLERANCE, type CurveChain, CurveTable, type LocatedCurve } from './curve-table';
import { joinPieces, type SharedInterval, withoutRepeats } from './shared-intervals';
import { highOf, type LocatedPiece, lowOf, reachOf, sharedPieces } from './shared-pieces';

/** So many neighbours of a curve are compared with it, the first in the order of the chains. */
const MAX_NEIGHBOURS = 256;

/** Keeps the time bounded where very many curves lie in one place: after so many neighbours in all the search ends. */
const MAX_VISITS = 2e7;

/**
 * @param chains curves end to end, in mm
 * @param shortest mm: shorter stretches are left out
 * @returns in the order of the chains; what several chains share is given once for each chain that comes later
 */
export function findSharedIntervals(chains: readonly CurveChain[], shortest: number): SharedInterval[] {
  const found = new Map<string, LocatedPiece[]>();
  for (const piece of findPieces(chains)) {
    const key = `${piece.first}/${piece.second}/${piece.otherFrom > piece.otherTo}`;
    const list = found.get(key);
    if (list) list.push(piece);
    else found.set(key, [piece]);
  }
  const stretches = [...found.values()].flatMap((pieces) => joinPieces(pieces, chains));
  const long = stretches.filter((stretch) => stretch.length >= shortest);
  return withoutRepeats(long.sort((a, b) => a.second - b.second || a.first - b.first || orderOf(a) - orderOf(b)));
}

function orderOf({ pieces: [first] }: SharedInterval): number {
  return first ? first.curve + first.from : 0;
}

function findPieces(chains: readonly CurveChain[]): LocatedPiece[] {
  const boxes = chains.map(boxInReach);
  const found: LocatedPiece[] = [];
  let visits = 0;
  for (const members of clusterBoxes(boxes)) {
    const searched = searchOnce(members.map((member) => defined(chains[member])));
    visits += searched.visits;
    if (visits > MAX_VISITS) break;
    const numbered = ({ first, second }: LocatedPiece) => ({
      first: defined(members[first]),
      second: defined(members[second]),
    });
    for (const piece of searched.pieces) found.push({ ...piece, ...numbered(piece) });
  }
  return found;
}

/** What was found among chains whose boxes touch, directly or through others. */
interface Searched {
  readonly chains: readonly CurveChain[];
  readonly pieces: readonly LocatedPiece[];
  readonly visits: number;
}

/** By the first of the chains: after an edit most of them stand among the same ones as before. */
const lastSearched = derivedFacts.table<CurveChain, Searched>('shared pieces from a chain on');

function searchOnce(chains: readonly CurveChain[]): Searched {
  const [first = []] = chains;
  const before = lastSearched.find(first)?.value;
  if (before?.chains.length === chains.length && chains.every((chain, i) => chain === before.chains[i])) return before;
  const searched = searchAmong(chains);
  lastSearched.set(first, searched);
  return searched;
}

function searchAmong(chains: readonly CurveChain[]): Searched {
  const row = new CurveTable(chains);
  const pieces: LocatedPiece[] = [];
  if (row.count < 2) return { chains, pieces, visits: 0 };
  const near = new SequenceIndex(row.sides(), (number) => reachOf(row.curve(number)));
  const earlier: number[] = [];
  let visits = 0;
  for (let number = 0; number < row.count && visits <= MAX_VISITS; number += 1) {
    const count = near.nearBefore(number, earlier);
    visits += 2 * count;
    checkpoint(8);
    const others = earlier.slice(0, Math.min(count, MAX_NEIGHBOURS)).filter((other) => !row.part(other, number));
    if (others.length > 0)
      pieces.push(
        ...piecesOn(
          row.located(number),
          others.map((other) => row.located(other)),
        ),
      );
  }
  return { chains, pieces, visits };
}

/** Of many copies each is compared with the first alone: that one covers it. */
function* piecesOn(b: LocatedCurve, others: readonly LocatedCurve[]): Iterable<LocatedPiece> {
  for (const a of others) {
    checkpoint(40);
    const pieces = sharedPieces(a, b);
    yield* pieces;
    if (pieces.some((piece) => highOf(piece) - lowOf(piece) === 1)) return;
  }
}

/** Round all that may lie on the chain. */
const boxInReach = memoizeByIdentity(
  'box round what may lie on a chain',
  (chain: CurveChain): Box =>
    growBox(
      boxesOfChain(chain).whole,
      chain.reduce((reach, curve) => Math.max(reach, reachOf(curve)), COINCIDENCE_TOLERANCE),
    ),
);

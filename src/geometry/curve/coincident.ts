/**
 * Where two chains of curves run along each other, however each is written. Two curves of the kinds we have are either
 * the same curve or meet in single points; so a stretch that two of them share ends at an end of one of them. Those
 * ends are projected on the other curve, and what lies between two such places is compared.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve, Point } from '../base/curve-types';
import { derivedFacts, memoizeByIdentity } from '../base/derived-facts';
import type { Box } from '../base/polygon-types';
import { growBox } from '../base/ring';
import { SAME_POINT } from '../base/tolerances';
import { cross, distance, samePoint, vectorLength } from '../base/vector';
import { clusterBoxes } from '../spatial/clusters';
import { SequenceIndex } from '../spatial/sequence-index';
import { boxesOfChain, COINCIDENCE_TOLERANCE, type CurveChain, CurveTable, type LocatedCurve } from './curve-table';
import { pointAt, tangentAt } from './evaluate';
import { controlPoints, lengthLimitOf, lengthOf } from './measure';
import { nearestOn } from './nearest';
import { isOff, isPlainlyOff } from './off';
import { subCurve } from './subdivide';

/** A stretch of one curve that lies on a stretch of another. */
export interface SharedPiece {
  /** The curve of the first chain, and its parameters; `from` is less than `to`. */
  readonly curve: number;
  readonly from: number;
  readonly to: number;
  /** The curve of the second chain, and the parameters at the same places: descending where it runs the other way. */
  readonly otherCurve: number;
  readonly otherFrom: number;
  readonly otherTo: number;
}

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

/** By how much of its radius a quarter arc errs that is written as one cubic: 2.73e-4, rounded up. */
const ARC_AS_CUBIC = 2.8e-4;

/** The sine of the angle between two curves that still run along each other in their middle. */
const ALONG = 0.18;

/** So many neighbours of a curve are compared with it, the first in the order of the chains. */
const MAX_NEIGHBOURS = 256;

/** Keeps the time bounded where very many curves lie in one place: after so many neighbours in all the search ends. */
const MAX_VISITS = 2e7;

/** So many runs, the latest, may still go on where a new piece is found. */
const OPEN_RUNS = 8;

interface Found extends SharedPiece {
  readonly first: number;
  readonly second: number;
}

/**
 * @param chains curves end to end, in mm
 * @param shortest mm: shorter stretches are left out
 * @returns in the order of the chains; what several chains share is given once for each chain that comes later
 */
export function findSharedIntervals(chains: readonly CurveChain[], shortest: number): SharedInterval[] {
  const found = new Map<string, Found[]>();
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

function findPieces(chains: readonly CurveChain[]): Found[] {
  const boxes = chains.map(boxInReach);
  const found: Found[] = [];
  let visits = 0;
  for (const members of clusterBoxes(boxes)) {
    const searched = searchOnce(members.map((member) => defined(chains[member])));
    visits += searched.visits;
    if (visits > MAX_VISITS) break;
    const numbered = ({ first, second }: Found) => ({
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
  readonly pieces: readonly Found[];
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
  const pieces: Found[] = [];
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
function* piecesOn(b: LocatedCurve, others: readonly LocatedCurve[]): Iterable<Found> {
  for (const a of others) {
    checkpoint(40);
    const pieces = piecesOf(a, b);
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

function reachOf(curve: Curve): number {
  return curve.kind === 'arc' ? Math.max(COINCIDENCE_TOLERANCE, ARC_AS_CUBIC * radiusOf(curve)) : COINCIDENCE_TOLERANCE;
}

function radiusOf({ axisU, axisV }: Extract<Curve, { kind: 'arc' }>): number {
  return Math.max(vectorLength(axisU), vectorLength(axisV));
}

/** mm: how far apart two curves may be that are meant as one. */
function toleranceOf(a: Curve, b: Curve): number {
  if ((a.kind === 'arc') === (b.kind === 'arc')) return COINCIDENCE_TOLERANCE;
  const [arc, other] = a.kind === 'arc' ? [a, b] : [b, a];
  return other.kind === 'line' ? COINCIDENCE_TOLERANCE : reachOf(arc);
}

interface Meeting {
  /** Parameters on both curves of one place. */
  readonly t: number;
  readonly u: number;
}

function piecesOf(a: LocatedCurve, b: LocatedCurve): Found[] {
  const tolerance = toleranceOf(a.curve, b.curve);
  // All of its places are one place: nothing lies between two of them.
  if (lengthLimitOf(a.curve) < tolerance) return [];
  if (!mayShare(a, b, tolerance)) return [];
  const located = { first: a.chain, second: b.chain, curve: a.index, otherCurve: b.index };
  const course = commonCourse(a.curve, b.curve);
  if (course) return [{ ...located, from: 0, to: 1, ...course }];
  const meetings = meetingsOf(a, b, tolerance);
  const pieces: Found[] = [];
  for (let i = 1; i < meetings.length; i += 1) {
    const [from, to] = [defined(meetings[i - 1]), defined(meetings[i])];
    const piece = compare(a.curve, b.curve, from, to, tolerance);
    if (!piece) continue;
    pieces.push({ ...located, ...piece });
  }
  return pieces;
}

/**
 * Whether two places can be found that both curves pass. Neighbours in a chain have one, the end that they share; that is
 * the common case, and told without looking for the nearest places.
 */
function mayShare(a: LocatedCurve, b: LocatedCurve, tolerance: number): boolean {
  const startOfB = mayLieOn(a, b.curve.start, tolerance);
  const endOfB = mayLieOn(a, b.curve.end, tolerance);
  const startOfA = mayLieOn(b, a.curve.start, tolerance);
  const endOfA = mayLieOn(b, a.curve.end, tolerance);
  if (startOfB && endOfB) return true;
  if (startOfA && endOfA) return true;
  if (!(startOfB || endOfB) || !(startOfA || endOfA)) return false;
  return !samePoint(startOfA ? a.curve.start : a.curve.end, startOfB ? b.curve.start : b.curve.end);
}

/** Where two curves have the same control points, in one order or the other: as borders that two areas share. */
function commonCourse(a: Curve, b: Curve): Pick<SharedPiece, 'otherFrom' | 'otherTo'> | undefined {
  if (a.kind === 'arc' || b.kind === 'arc' || a.kind !== b.kind) return undefined;
  if (distance(a.start, a.end) < 2 * COINCIDENCE_TOLERANCE) return undefined;
  const isSame = (points: readonly Point[]): boolean =>
    controlPoints(a).every((point, i) => distance(point, defined(points[i])) < SAME_POINT);
  if (isSame(controlPoints(b))) return { otherFrom: 0, otherTo: 1 };
  return isSame(controlPoints(b).reverse()) ? { otherFrom: 1, otherTo: 0 } : undefined;
}

/** The ends of either that lie on the other, in the course of the first. */
function meetingsOf(a: LocatedCurve, b: LocatedCurve, tolerance: number): Meeting[] {
  const ends = [
    mayTouch(a, b.curve.start, tolerance),
    mayTouch(a, b.curve.end, tolerance),
    mayTouch(b, a.curve.start, tolerance),
    mayTouch(b, a.curve.end, tolerance),
  ];
  // Between fewer than two places nothing lies: most pairs are told by that.
  if (ends.filter(Boolean).length < 2) return [];
  const meetings: Meeting[] = [];
  ends.forEach((touches, end) => {
    if (!touches) return;
    const own = end % 2;
    const [curve, other] = end < 2 ? [a.curve, b.curve] : [b.curve, a.curve];
    const nearest = nearestOn(curve, own === 0 ? other.start : other.end);
    if (nearest.distance > tolerance) return;
    meetings.push(end < 2 ? { t: nearest.t, u: own } : { t: own, u: nearest.t });
  });
  return meetings.sort((one, other) => one.t - other.t || one.u - other.u);
}

function mayLieOn({ curve, box }: LocatedCurve, point: Point, tolerance: number): boolean {
  const outside = Math.max(box.minX - point.x, point.x - box.maxX, box.minY - point.y, point.y - box.maxY);
  return outside <= tolerance && !isPlainlyOff(curve, point, tolerance);
}

function mayTouch(located: LocatedCurve, point: Point, tolerance: number): boolean {
  return mayLieOn(located, point, tolerance) && !isOff(located.curve, point, tolerance);
}

const SAMPLES = [0.5, 0.25, 0.75, 0.125, 0.875];

function compare(
  a: Curve,
  b: Curve,
  from: Meeting,
  to: Meeting,
  tolerance: number,
): Omit<SharedPiece, 'curve' | 'otherCurve'> | undefined {
  if (from.t === to.t || isOnePlace(a, from.t, to.t, tolerance)) return undefined;
  const straight = a.kind === 'line' && b.kind === 'line';
  for (const share of straight ? SAMPLES.slice(0, 1) : SAMPLES) {
    const t = from.t + (to.t - from.t) * share;
    const nearest = nearestOn(b, pointAt(a, t));
    if (nearest.distance > tolerance) return undefined;
    if (share === 0.5 && Math.abs(cross(tangentAt(a, t), tangentAt(b, nearest.t))) > ALONG) return undefined;
  }
  const middle = nearestOn(b, pointAt(a, (from.t + to.t) / 2)).t;
  // An end that several parameters reach, such as the seam of a full turn, is the one on the middle's own side.
  const [otherFrom, otherTo] = [sideOf(b, from.u, middle, to.u), sideOf(b, to.u, middle, from.u)];
  return otherFrom === otherTo ? undefined : { from: from.t, to: to.t, otherFrom, otherTo };
}

/** Whether a stretch of a curve is too short to lie along anything. */
function isOnePlace(curve: Curve, from: number, to: number, tolerance: number): boolean {
  if (distance(pointAt(curve, from), pointAt(curve, to)) >= tolerance) return false;
  const longest = (2 * tolerance) / (to - from);
  return lengthLimitOf(curve) < longest || (distance(curve.start, curve.end) < longest && lengthOf(curve) < longest);
}

/** On a curve that ends where it starts, the parameter of `u` that lies beyond the middle as seen from `other`. */
function sideOf(curve: Curve, u: number, middle: number, other: number): number {
  const seam = (u === 0 || u === 1) && distance(curve.start, curve.end) < COINCIDENCE_TOLERANCE;
  if (!seam || other === 0 || other === 1) return u;
  return middle > other ? 1 : 0;
}

function joinPieces(found: readonly Found[], chains: readonly CurveChain[]): SharedInterval[] {
  const runs: Found[][] = [];
  for (const piece of [...found].sort((a, b) => a.curve - b.curve || a.from - b.from)) {
    const run = runs.slice(-OPEN_RUNS).find((each) => follows(defined(each.at(-1)), piece, chains));
    if (run) run.push(piece);
    else runs.push([piece]);
  }
  return joinRound(runs, chains).map((pieces) => intervalOf(pieces, chains));
}

/** A run that ends at the end of a closed chain is one with the run that begins at its start. */
function joinRound(runs: readonly Found[][], chains: readonly CurveChain[]): readonly Found[][] {
  const [head, ...others] = runs;
  const first = head?.[0];
  if (!head || !first) return [];
  const tail = others.find((run) => follows(defined(run.at(-1)), first, chains));
  return tail ? [[...tail, ...head], ...others.filter((run) => run !== tail)] : runs;
}

/** Whether one piece goes on where the other ends, on both chains. */
function follows(before: Found, after: Found, chains: readonly CurveChain[]): boolean {
  const { first, second } = before;
  const place = (chain: number, curve: number, t: number) => pointAt(defined(chains[chain]?.[curve]), t);
  const near = 2 * COINCIDENCE_TOLERANCE;
  return (
    distance(place(first, before.curve, before.to), place(first, after.curve, after.from)) < near &&
    distance(place(second, before.otherCurve, before.otherTo), place(second, after.otherCurve, after.otherFrom)) < near
  );
}

function intervalOf(pieces: readonly Found[], chains: readonly CurveChain[]): SharedInterval {
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
function withoutRepeats(stretches: readonly SharedInterval[]): SharedInterval[] {
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

const lowOf = ({ otherFrom, otherTo }: SharedPiece): number => Math.min(otherFrom, otherTo);
const highOf = ({ otherFrom, otherTo }: SharedPiece): number => Math.max(otherFrom, otherTo);

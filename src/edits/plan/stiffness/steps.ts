/** What can be done to make an island lift less: a bridge made wider, another one, or one in the place of another. Sheet mm. */
import { defined } from '../../../base/defined';
import { derivedFacts } from '../../../geometry/base/derived-facts';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import { distance } from '../../../geometry/base/vector';
import { type ScoredCandidate, type Surroundings, scoreWithWidth } from '../score';
import type { Assignment } from '../search/layout';
import { WEIGHTS } from '../search/weights';
import { stoutestWidth } from '../width';
import type { Grillage } from './grillage';

/** A bridge is made so much wider at once. */
const WIDER = 1.3;
/**
 * Between bridges of the same two pieces, at least, in mm and as a share of the smaller one's size: nearer ones look like a
 * comb, and one that is wider does as well.
 */
const COMB = { least: 5, share: 1 / 6 };
/** So many of the cheapest ways of a piece are tried in the place of a bridge. */
const MOST_MOVED = 24;

/** What is done with one bridge. */
export interface Step {
  readonly way: ScoredCandidate;
  /** What it takes the place of: itself before it was made wider, or another one. */
  readonly old: ScoredCandidate | undefined;
}

/**
 * @param isBold whether bridges may become as wide as can be at once, and go elsewhere: what needs much is so given it
 * before many have been given a little
 */
export function stepsFor(
  state: Assignment,
  ties: readonly ScoredCandidate[],
  own: readonly ScoredCandidate[],
  grillage: Grillage,
  isBold: boolean,
): Step[] {
  const additions = additionsTo(state, ties, grillage, isBold);
  return [...wideningsOf(state, ties, isBold), ...additions, ...(isBold ? movesOf(state, ties, own, grillage) : [])];
}

function wideningsOf(state: Assignment, ties: readonly ScoredCandidate[], isBold: boolean): Step[] {
  return ties.flatMap((old) => widened(state, old, isBold).map((way) => ({ way, old })));
}

/** A little wider; twice that, and as wide as can be. */
function widened(
  { around, options, isStout = false }: Assignment,
  old: ScoredCandidate,
  isBold: boolean,
): ScoredCandidate[] {
  const { kerf } = around;
  const step = WEIGHTS.widthStep.value;
  const least = options.width - kerf;
  const widest = isStout ? stoutestWidth(old.length, least) : WEIGHTS.widest.value * least;
  const wider = Math.ceil((WIDER * (old.width - kerf)) / step - 1e-6) / Math.round(1 / step);
  const wanted = isBold ? [wider, 2 * wider, widest] : [wider];
  return [...new Set(wanted.map((each) => Math.min(each, widest)))]
    .filter((each) => each > old.width - kerf + DRAWN_ALIKE)
    .flatMap((each) => madeWider(old, kerf + each, options.width, around) ?? []);
}

/** By what a plan is rated by, and by way and width: the same are asked for again round after round. */
const wideWays = derivedFacts.table<Surroundings, Map<ScoredCandidate, Map<number, ScoredCandidate | undefined>>>(
  'ways across as wider bridges',
);

function madeWider(
  way: ScoredCandidate,
  width: number,
  least: number,
  around: Surroundings,
): ScoredCandidate | undefined {
  const all = wideWays.find(around)?.value ?? new Map<ScoredCandidate, Map<number, ScoredCandidate | undefined>>();
  if (all.size === 0) wideWays.set(around, all);
  const known = all.get(way) ?? new Map<number, ScoredCandidate | undefined>();
  all.set(way, known);
  if (!known.has(width)) known.set(width, scoreWithWidth(way, way.island, width, least, around));
  return known.get(width);
}

/** Ways across between pieces that hang. */
function additionsTo(state: Assignment, ties: readonly ScoredCandidate[], grillage: Grillage, isBold: boolean): Step[] {
  return [...grillage.place.keys()].flatMap((number) =>
    waysClearOf(state, number, ties, grillage).flatMap((way) =>
      [way, ...(isBold ? widened(state, way, true) : [])].map((each) => ({ way: each, old: undefined })),
    ),
  );
}

/** Each bridge of the island goes elsewhere, as wide as it is there, as wide as it was, and as wide as can be. */
function movesOf(
  state: Assignment,
  ties: readonly ScoredCandidate[],
  own: readonly ScoredCandidate[],
  grillage: Grillage,
): Step[] {
  return own.flatMap((old) => {
    const rest = ties.filter((tie) => tie !== old);
    return waysClearOf(state, old.island, rest, grillage)
      .slice(0, MOST_MOVED)
      .flatMap((way) => [way, ...widened(state, way, true)].map((each) => ({ way: each, old })));
  });
}

/** What leaves a piece, and is not too near a bridge between the same two. */
function waysClearOf(
  { ways, frames }: Assignment,
  number: number,
  ties: readonly ScoredCandidate[],
  { place, bodies }: Grillage,
): ScoredCandidate[] {
  const sizeOf = (piece: number): number => bodies.get(piece)?.size ?? Infinity;
  const apart = ({ island, target }: ScoredCandidate): number =>
    Math.max(COMB.least, COMB.share * Math.min(sizeOf(island), sizeOf(target)));
  return defined(ways[number])
    .filter((way) => frames.has(way.target) || place.has(way.target))
    .filter((way) => !ties.some((tie) => isTooNear(tie, way, apart(way))));
}

/** @param apart mm */
function isTooNear(tie: ScoredCandidate, way: ScoredCandidate, apart: number): boolean {
  const [a, b] = tie.island === way.island ? [tie.from, tie.to] : [tie.to, tie.from];
  const same =
    tie.island === way.island ? tie.target === way.target : tie.island === way.target && tie.target === way.island;
  return same && (distance(a, way.from) < apart || distance(b, way.to) < apart);
}

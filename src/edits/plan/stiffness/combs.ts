/** Three or more bridges side by side look like a comb: fewer and wider ones hold as well. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import { add, cross, distance, dot, scale, subtract } from '../../../geometry/base/vector';
import type { Mirror } from '../design/index';
import { type ScoredCandidate, scoreWithWidth } from '../score';
import {
  type Assignment,
  applyChange,
  arrivalsAt,
  type Change,
  hangingOn,
  type Layout,
  needOf,
  tiesOf,
} from '../search/layout';
import { areClear } from '../search/select';
import { stripOf } from '../search/strips';
import { axesOf, isImage } from '../search/symmetrise';
import { WEIGHTS } from '../search/weights';
import { grillageOf, liftOfPlate } from './grillage';
import { bodiesIn } from './strengthen';

/** So many side by side are a comb. */
const COMB = 3;
/** Sine of the angle within which bridges run side by side. */
const PARALLEL = 0.2;
/** Those that stay are made so much wider, in shares of what the ones that go took up. */
const WIDER = [0, 0.5, 1, 1.5, 2.5];
/** Islands may lift so far then, in shares of the swing; those that lift farther so many times as far as before. */
const LIFT = { share: 0.85, more: 1 };
/** Of more islands together none is looked at. */
const MOST_PLATES = 24;
/** So many bridges are taken out at most. */
const MOST_ROUNDS = 24;

/** @param layout is changed */
export function thinCombs(state: Assignment, layout: Layout): void {
  const { rule } = state.around;
  if (rule.exact || typeof state.options.count === 'number' || state.options.shortestOnly) return;
  const bodies = bodiesIn(state, layout);
  if (bodies.size > MOST_PLATES) return;
  const lifts = (ties: readonly ScoredCandidate[]) => {
    const grillage = grillageOf(bodies, ties, rule);
    return [...bodies.keys()].map((number) => liftOfPlate(grillage, number).lift);
  };
  const most = lifts(tiesOf(layout)).map((lift) => Math.max(LIFT.share * WEIGHTS.swing.value, LIFT.more * lift));
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const groups = groupsOf(layout);
    const change = groups
      .filter(({ length }) => length >= COMB)
      .flatMap((comb) => thinnings(state, layout, groups, comb))
      .find((each) => {
        checkpoint(200 * bodies.size);
        const after = changed(layout, each);
        return isHeld(state, after) && lifts(tiesOf(after)).every((lift, i) => lift <= (most[i] ?? 0));
      });
    if (!change) return;
    applyChange(layout, change);
  }
}

/** Bridges side by side between the same two pieces, the largest groups first. */
function groupsOf(layout: Layout): ScoredCandidate[][] {
  const groups: ScoredCandidate[][] = [];
  for (const tie of tiesOf(layout)) {
    const group = groups.find(([first]) => first && isSideBySide(tie, first));
    if (group) group.push(tie);
    else groups.push([tie]);
  }
  return groups.sort((a, b) => b.length - a.length);
}

/** On one side of an island, not on two that face each other. */
function isSideBySide(a: ScoredCandidate, b: ScoredCandidate): boolean {
  const isAlike = a.island === b.island && a.target === b.target;
  if (!isAlike && !(a.island === b.target && a.target === b.island)) return false;
  const [one, other] = [subtract(a.to, a.from), isAlike ? subtract(b.to, b.from) : subtract(b.from, b.to)];
  const slack = PARALLEL * Math.hypot(one.x, one.y) * Math.hypot(other.x, other.y);
  return dot(one, other) > 0 && Math.abs(cross(one, other)) < slack;
}

/**
 * One bridge fewer, with its images, which may be of other combs, and the others of these combs wider: the one in the middle
 * first, as the others are spread best then, and what takes least paint.
 */
function thinnings(
  state: Assignment,
  layout: Layout,
  groups: readonly ScoredCandidate[][],
  comb: readonly ScoredCandidate[],
): Change[] {
  const mirrors = axesOf(state, layout);
  const ties = tiesOf(layout);
  const middle = comb.reduce((sum, { from }) => add(sum, scale(from, 1 / comb.length)), { x: 0, y: 0 });
  const sets = [...comb]
    .sort((a, b) => distance(a.from, middle) - distance(b.from, middle))
    .map((tie) => withImages(tie, ties, mirrors));
  return sets.flatMap((gone) => {
    const touched = groups.filter((group) => group.some((tie) => gone.includes(tie)));
    const out = touched.flat();
    const rest = ties.filter((tie) => !out.includes(tie)).map(stripOf);
    return WIDER.flatMap((share) => {
      const ways = touched.map((group) => othersOf(state, group, gone, share));
      if (ways.some((each) => each === undefined)) return [];
      const change = { out, in: ways.flatMap((each) => each ?? []) };
      return areClear(change.in, rest) ? [change] : [];
    });
  });
}

function withImages(
  first: ScoredCandidate,
  ties: readonly ScoredCandidate[],
  mirrors: readonly Mirror[],
): ScoredCandidate[] {
  const found = [first];
  for (const tie of found) {
    const images = ties.filter((other) => mirrors.some((mirror) => isImage(other, tie, mirror)));
    found.push(...images.filter((other) => !found.includes(other)));
  }
  return found;
}

/** Those of a group that stay; undefined where none does, or one cannot be made as wide. */
function othersOf(
  state: Assignment,
  group: readonly ScoredCandidate[],
  gone: readonly ScoredCandidate[],
  share: number,
): ScoredCandidate[] | undefined {
  const [leave, stay] = [group.filter((tie) => gone.includes(tie)), group.filter((tie) => !gone.includes(tie))];
  const more = (share * leave.reduce((sum, { width }) => sum + width, 0)) / Math.max(1, stay.length);
  const ways = stay.flatMap((tie) => widened(state, tie, more) ?? []);
  return stay.length > 0 && ways.length === stay.length ? ways : undefined;
}

function widened({ around, options }: Assignment, tie: ScoredCandidate, more: number): ScoredCandidate | undefined {
  if (more === 0) return tie;
  const step = WEIGHTS.widthStep.value;
  const widest = WEIGHTS.widest.value * (options.width - around.kerf);
  const wanted = Math.min(widest, Math.ceil((tie.width - around.kerf + more) / step - 1e-6) * step);
  if (wanted <= tie.width - around.kerf) return tie;
  return scoreWithWidth(tie, tie.island, around.kerf + wanted, options.width, around);
}

function changed(layout: Layout, change: Change): Layout {
  const after: Layout = new Map(layout);
  applyChange(after, change);
  return after;
}

/** Whether all that hung still does, each by as many bridges as its size asks for. */
function isHeld(state: Assignment, after: Layout): boolean {
  const hanging = hangingOn(state.frames, tiesOf(after));
  return [...after.keys()].every((number) => {
    const given = arrivalsAt(after, number);
    const own = after.get(number)?.length ?? 0;
    return hanging.has(number) && own + given.length >= needOf(state, number, given).wanted;
  });
}

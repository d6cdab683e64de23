/**
 * Makes a plan stiff as a whole: islands that hang on islands lift with these. Where one lifts too far, the bridge is made
 * wider, or another added, that holds it best for its cost. Sheet mm.
 */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import { boxOfRing } from '../../../geometry/base/ring';
import { distance } from '../../../geometry/base/vector';
import { mirrorAbout } from '../design/axis';
import type { Mirror } from '../design/index';
import { type ScoredCandidate, scoreWithWidth } from '../score';
import { type Body, bodyOf } from './body';
import { bridgeCountFor } from './count';
import { type Grillage, gainOf, grillageOf, liftOfPlate, type PlateLift } from './grillage';
import { type Assignment, hangingOn, type Layout, tiesOf } from './layout';
import { movedWay } from './moved-way';
import { areClear } from './select';
import { axesOf, isImage } from './symmetrise';
import { WEIGHTS } from './weights';

/** More plates than this are not looked at as a whole. */
const MOST_PLATES = 160;
/** So many changes for each island at most, and for a layer. */
const ROUNDS = { least: 12, each: 8, most: 120 };
/** A bridge is made so much wider at once. */
const WIDER = 1.3;
/** A further bridge counts so many times: a wider one is calmer than two. */
const ANOTHER = 1.5;
/**
 * Between bridges of the same two pieces, at least, in mm and as a share of the smaller one's size: nearer ones look like a
 * comb, and one that is wider does as well.
 */
const COMB = { least: 5, share: 1 / 6 };
/** What lessens a lift by no more than this share of it is not worth its paint. */
const LEAST_GAIN = 0.02;
/** The same of an island that lifts too far whatever is done. */
const MUCH = 0.12;

/** Bridges that go, and those that come for them. */
interface Change {
  readonly out: readonly ScoredCandidate[];
  readonly in: readonly ScoredCandidate[];
}

/**
 * What is mirrored stays so where it can. Where an island lifts too far whatever is done, it gets only what helps it much: a
 * comb of wide bridges that does not hold either is worse than few.
 * @param layout is changed
 */
export function strengthen(state: Assignment, layout: Layout): void {
  const { rule } = state.around;
  if (rule.exact || typeof state.options.count === 'number' || state.options.shortestOnly) return;
  const tried: Layout = new Map(layout);
  const hopeless = strengthened(state, tried, new Set());
  const made: Layout = hopeless.size === 0 ? tried : new Map(layout);
  if (hopeless.size > 0) strengthened(state, made, hopeless);
  for (const [number, set] of made) layout.set(number, set);
}

/**
 * @param layout is changed
 * @param hopeless islands that were tried before, in vain
 * @returns islands that still lift too far
 */
function strengthened(state: Assignment, layout: Layout, hopeless: ReadonlySet<number>): Set<number> {
  const bodies = bodiesIn(state, layout);
  if (bodies.size === 0 || bodies.size > MOST_PLATES) return new Set();
  const large = [...bodies.keys()].filter((number) => isLarge(state, number));
  const given = new Set<number>();
  const mirrors = axesOf(state, layout);
  const rounds = Math.min(ROUNDS.most, Math.max(ROUNDS.least, ROUNDS.each * large.length));
  for (let round = 0; ; round += 1) {
    const grillage = grillageOf(bodies, tiesOf(layout), state.around.rule);
    const lifting = large
      .map((number) => liftOfPlate(grillage, number))
      .filter(({ lift }) => lift > WEIGHTS.swing.value)
      .sort((a, b) => b.lift - a.lift);
    const worst = lifting.find(({ number }) => !given.has(number));
    if (!worst || round >= rounds) return new Set(lifting.map(({ number }) => number));
    const change = hopeless.has(worst.number)
      ? bestChange(state, layout, grillage, worst, mirrors, MUCH)
      : (bestChange(state, layout, grillage, worst, mirrors, LEAST_GAIN) ??
        bestChange(state, layout, grillage, worst, [], LEAST_GAIN));
    if (change) apply(layout, change);
    else given.add(worst.number);
  }
}

function bodiesIn({ pieces, frames }: Assignment, layout: Layout): Map<number, Body> {
  const hanging = [...hangingOn(frames, tiesOf(layout))].filter((number) => !frames.has(number));
  return new Map(hanging.map((number) => [number, bodyOf(defined(pieces[number]))]));
}

/** Small ones are held wherever a bridge is. */
function isLarge({ pieces }: Assignment, number: number): boolean {
  const { polygon, area } = defined(pieces[number]);
  return bridgeCountFor(boxOfRing(polygon.outer), area) > 1;
}

function apply(layout: Layout, change: Change): void {
  for (const old of change.out) {
    layout.set(
      old.island,
      (layout.get(old.island) ?? []).filter((way) => way !== old),
    );
  }
  for (const way of change.in) layout.set(way.island, [...(layout.get(way.island) ?? []), way]);
}

/** @param least the share of the lift that a change must take from it */
function bestChange(
  state: Assignment,
  layout: Layout,
  grillage: Grillage,
  worst: PlateLift,
  mirrors: readonly Mirror[],
  least: number,
): Change | undefined {
  const ties = tiesOf(layout);
  const excess = worst.lift - WEIGHTS.swing.value;
  const rated = [...widenings(state, ties), ...additions(state, ties, grillage)]
    .map(({ way, old }) => {
      checkpoint(300);
      const gain = gainOf(grillage, worst, way, old);
      const cost = old ? way.cost - old.cost : ANOTHER * way.cost;
      return { way, old, gain, worth: Math.min(gain, excess) / Math.max(cost, 1e-3) };
    })
    .filter(({ gain }) => gain > least * worst.lift)
    .sort((a, b) => b.worth - a.worth);
  for (const { way, old } of rated) {
    const change = mirroredChange(state, ties, way, old, mirrors);
    if (!change) continue;
    const kept = ties.filter((tie) => !change.out.includes(tie));
    if (areClear([...kept, ...change.in], [])) return change;
  }
  return undefined;
}

interface Step {
  readonly way: ScoredCandidate;
  /** What it takes the place of. */
  readonly old: ScoredCandidate | undefined;
}

function widenings(state: Assignment, ties: readonly ScoredCandidate[]): Step[] {
  return ties.flatMap((old) => {
    const way = widened(state, old);
    return way ? [{ way, old }] : [];
  });
}

function widened({ around, options }: Assignment, old: ScoredCandidate): ScoredCandidate | undefined {
  const { kerf } = around;
  const step = WEIGHTS.widthStep.value;
  const wanted = Math.ceil((WIDER * (old.width - kerf)) / step) * step;
  if (wanted > WEIGHTS.widest.value * (options.width - kerf)) return undefined;
  return scoreWithWidth(old, old.island, kerf + wanted, options.width, around);
}

/** Ways across between pieces that hang. */
function additions(
  { ways, frames }: Assignment,
  ties: readonly ScoredCandidate[],
  { place, bodies }: Grillage,
): Step[] {
  const sizeOf = (number: number): number => bodies.get(number)?.size ?? Infinity;
  const apart = ({ island, target }: ScoredCandidate): number =>
    Math.max(COMB.least, COMB.share * Math.min(sizeOf(island), sizeOf(target)));
  return [...place.keys()].flatMap((number) =>
    defined(ways[number])
      .filter((way) => frames.has(way.target) || place.has(way.target))
      .filter((way) => !ties.some((tie) => isBeside(tie, way, apart(way))))
      .map((way) => ({ way, old: undefined })),
  );
}

/** @param apart mm */
function isBeside(tie: ScoredCandidate, way: ScoredCandidate, apart: number): boolean {
  const [a, b] = tie.island === way.island ? [tie.from, tie.to] : [tie.to, tie.from];
  const same =
    tie.island === way.island ? tie.target === way.target : tie.island === way.target && tie.target === way.island;
  return same && (distance(a, way.from) < apart || distance(b, way.to) < apart);
}

/** With the images of what changes; undefined where one of them has no place. */
function mirroredChange(
  state: Assignment,
  ties: readonly ScoredCandidate[],
  way: ScoredCandidate,
  old: ScoredCandidate | undefined,
  mirrors: readonly Mirror[],
): Change | undefined {
  const steps: Step[] = [{ way, old }];
  for (const step of steps) {
    for (const mirror of mirrors) {
      const image = imageOf(state, ties, step, mirror);
      if (image === 'none') return undefined;
      if (image && !steps.some((other) => isImage(other.way, step.way, mirror))) steps.push(image);
    }
  }
  return { out: steps.flatMap((step) => step.old ?? []), in: steps.map((step) => step.way) };
}

/** Undefined where the axis says nothing of the bridge, or it is its own image. */
function imageOf(
  state: Assignment,
  ties: readonly ScoredCandidate[],
  { way, old }: Step,
  mirror: Mirror,
): Step | 'none' | undefined {
  const number = mirror.images.get(way.island);
  if (number === undefined || isImage(way, way, mirror)) return undefined;
  if (old) {
    const other = ties.find((tie) => isImage(tie, old, mirror));
    const image = other && scoreWithWidth(other, other.island, way.width, state.options.width, state.around);
    return image ? { way: image, old: other } : 'none';
  }
  const image = movedWay(state, way, number, (place) => mirrorAbout(mirror, place));
  return image ? { way: image, old: undefined } : 'none';
}

/**
 * Makes a plan stiff as a whole: islands that hang on islands lift with these. Where one lifts too far, the bridge is made
 * wider, or another added, that holds it best for its cost. Sheet mm.
 */
import { defined } from '../../../base/defined';
import { boxOfRing } from '../../../geometry/base/ring';
import type { Mirror } from '../design/index';
import { byCost } from '../score';
import { type Body, bodyOf } from '../search/body';
import { bridgeCountFor } from '../search/count';
import { type Assignment, applyChange, hangingOn, type Layout, tiesOf } from '../search/layout';
import { axesOf } from '../search/symmetrise';
import { WEIGHTS } from '../search/weights';
import { manyWaysFrom } from '../ways/many-ways';
import { grillageOf, liftOfPlate } from './grillage';
import { bestChange, ROOM } from './stiffer';

/** More plates than this are not looked at as a whole. */
const MOST_PLATES = 160;
/** So many changes for each island at most, and for a layer. */
const ROUNDS = { least: 24, each: 12, most: 120 };
/** Where much is done at once: so often islands that nothing was found for are looked at again, for ever less. */
const AGAIN = 2;
/** What lessens a lift by no more than this share of it is not worth its paint. */
const LEAST_GAIN = 0.02;
/** The same of an island that lifts too far whatever is done. */
const MUCH = 0.12;
/** An island that still lifts more than so many times as far as it may is given up; others are held as well as can be. */
export const HOPELESS = 1.25;
/** Of so many of them more places are looked at. */
const MOST_SOUGHT = 12;

/**
 * What is mirrored stays so where it can. Step by step first; where that leaves an island that lifts too far, with all at
 * once and elsewhere. One that lifts too far even so gets only what helps it much: a comb of wide bridges that does not hold
 * either is worse than few.
 * @param layout is changed
 */
export function strengthen(state: Assignment, layout: Layout): void {
  const { rule } = state.around;
  if (rule.exact || typeof state.options.count === 'number' || state.options.shortestOnly) return;
  const plain = strengthened(state, layout, { isBold: false, hopeless: new Set() });
  const made = plain.lifting.length === 0 ? plain : boldly(state, layout, new Set(plain.lifting));
  for (const [number, set] of made.layout) layout.set(number, set);
}

function boldly(state: Assignment, layout: Layout, hopeless: ReadonlySet<number>): Strengthened {
  const far = (made: Strengthened) => made.lifting.length > 0;
  const usual = strengthened(state, layout, { isBold: true, hopeless: new Set() });
  const wide = far(usual)
    ? strengthened(withManyWays(state, usual.lifting), layout, { isBold: true, hopeless: new Set() })
    : usual;
  const bold = wide.most < usual.most ? wide : usual;
  const isHeld = bold.most <= HOPELESS * WEIGHTS.swing.value;
  return isHeld ? bold : strengthened(state, layout, { isBold: false, hopeless });
}

/** More places, all directions and stouter bridges, for islands that the usual ways do not hold. */
export function withManyWays(state: Assignment, lifting: readonly number[]): Assignment {
  const { pieces, options, around } = state;
  const limit = Math.min(WEIGHTS.longest.value + around.kerf, around.longest);
  const many = new Set(lifting.slice(0, MOST_SOUGHT));
  const ways = state.ways.map((usual, number) => {
    if (!many.has(number)) return usual;
    const { outer } = defined(pieces[number]).polygon;
    return [...usual, ...manyWaysFrom(outer, number, limit, options.width, around)].sort(byCost);
  });
  return { ...state, ways, isStout: true };
}

export interface Means {
  /** Whether bridges may become as wide as can be at once, and go elsewhere. */
  readonly isBold: boolean;
  /** Islands that were tried before, in vain. */
  readonly hopeless: ReadonlySet<number>;
  /** Whether the bridges that there are stay as they are. */
  readonly addsOnly?: boolean;
}

export interface Strengthened {
  readonly layout: Layout;
  /** Islands that still lift too far. */
  readonly lifting: readonly number[];
  /** mm: how far the one lifts that lifts most, if too far; the same of the layout that was given. */
  readonly most: number;
  readonly before: number;
}

/** @param before is not changed */
export function strengthened(
  state: Assignment,
  before: Layout,
  { isBold, hopeless, addsOnly = false }: Means,
): Strengthened {
  const layout: Layout = new Map(before);
  const bodies = bodiesIn(state, layout);
  if (bodies.size === 0 || bodies.size > MOST_PLATES) return { layout, lifting: [], most: 0, before: 0 };
  const swing = WEIGHTS.swing.value;
  const large = [...bodies.keys()].filter((number) => isLarge(state, number));
  const given = new Set<number>();
  let [again, start] = [0, 0];
  const mirrors = axesOf(state, layout);
  const rounds = Math.min(ROUNDS.most, Math.max(ROUNDS.least, ROUNDS.each * large.length));
  for (let round = 0; ; round += 1) {
    const grillage = grillageOf(bodies, tiesOf(layout), state.around.rule);
    const lifting = large
      .map((number) => liftOfPlate(grillage, number))
      .filter(({ lift }) => lift > ROOM.share * swing)
      .sort((a, b) => b.lift - a.lift);
    const far = lifting.filter(({ lift }) => lift > swing);
    if (round === 0) start = far[0]?.lift ?? 0;
    if (isBold && far.length > 0 && again < AGAIN && lifting.every(({ number }) => given.has(number))) {
      given.clear();
      again += 1;
    }
    const worst = lifting.find(({ number }) => !given.has(number));
    if (!worst || round >= rounds) {
      return { layout, lifting: far.map(({ number }) => number), most: far[0]?.lift ?? 0, before: start };
    }
    const isFair = worst.lift <= swing;
    const least = hopeless.has(worst.number) ? MUCH : LEAST_GAIN / (1 + again) ** 2;
    const others = isBold && !isFair ? far.filter((other) => other !== worst) : [];
    const changeAbout = (axes: readonly Mirror[]) =>
      bestChange(state, layout, grillage, [worst, ...others], {
        mirrors: axes,
        least,
        isBold: isBold && !isFair,
        addsOnly,
      });
    const isUrgent = !isFair && !hopeless.has(worst.number);
    const change = changeAbout(mirrors) ?? (isUrgent && mirrors.length > 0 ? changeAbout([]) : undefined);
    if (change) applyChange(layout, change);
    if (!change || isFair) given.add(worst.number);
  }
}

/** Those of all islands that hang. */
export function bodiesIn({ pieces, frames }: Assignment, layout: Layout): Map<number, Body> {
  const hanging = [...hangingOn(frames, tiesOf(layout))].filter((number) => !frames.has(number));
  return new Map(hanging.map((number) => [number, bodyOf(defined(pieces[number]))]));
}

/** Small ones are held wherever a bridge is. */
function isLarge({ pieces }: Assignment, number: number): boolean {
  const { polygon, area } = defined(pieces[number]);
  return bridgeCountFor(boxOfRing(polygon.outer), area) > 1;
}

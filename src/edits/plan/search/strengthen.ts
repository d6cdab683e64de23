/**
 * Makes a plan stiff as a whole: islands that hang on islands lift with these. Where one lifts too far, the bridge is made
 * wider, or another added, that holds it best for its cost. Sheet mm.
 */
import { defined } from '../../../base/defined';
import { boxOfRing } from '../../../geometry/base/ring';
import { type Body, bodyOf } from './body';
import { bridgeCountFor } from './count';
import { grillageOf, liftOfPlate } from './grillage';
import { type Assignment, hangingOn, type Layout, tiesOf } from './layout';
import { bestChange, type Change, ROOM } from './stiffer';
import { axesOf } from './symmetrise';
import { WEIGHTS } from './weights';

/** More plates than this are not looked at as a whole. */
const MOST_PLATES = 160;
/** So many changes for each island at most, and for a layer. */
const ROUNDS = { least: 24, each: 12, most: 120 };
/** What lessens a lift by no more than this share of it is not worth its paint. */
const LEAST_GAIN = 0.02;
/** The same of an island that lifts too far whatever is done. */
const MUCH = 0.12;

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
      .filter(({ lift }) => lift > ROOM.share * WEIGHTS.swing.value)
      .sort((a, b) => b.lift - a.lift);
    const worst = lifting.find(({ number }) => !given.has(number));
    if (!worst || round >= rounds) {
      return new Set(lifting.filter(({ lift }) => lift > WEIGHTS.swing.value).map(({ number }) => number));
    }
    const isFair = worst.lift <= WEIGHTS.swing.value;
    const least = hopeless.has(worst.number) ? MUCH : LEAST_GAIN;
    const mirrored = bestChange(state, layout, grillage, worst, mirrors, least);
    const change =
      mirrored || isFair || hopeless.has(worst.number)
        ? mirrored
        : bestChange(state, layout, grillage, worst, [], least);
    if (change) apply(layout, change);
    if (!change || isFair) given.add(worst.number);
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

/** Ways to make one island lift less: a bridge that is made wider, or another one, with its mirror images. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import { distance } from '../../../geometry/base/vector';
import { mirrorAbout } from '../design/axis';
import type { Mirror } from '../design/index';
import { type ScoredCandidate, scoreWithWidth } from '../score';
import { type Grillage, gainOf, type PlateLift } from './grillage';
import { type Assignment, type Layout, tiesOf } from './layout';
import { movedWay } from './moved-way';
import { areClear } from './select';
import { stripOf } from './strips';
import { isImage } from './symmetrise';
import { WEIGHTS } from './weights';

/** A bridge is made so much wider at once. */
const WIDER = 1.3;
/** A further bridge counts so many times: a wider one is calmer than two. */
const ANOTHER = 1.5;
/**
 * Between bridges of the same two pieces, at least, in mm and as a share of the smaller one's size: nearer ones look like a
 * comb, and one that is wider does as well.
 */
const COMB = { least: 5, share: 1 / 6 };
/**
 * An island is to lift by no more than this share of what it may, for another model says a little more; and what that
 * alone asks for may cost no more than this share of what its bridges do.
 */
export const ROOM = { share: 0.75, cost: 0.5 };
/** Of the changes that are worth most by themselves so many are compared with their images. */
const MOST_COMPARED = 24;

/** Bridges that go, and those that come for them. */
export interface Change {
  readonly out: readonly ScoredCandidate[];
  readonly in: readonly ScoredCandidate[];
}

/**
 * The one that takes most off the lift for its cost.
 * @param mirrors axes about which the plan is to stay its own image
 * @param least the share of the lift that a change must take from it
 */
export function bestChange(
  state: Assignment,
  layout: Layout,
  grillage: Grillage,
  worst: PlateLift,
  mirrors: readonly Mirror[],
  least: number,
): Change | undefined {
  const ties = tiesOf(layout);
  const excess = worst.lift - ROOM.share * WEIGHTS.swing.value;
  const own = ties.filter(({ island, target }) => island === worst.number || target === worst.number);
  const most = worst.lift > WEIGHTS.swing.value ? Infinity : ROOM.cost * costOf(own);
  const steps = [...widenings(state, ties), ...additions(state, ties, grillage)]
    .map((step) => {
      checkpoint(300);
      return { step, ...worthOf([step], gainOf(grillage, worst, step.way, step.old), excess) };
    })
    .filter(({ gain }) => gain > least * worst.lift)
    .sort((a, b) => b.worth - a.worth);
  let best: { readonly change: Change; readonly worth: number } | undefined;
  for (const { step, gain } of steps.slice(0, MOST_COMPARED)) {
    const all = withImages(state, ties, step, mirrors);
    // With its images it may do more than is needed.
    const { worth, cost } = worthOf(all, all.length * gain, excess);
    if (all.length === 0 || cost > most || (best && worth <= best.worth)) continue;
    const change = { out: all.flatMap(({ old }) => old ?? []), in: all.map(({ way }) => way) };
    const kept = ties.filter((tie) => !change.out.includes(tie));
    if (areClear(change.in, kept.map(stripOf))) best = { change, worth };
  }
  return best?.change;
}

function costOf(ways: readonly ScoredCandidate[]): number {
  return ways.reduce((sum, { cost }) => sum + cost, 0);
}

interface Worth {
  /** mm that an island lifts less. */
  readonly gain: number;
  /** mm */
  readonly cost: number;
  readonly worth: number;
}

/** @param gain mm that an island lifts less by all of the steps */
function worthOf(steps: readonly Step[], gain: number, excess: number): Worth {
  const cost = steps.reduce((sum, { way, old }) => sum + (old ? way.cost - old.cost : ANOTHER * way.cost), 0);
  return { gain, cost, worth: Math.min(gain, excess) / Math.max(cost, 1e-3) };
}

/** What is done with one bridge. */
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

/** With the images of what changes; none where one of them has no place. */
function withImages(
  state: Assignment,
  ties: readonly ScoredCandidate[],
  first: Step,
  mirrors: readonly Mirror[],
): readonly Step[] {
  const steps: Step[] = [first];
  for (const step of steps) {
    for (const mirror of mirrors) {
      const image = imageOf(state, ties, step, mirror);
      if (image === 'none') return [];
      if (image && !steps.some((other) => isImage(other.way, step.way, mirror))) steps.push(image);
    }
  }
  return steps;
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
  // Where it came out otherwise, the image of the image would be a third one, and so on.
  return image && isImage(image, way, mirror) ? { way: image, old: undefined } : 'none';
}

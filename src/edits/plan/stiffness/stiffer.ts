/** Ways to make one island lift less: a bridge that is made wider, or another one, with its mirror images. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import { mirrorAbout } from '../design/axis';
import type { Mirror } from '../design/index';
import { type ScoredCandidate, scoreWithWidth } from '../score';
import { type Assignment, type Change, hangingOn, type Layout, tiesOf } from '../search/layout';
import { movedWay } from '../search/moved-way';
import { areClear } from '../search/select';
import { stripOf } from '../search/strips';
import { isImage } from '../search/symmetrise';
import { WEIGHTS } from '../search/weights';
import { type Grillage, gainsOf, grillageOf, liftOfPlate, type PlateLift } from './grillage';
import { type Step, stepsFor } from './steps';

/** A further bridge counts so many times: a wider one is calmer than two. */
const ANOTHER = 1.5;
/** One that goes elsewhere, of its cost there at least. */
const MOVED = 0.5;
/**
 * An island is to lift by no more than this share of what it may, for another model says a little more; and what that
 * alone asks for may cost no more than this share of what its bridges do.
 */
export const ROOM = { share: 0.75, cost: 0.5 };
/** Of the changes that are worth most by themselves so many are compared with their images. */
const MOST_COMPARED = 24;

/** More plates are not worked out anew for each change: none of their bridges is moved. */
const MOST_PLATES = 40;

export interface Wanted {
  /** Axes about which the plan is to stay its own image. */
  readonly mirrors: readonly Mirror[];
  /** The share of the lift that a change must take from it. */
  readonly least: number;
  /** Whether much may be done at once. */
  readonly isBold: boolean;
  /** Whether the bridges that there are stay as they are. */
  readonly addsOnly: boolean;
}

/**
 * The one that takes most off the lift for its cost.
 * @param lifting the island that it is for, and those that count besides
 */
export function bestChange(
  state: Assignment,
  layout: Layout,
  grillage: Grillage,
  lifting: readonly PlateLift[],
  { mirrors, least, isBold, addsOnly }: Wanted,
): Change | undefined {
  const ties = tiesOf(layout);
  const worst = defined(lifting[0]);
  const own = ties.filter(({ island, target }) => island === worst.number || target === worst.number);
  const most = worst.lift > WEIGHTS.swing.value ? Infinity : ROOM.cost * costOf(own);
  const steps = stepsFor(state, ties, own, grillage, isBold)
    .filter(({ old }) => !addsOnly || !old)
    .map((step) => {
      checkpoint((step.old ? 600 : 300) + 10 * lifting.length);
      const gains = gainsOf(grillage, lifting, step.way, step.old);
      return { step, gains, ...worthOf([step], gains, lifting) };
    })
    .filter(({ gains: [first = 0], gain }) => first > least * worst.lift || gain > least * sumOf(lifting))
    .sort((a, b) => b.worth - a.worth);
  const changes = steps.slice(0, MOST_COMPARED).flatMap(({ step, gains }) => {
    const all = withImages(state, ties, step, mirrors);
    // With its images it may do more than is needed.
    const each = gains.map((gain) => all.length * gain);
    const { worth, cost } = worthOf(all, each, lifting);
    return all.length === 0 || cost > most ? [] : [{ all, worth }];
  });
  for (const { all } of changes.sort((a, b) => b.worth - a.worth)) {
    const change = { out: all.flatMap(({ old }) => old ?? []), in: all.map(({ way }) => way) };
    const kept = ties.filter((tie) => !change.out.includes(tie));
    if (!areClear(change.in, kept.map(stripOf))) continue;
    if (isBetter(state, grillage, lifting, [...kept, ...change.in], all.some(isMove))) return change;
  }
  return undefined;
}

function sumOf(lifting: readonly PlateLift[]): number {
  return lifting.reduce((sum, { lift }) => sum + lift, 0);
}

/** Whether all that hung still does, and the islands lift less, though other corners of theirs, or others, may lift more. */
function isBetter(
  { frames }: Assignment,
  before: Grillage,
  lifting: readonly PlateLift[],
  ties: readonly ScoredCandidate[],
  isMoved: boolean,
): boolean {
  const plates = [...before.place.keys()];
  if (plates.length > MOST_PLATES) return !isMoved;
  const hanging = hangingOn(frames, ties);
  if (!plates.every((number) => hanging.has(number))) return false;
  const after = grillageOf(before.bodies, ties, before.statics);
  const most = (grillage: Grillage) => Math.max(...plates.map((number) => liftOfPlate(grillage, number).lift));
  // What is for comfort alone harms no other.
  const isFair = defined(lifting[0]).lift <= WEIGHTS.swing.value;
  if (isFair && most(after) > Math.max(most(before), ROOM.share * WEIGHTS.swing.value)) return false;
  return lifting.reduce((sum, { number }) => sum + liftOfPlate(after, number).lift, 0) < sumOf(lifting);
}

function isMove({ way, old }: Step): boolean {
  return old !== undefined && !isSamePlace(way, old);
}

function costOf(ways: readonly ScoredCandidate[]): number {
  return ways.reduce((sum, { cost }) => sum + cost, 0);
}

/** What goes elsewhere gives up a good place, however cheap the other one is. */
function costOfStep({ way, old }: Step): number {
  if (!old) return ANOTHER * way.cost;
  return isMove({ way, old }) ? Math.max(way.cost - old.cost, MOVED * way.cost) : way.cost - old.cost;
}

interface Worth {
  /** mm that the islands lift less, together; not more than each should. */
  readonly gain: number;
  /** mm */
  readonly cost: number;
  readonly worth: number;
}

/** @param gains mm that each of the islands lifts less by all of the steps */
function worthOf(steps: readonly Step[], gains: readonly number[], lifting: readonly PlateLift[]): Worth {
  const cost = steps.reduce((sum, step) => sum + costOfStep(step), 0);
  const gain = lifting.reduce((sum, { lift }, i) => {
    return sum + Math.min(defined(gains[i]), lift - ROOM.share * WEIGHTS.swing.value);
  }, 0);
  return { gain, cost, worth: gain / Math.max(cost, 1e-3) };
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
  const other = old && ties.find((tie) => isImage(tie, old, mirror));
  if (old && !other) return 'none';
  if (old && other && isSamePlace(way, old)) {
    const image = scoreWithWidth(other, other.island, way.width, state.options.width, state.around);
    return image ? { way: image, old: other } : 'none';
  }
  const moved = movedWay(state, way, number, (place) => mirrorAbout(mirror, place));
  const image = moved && asWideAs(state, moved, way);
  // Where it came out otherwise, the image of the image would be a third one, and so on.
  return image && isImage(image, way, mirror) ? { way: image, old: other } : 'none';
}

function asWideAs(
  { options, around }: Assignment,
  moved: ScoredCandidate,
  { width }: ScoredCandidate,
): ScoredCandidate | undefined {
  return moved.width === width ? moved : scoreWithWidth(moved, moved.island, width, options.width, around);
}

/** Whether a bridge is another one of another width. */
function isSamePlace(way: ScoredCandidate, old: ScoredCandidate): boolean {
  return way.from === old.from && way.to === old.to;
}

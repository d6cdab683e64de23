/** In which order contours are cut, and where each is entered, so that the tool travels little between them. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';

import { type Distance, Entries } from './entries';
import { nearestOthers } from './neighbours';
import { TourSearch } from './search';
import { Tour } from './tour';

export interface TravelTask {
  /** For each contour the points at which it can be entered, and is left again; those of the last stand for home. */
  readonly contours: readonly (readonly Point[])[];
  /** By contour, the one that it lies in, which is cut later; undefined where nothing lies in anything. */
  readonly parents?: readonly (number | undefined)[];
  /** The contour that is cut at the end, before the tool goes home. */
  readonly last?: number;
  /** The length of a way from its two legs; as the crow flies where nothing else is said. */
  readonly distance?: Distance;
  /** How many kicks are tried; by default as many as a fraction of a second allows. */
  readonly kicks?: number;
  readonly seed?: number;
}

export interface TravelPlan {
  /** All contours but home, in the order of cutting. */
  readonly order: readonly number[];
  /** By contour, the number of the point at which it is entered. */
  readonly entries: readonly number[];
  /** Of the closed tour from home to home. */
  readonly length: number;
}

/** Moves are sought among so many neighbours. */
const NEIGHBOURS = 8;

/** So often the entries are chosen anew for the whole order, and the neighbours sought from where contours are entered. */
const ROUNDS = 4;

/** Kicks for each contour, and in all: what a fraction of a second allows. */
const KICKS_EACH = 60;
const MOST_KICKS = 3200;

/** Of more contours than this, those nearest to each other are followed one by one without looking at all. */
const MIN_KICKED = 5;

const asTheCrowFlies: Distance = (dx, dy) => Math.sqrt(dx * dx + dy * dy);

/** The same for the same task, and never longer than the order in which the contours are given. */
export function planTravel(task: TravelTask): TravelPlan {
  const { contours, distance = asTheCrowFlies } = task;
  const home = contours.length - 1;
  const parents = parentsOf(task);
  const entries = new Entries(contours, distance);
  const given = inGivenOrder(contours.length, parents, task.last);
  const starts = [nearestNext(entries, given, parents, task.last), given];
  const plans = starts.map((order) => settled(entries, order));
  const begun = defined(plans.reduce((best, plan) => (plan.length < best.length ? plan : best)));
  const best =
    contours.length > MIN_KICKED ? improved(task, entries, begun, parents) : allOrders(task, entries, begun, parents);
  entries.restore(best.entries);
  const order = fromHome(best.order, home, task.last);
  return { order, entries: contours.map((_, contour) => entries.entryOf(contour)), length: best.length };
}

interface Found {
  /** Home included, wherever the tour begins. */
  readonly order: readonly number[];
  readonly entries: Int32Array;
  readonly length: number;
}

/** Enters the contours of an order as well as can be. */
function settled(entries: Entries, order: readonly number[]): Found {
  const length = entries.chooseFor(order);
  return { order, entries: entries.snapshot(), length };
}

function improved(task: TravelTask, entries: Entries, begun: Found, parents: Int32Array | undefined): Found {
  const home = task.contours.length - 1;
  const linked = task.last === undefined ? undefined : ([home, task.last] as const);
  const random = randomNumbers(task.seed ?? 1);
  const kicks = task.kicks ?? Math.min(MOST_KICKS, KICKS_EACH * task.contours.length);
  let best = begun;
  for (let round = 0; round < ROUNDS; round += 1) {
    entries.restore(best.entries);
    const tour = new Tour(best.order, parents !== undefined);
    const [xs, ys] = [entries.x.bind(entries), entries.y.bind(entries)].map((of) => task.contours.map((_, i) => of(i)));
    const search = new TourSearch(
      tour,
      entries,
      { parents, linked },
      nearestOthers(defined(xs), defined(ys), NEIGHBOURS),
    );
    search.improveAll();
    for (let kick = 0; kick < kicks / ROUNDS; kick += 1) search.kick(random);
    const found = settled(entries, tour.orderFrom(home));
    if (found.length <= best.length) best = found;
  }
  return best;
}

/** Few contours: each order is tried. */
function allOrders(task: TravelTask, entries: Entries, begun: Found, parents: Int32Array | undefined): Found {
  const home = task.contours.length - 1;
  let best = begun;
  const extend = (order: readonly number[], rest: readonly number[]): void => {
    checkpoint(10);
    if (rest.length === 0) {
      const found = settled(entries, order);
      if (found.length < best.length) best = found;
    }
    for (const next of rest) {
      if (next === task.last && rest.length > 1) continue;
      if (rest.some((other) => parents?.[other] === next)) continue;
      extend(
        [...order, next],
        rest.filter((other) => other !== next),
      );
    }
  };
  extend(
    [home],
    task.contours.slice(0, -1).map((_, i) => i),
  );
  return best;
}

function parentsOf({ contours, parents }: TravelTask): Int32Array | undefined {
  if (!parents?.some((parent) => parent !== undefined)) return undefined;
  return Int32Array.from(contours, (_, i) => parents[i] ?? -1);
}

/** As the contours are given, but what lies inside goes before what it lies in. */
function inGivenOrder(count: number, parents: Int32Array | undefined, last: number | undefined): number[] {
  const home = count - 1;
  const others = Array.from({ length: home }, (_, i) => i).filter((i) => i !== last);
  const order = [home];
  const placed = new Set<number>();
  const inside = new Map<number, number[]>();
  for (const i of others) inside.set(parents?.[i] ?? -1, [...(inside.get(parents?.[i] ?? -1) ?? []), i]);
  const place = (contour: number): void => {
    if (placed.has(contour)) return;
    placed.add(contour);
    for (const inner of inside.get(contour) ?? []) place(inner);
    order.push(contour);
  };
  for (const contour of others) place(contour);
  return last === undefined ? order : [...order, last];
}

/** From home always to the nearest contour that may be cut. */
function nearestNext(
  entries: Entries,
  given: readonly number[],
  parents: Int32Array | undefined,
  last: number | undefined,
): number[] {
  const order = [defined(given[0])];
  const waiting = given.slice(1).filter((contour) => contour !== last);
  const inside = new Map<number, number>();
  for (const contour of waiting) {
    const parent = parents?.[contour] ?? -1;
    inside.set(parent, (inside.get(parent) ?? 0) + 1);
  }
  while (waiting.length > 0) {
    checkpoint(waiting.length);
    const from = defined(order.at(-1));
    let [nearest, least] = [0, Infinity];
    for (let i = 0; i < waiting.length; i += 1) {
      const contour = waiting[i] as number;
      if ((inside.get(contour) ?? 0) > 0) continue;
      const way = entries.between(from, contour);
      if (way < least) [nearest, least] = [i, way];
    }
    const next = defined(waiting[nearest]);
    waiting[nearest] = defined(waiting.at(-1));
    waiting.pop();
    order.push(next);
    const parent = parents?.[next] ?? -1;
    inside.set(parent, (inside.get(parent) ?? 1) - 1);
  }
  return last === undefined ? order : [...order, last];
}

/** Begins at home and leaves it out; the last contour comes last, whichever way the tour was made. */
function fromHome(order: readonly number[], home: number, last: number | undefined): number[] {
  const at = order.indexOf(home);
  const course = [...order.slice(at + 1), ...order.slice(0, at)];
  return last !== undefined && course[0] === last ? course.reverse() : course;
}

/** Numbers from 0 up to, not including, 1, the same for the same seed: T. Ettinger's mulberry32 (public domain). */
function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

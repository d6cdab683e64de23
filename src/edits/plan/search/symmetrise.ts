/** Makes a plan its own mirror image, where the layer or a part of it is. Sheet mm. */
import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import { cross, distance, interpolate, perpendicular, scale, subtract } from '../../../geometry/base/vector';
import { regionContains } from '../../../geometry/boolean/index';
import { mirrorAbout } from '../design/axis';
import type { Mirror } from '../design/index';
import type { ScoredCandidate, Surroundings } from '../score';
import { type Assignment, arrivalsAt, hangingOn, type Layout, needOf, tiesOf } from './layout';
import { movedWay } from './moved-way';
import { areClear } from './select';
import { costOfSet } from './set-cost';
import { stripOf } from './strips';
import { WEIGHTS } from './weights';

/** mm: bridges this near to each other are the same. */
const SAME = 0.6;
/** So many axes are looked at: those of the whole, then those that most islands lie under. */
const MAX_AXES = 24;
/** More islands than this are not mirrored as one: nobody takes them in together. */
const MAX_MEMBERS = 80;
/** So many ways across are tried besides, of all islands together: each is compared with the whole plan. */
const MOST_ADDED = 300;
/** Widths: a bridge along an axis and this near to it is meant to stand on it; the sine within which it is along it. */
const NEAR_AXIS = 2;
const SAME_DIRECTION = 0.2;

/**
 * For each axis every bridge gets its image, and pairs are dropped again as long as that is cheaper; where it comes to
 * cost more than symmetry is worth, all stays as it was.
 * @param layout is changed
 * @param settled gets the islands whose bridges are mirrored now
 */
export function symmetrise(state: Assignment, layout: Layout, settled: Set<number>): void {
  if (typeof state.options.count === 'number') return;
  const kept: { readonly mirror: Mirror; readonly members: readonly number[] }[] = [];
  for (const mirror of (state.design?.mirrors ?? []).slice(0, MAX_AXES)) {
    const members = [...mirror.images.keys()].filter((number) => layout.has(number));
    // One island alone has chosen its axis already.
    if (members.length < 2 || members.length > MAX_MEMBERS) continue;
    // What later paint covers the eye does not compare.
    if (waysOf(layout, members).some((way) => isHidden(way, state.around))) continue;
    const isMet = isMirrored(waysOf(layout, members), mirror);
    const made = isMet ? layout : mirroredLayout(state, layout, members, mirror);
    // What was mirrored before stays so.
    if (!made || kept.some((other) => !isMirrored(waysOf(made, other.members), other.mirror))) continue;
    kept.push({ mirror, members });
    for (const number of members) {
      layout.set(number, made.get(number) ?? []);
      settled.add(number);
    }
  }
}

/** The axes that a plan is its own image about. */
export function axesOf({ design }: Assignment, layout: Layout): Mirror[] {
  return (design?.mirrors ?? []).slice(0, MAX_AXES).filter((mirror) => {
    const ways = waysOf(layout, [...mirror.images.keys()]);
    return ways.length > 0 && ways.length <= 2 * MAX_MEMBERS && isMirrored(ways, mirror);
  });
}

/** Whether later paint covers the middle of a bridge. */
export function isHidden({ from, to }: ScoredCandidate, { hidden }: Surroundings): boolean {
  return hidden.length > 0 && regionContains(hidden, interpolate(from, to, 0.5));
}

function waysOf(layout: Layout, members: readonly number[]): ScoredCandidate[] {
  return members.flatMap((number) => layout.get(number) ?? []);
}

function isMirrored(ways: readonly ScoredCandidate[], mirror: Mirror): boolean {
  checkpoint(ways.length ** 2 / 8);
  return ways.every((way) => ways.some((other) => isImage(other, way, mirror)));
}

/** Either way about: one between two islands that are each other's image may leave either. */
export function isImage(other: ScoredCandidate, way: ScoredCandidate, mirror: Mirror): boolean {
  const [from, to] = [mirrorAbout(mirror, way.from), mirrorAbout(mirror, way.to)];
  return isSame(other.from, other.to, from, to) || isSame(other.to, other.from, from, to);
}

function isSame(a: Point, b: Point, from: Point, to: Point): boolean {
  return distance(a, from) < SAME && distance(b, to) < SAME;
}

/** mm of all islands under the axis together. */
function costOf(state: Assignment, layout: Layout, members: readonly number[]): number {
  return members.reduce((sum, number) => {
    const need = needOf(state, number, arrivalsAt(layout, number));
    return sum + costOfSet(layout.get(number) ?? [], need);
  }, 0);
}

function mirroredLayout(
  state: Assignment,
  layout: Layout,
  members: readonly number[],
  mirror: Mirror,
): Layout | undefined {
  const orbits = orbitsOf(state, waysOf(layout, members), mirror);
  const others = tiesOf(new Map([...layout].filter(([number]) => !members.includes(number)))).map(stripOf);
  const fits = (orbit: Orbit, chosen: readonly Orbit[]) => areClear(orbit, [...others, ...chosen.flat().map(stripOf)]);
  const rated = (chosen: readonly Orbit[]) => ratedAs(state, layout, members, chosen);
  const first: Orbit[] = [];
  for (const orbit of orbits) if (fits(orbit, first)) first.push(orbit);
  let best = rated(first);
  // Others in the place of those whose images have no place.
  const plain = costOf(state, layout, members);
  const more = best.cost > plain ? orbitsOf(state, cheapestOf(state, members), mirror) : [];
  for (const orbit of more) {
    checkpoint(100 * members.length);
    if (!fits(orbit, best.orbits)) continue;
    const tried = rated([...best.orbits, orbit]);
    if (tried.hanging > best.hanging || (tried.hanging === best.hanging && tried.cost < best.cost)) best = tried;
  }
  if (best.hanging < hangingOn(state.frames, tiesOf(layout)).size) return undefined;
  for (let at = 0; at < best.orbits.length; at += 1) {
    checkpoint(100 * members.length);
    const fewer = rated(best.orbits.filter((_, i) => i !== at));
    if (fewer.hanging < best.hanging || fewer.cost >= best.cost) continue;
    [best, at] = [fewer, -1];
  }
  return best.cost <= WEIGHTS.symmetric.value * plain ? best.made : undefined;
}

/** A bridge and its image, or one that is its own. */
type Orbit = readonly ScoredCandidate[];

interface Rated {
  readonly orbits: readonly Orbit[];
  readonly made: Layout;
  /** How many pieces hang. */
  readonly hanging: number;
  /** mm */
  readonly cost: number;
}

/** A plan whose members have these bridges and no others. */
function ratedAs(state: Assignment, layout: Layout, members: readonly number[], orbits: readonly Orbit[]): Rated {
  const made: Layout = new Map(layout);
  const all = orbits.flat();
  for (const number of members) {
    made.set(
      number,
      all.filter(({ island }) => island === number),
    );
  }
  return { orbits, made, hanging: hangingOn(state.frames, tiesOf(made)).size, cost: costOf(state, made, members) };
}

function cheapestOf({ ways }: Assignment, members: readonly number[]): ScoredCandidate[] {
  const each = Math.floor(MOST_ADDED / members.length);
  return members.flatMap((number) => (ways[number] ?? []).slice(0, each));
}

/** Each bridge with its image, the cheapest first; one along the axis and near to it stands on it, alone. */
function orbitsOf(state: Assignment, ways: readonly ScoredCandidate[], mirror: Mirror): Orbit[] {
  const orbits: Orbit[] = [];
  for (const each of ways) {
    const way = onAxis(state, each, mirror) ?? each;
    if (orbits.some((orbit) => orbit.some((other) => isSame(other.from, other.to, way.from, way.to)))) continue;
    const number = mirror.images.get(way.island);
    const isOwn = isImage(way, way, mirror);
    const image =
      isOwn || number === undefined ? undefined : movedWay(state, way, number, (place) => mirrorAbout(mirror, place));
    if (isOwn || image) orbits.push(image ? [way, image] : [way]);
  }
  const cost = (orbit: Orbit) => orbit.reduce((sum, way) => sum + way.cost, 0) / orbit.length;
  return orbits.sort((a, b) => cost(a) - cost(b));
}

/** Shifted onto the axis. */
function onAxis(state: Assignment, way: ScoredCandidate, { point, along }: Mirror): ScoredCandidate | undefined {
  const off = cross(along, subtract(interpolate(way.from, way.to, 0.5), point));
  const isAlong = Math.abs(cross(along, subtract(way.to, way.from))) < SAME_DIRECTION * way.length;
  if (!isAlong || Math.abs(off) > NEAR_AXIS * way.width) return undefined;
  const across = perpendicular(along);
  return movedWay(state, way, way.island, (place) => subtract(place, scale(across, off)), NEAR_AXIS * way.width);
}

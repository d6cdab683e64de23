/** What a set of bridges costs that holds one body: the bridges themselves, and what it lacks in hold. */
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { DEFLECTION_LIMIT } from '../../../sheet/deflection';
import type { ScoredCandidate } from '../score';
import { type Body, distanceToHull, hullOf } from './body';
import { bentBy, liftOn, reachBeyond, type Statics, type Support } from './hold';
import { WEIGHTS } from './weights';

/** What holds a body, and what it needs. */
export interface Need {
  readonly body: Body;
  /** So many bridges at least. */
  readonly wanted: number;
  /** Bridges that others have to it. */
  readonly given: readonly Support[];
  /** mm: what it may cost that it is held well. */
  readonly dearest: number;
  /** Undefined where the artist takes what comes. */
  readonly statics: Statics | undefined;
}

/** Two bridges closer than this share of an even spread let the island hinge. */
const LEAST_SPREAD = 1 / 3;
/** Of what good hold may cost: that of a plan which just fails in one thing, and of one that fails by a whole measure more. */
const FAILED = 0.05;
const BY_AS_MUCH = 4;
/** Of its breadth: so far may a compact body reach beyond its bridges. */
const COMPACT = 0.65;

/**
 * mm of a bridge of the least width.
 * @param limit from here on the cost need not be exact
 */
export function costOfSet(set: readonly ScoredCandidate[], need: Need, limit = Infinity): number {
  const { given, wanted, dearest, statics } = need;
  const supports: readonly Support[] = given.length > 0 ? [...given, ...set] : set;
  const plain = set.reduce((sum, { cost }) => sum + cost, 0);
  const missing = Math.max(0, wanted - supports.length) * dearest;
  if (!statics) return plain + missing;
  const cost = plain * unevenness(supports, need) + missing;
  return cost >= limit ? cost : cost + holdLack(supports, need, statics);
}

/** mm: what is wrong with how a body is held, apart from what its bridges cost. */
export function holdLack(supports: readonly Support[], { body, wanted, dearest }: Need, statics: Statics): number {
  if (supports.length === 0) return 0;
  const held = hullOf(supports.map(({ from }) => from));
  const reach = reachBeyond(body, held);
  const lift = liftOn(body, supports, reach, statics) / DEFLECTION_LIMIT - 1;
  if (wanted === 1) return dearest * failure(lift);
  const most = Math.max(WEIGHTS.reach.value * body.size, COMPACT * body.breadth);
  const off = distanceToHull(held, body.middle) - WEIGHTS.offCentre.value * body.size;
  return dearest * (failure(lift) + failure((reach - most) / body.size) + failure(off / body.size));
}

function failure(excess: number): number {
  return excess <= 0 ? 0 : FAILED + BY_AS_MUCH * Math.min(1, excess);
}

/** 1 for an even spread of directions from the middle; grows as any two come closer. */
function unevenness(supports: readonly Support[], { body, wanted }: Need): number {
  const count = supports.length;
  if (count < 2) return 1;
  const gap = leastAngle(
    body.middle,
    supports.map(({ from }) => from),
  );
  const share = Math.min(1, (gap * Math.max(count, wanted)) / (2 * Math.PI));
  const bent = count === 2 ? 1 + WEIGHTS.bent.value * bentBy(defined(supports[0]), defined(supports[1])) : 1;
  const hinge = share < LEAST_SPREAD ? WEIGHTS.hinge.value : 1;
  return (1 + WEIGHTS.uneven.value * (1 - share) ** 2) * hinge * bent;
}

function leastAngle(middle: Point, places: readonly Point[]): number {
  const turns = places.map(({ x, y }) => Math.atan2(y - middle.y, x - middle.x)).sort((a, b) => a - b);
  let least = defined(turns[0]) + 2 * Math.PI - defined(turns.at(-1));
  for (let i = 1; i < turns.length; i += 1) least = Math.min(least, defined(turns[i]) - defined(turns[i - 1]));
  return least;
}

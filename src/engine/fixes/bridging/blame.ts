/** Which bridges of a set keep the others from being made: those at the places of what speaks against it. */
import type { Finding } from '../../../checks/finding';
import { cutStrips } from '../../../edits/bridge/cut';
import type { Bridge } from '../../../edits/plan/index';
import { areStripsApart, type Strip } from '../../../edits/strip/strip';
import type { Point } from '../../../geometry/base/curve-types';
import { distanceToEdge } from '../../../geometry/base/ring';
import type { Sheet } from '../../../sheet/types';

/** mm from the side of a bridge: what is found within comes of it. */
const NEAR = 1;

/**
 * Those of the islands that stay, and those near new faults; where a fault lies near none, the nearest.
 * @param strays where something changes that should not, in sheet mm
 */
export function blamedFor(
  bridges: readonly Bridge[],
  stays: readonly Finding[],
  against: readonly Finding[],
  strays: readonly Point[],
): Set<Bridge> {
  const loose = stays.flatMap(({ subject }) => (subject?.kind === 'island' ? [subject.piece] : []));
  const ofThem = bridges.filter(({ island, target }) => loose.includes(island) || loose.includes(target));
  const faults = [...against.map(placesOf), ...strays.map((place) => [place])];
  return new Set([...ofThem, ...faults.flatMap((places) => blamedNear(bridges, places))]);
}

function placesOf({ at, related = [] }: Finding): Point[] {
  return [at, ...related.map((each) => each.at)].filter((place) => place !== undefined);
}

function blamedNear(bridges: readonly Bridge[], places: readonly Point[]): Bridge[] {
  if (places.length === 0) return [];
  const away = bridges.map((bridge) => Math.min(...places.map((place) => distanceTo(bridge, place))));
  const nearest = Math.max(NEAR, Math.min(...away));
  return bridges.filter((_, i) => (away[i] ?? Infinity) <= nearest);
}

/** mm from the sides of a bridge to a place. */
function distanceTo({ from, to, width }: Bridge, place: Point): number {
  return distanceToEdge(place.x, place.y, from.x, from.y, to.x, to.y) - width / 2;
}

/**
 * Where the strips could not be cut: those that cannot be even alone, else the later of any two in each other's way.
 * @param suspects those that the refusal is about; all where it does not say
 */
export function blamedForCut(
  sheet: Sheet,
  bridges: readonly Bridge[],
  strips: readonly Strip[],
  suspects: readonly Strip[] = strips,
): Set<Bridge> {
  const meets = (strip: Strip, i: number): boolean => strips.slice(0, i).some((other) => !areStripsApart(strip, other));
  const crossing = bridges.filter((_, i) => meets(strips[i] as Strip, i));
  if (crossing.length > 0) return new Set(crossing);
  const asked = new Set(suspects);
  return new Set(
    bridges.filter((_, i) => {
      const strip = strips[i] as Strip;
      return asked.has(strip) && 'refusal' in cutStrips(sheet, [strip]);
    }),
  );
}

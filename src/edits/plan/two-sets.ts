/** Two sets of bridges for the same islands, one for each of two sheets that are sprayed in one colour. */
import type { Piece, Sheet } from '../../sheet/types';
import { type BridgePlan, planBridges } from './index';
import type { Bridge, PlanOptions } from './types';

export interface TwoBridgeSets {
  readonly first: readonly Bridge[];
  readonly second: readonly Bridge[];
  /** Islands that one of the two sets has no place for. */
  readonly unbridged: readonly Piece[];
}

/** mm: spray has a soft edge under the sheet of about half of this; where there is room, bridges keep as far apart besides. */
const SOFT_EDGES = 1;

/** An island may hinge on a single bridge: better than no second sheet. */
const FEWEST: Partial<PlanOptions> = { count: 1 };

/**
 * Every island gets bridges in both sets, and no bridge of one comes nearer to one of the other than `distance`: then the
 * ground under a bridge is painted through the other sheet, even when that lands off its place by as much. No theorem
 * says whether two such sets exist where bridges may stand anywhere, so plans are tried in turn: the usual bridges and the
 * best beside them, first with room for soft edges; the other way about, the second set first; and the same with one
 * bridge for each island.
 * @param distance mm
 */
export function* planTwoSets(
  sheet: Sheet,
  islands: readonly Piece[],
  options: PlanOptions,
  distance: number,
): Generator<TwoBridgeSets> {
  const beside = ({ bridges }: BridgePlan, more: Partial<PlanOptions>, apart = distance): BridgePlan =>
    planBridges(sheet, islands, { ...options, ...more, thorough: true, apartFrom: { bridges, distance: apart } });
  for (const few of [{}, FEWEST]) {
    const usual = planBridges(sheet, islands, { ...options, ...few });
    // Farther apart they come to stand elsewhere: that helps where those before cannot be had for another reason.
    for (const times of [1, 2, 3]) yield setsOf(usual, beside(usual, few, distance + times * SOFT_EDGES));
    const other = beside(usual, few);
    yield setsOf(usual, other);
    // What the usual bridges left no room for comes first now, and they give way.
    const swapped = beside(other, few);
    yield setsOf(swapped, beside(swapped, few));
  }
}

function setsOf(first: BridgePlan, second: BridgePlan): TwoBridgeSets {
  const unbridged = [...new Set([...first.unbridged, ...second.unbridged])];
  return { first: first.bridges, second: second.bridges, unbridged };
}

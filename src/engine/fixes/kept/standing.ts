/** Bridges of a plan, put where they stand without harm: near their places where a build has something in the way. */
import type { Bridge } from '../../../edits/plan/types';
import { isRefusal, whyNot } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { examineCut, type ProvenCut } from '../bridging/cut';
import { BRIDGING_EFFECTS } from '../bridging/together';
import { type IslandNow, type KeptBridge, placesFor } from './place';

/** A bridge of a plan, and the island that it is for. */
export interface Wanted {
  readonly kept: KeptBridge;
  readonly now: IslandNow | undefined;
}

export interface Standing {
  readonly proven: ProvenCut | undefined;
  /** Those that stand beside their places, as something at those kept the others from holding. */
  readonly moved: readonly KeptBridge[];
  /** Why not, for those that stand nowhere. */
  readonly left: ReadonlyMap<KeptBridge, string>;
}

/** A bridge at the place that is tried now, and those that come after. */
interface Trial {
  readonly kept: KeptBridge;
  readonly bridge: Bridge;
  readonly isMoved: boolean;
  readonly further: Iterator<Bridge, undefined>;
}

/** So many places of a bridge are tried: the layer is proven anew for each. */
const MOST_PLACES = 6;

/** Moves what keeps the others from it, or leaves it out, until the rest holds. */
export function asManyAsStand(report: Report, sheet: Sheet, wanted: readonly Wanted[]): Standing {
  const left = new Map<KeptBridge, string>();
  let trials = firstPlaces(report, sheet, wanted, left);
  for (let round = 1; trials.length > 0; round += 1) {
    const bridges = trials.map(({ bridge }) => bridge);
    const islands = new Set(bridges.flatMap(({ island, target }) => [island, target]));
    const held = [...islands].filter(({ island }) => island);
    const proof = examineCut(report, sheet, bridges, held, BRIDGING_EFFECTS);
    if (!isRefusal(proof)) {
      return { proven: proof, moved: trials.flatMap(({ kept, isMoved }) => (isMoved ? [kept] : [])), left };
    }
    const blamed = proof.blamed.size > 0 ? proof.blamed : new Set(bridges);
    trials = trials.flatMap((trial) => {
      if (!blamed.has(trial.bridge)) return [trial];
      const bridge = round < MOST_PLACES && proof.blamed.size > 0 ? trial.further.next().value : undefined;
      if (bridge) return [{ ...trial, bridge, isMoved: true }];
      left.set(trial.kept, whyNot(proof));
      return [];
    });
  }
  return { proven: undefined, moved: [], left };
}

function firstPlaces(
  report: Report,
  sheet: Sheet,
  wanted: readonly Wanted[],
  left: Map<KeptBridge, string>,
): readonly Trial[] {
  return wanted.flatMap(({ kept, now }) => {
    if (!now) return [];
    const further = placesFor(report, sheet, kept, now);
    const bridge = further.next().value;
    if (bridge) return [{ kept, bridge, isMoved: false, further }];
    left.set(kept, 'No bridge fits there.');
    return [];
  });
}

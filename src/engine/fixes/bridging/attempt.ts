/**
 * Bridges for as many of some islands as hold together: planned and proven; what is to blame is made wider, planned anew
 * beside, or left out.
 */
import type { Effect } from '../../../checks/meta';
import type { Bridge } from '../../../edits/plan/index';
import { distance } from '../../../geometry/base/vector';
import { isRefusal, type Refusal } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import { examineCut, type FailedCut, hangs, type ProvenCut, type VerifiedBridges } from './cut';
import { type BridgePlanChoice, bridgeWidthFor, planFor } from './plan';

/** One way to plan what is left. */
export interface Way {
  readonly plan?: Pick<BridgePlanChoice, 'more' | 'thorough'>;
  /** So many times as wide as asked for. */
  readonly wider?: number;
  readonly effects?: readonly Effect[];
}

/** A bridge of exactly the limit may come out narrower, where curves meet it. */
export const WIDER = 1.1;

/** The layer, in the text as it is bridged so far. */
export interface Subject {
  readonly report: Report;
  readonly sheet: Sheet;
}

export interface Outcome {
  readonly proven: ProvenCut | undefined;
  /** Why the bridges of those that were left out did not hold. */
  readonly left: ReadonlyMap<Piece, Refusal<VerifiedBridges>>;
}

export interface Spent {
  /** Bridges that did not hold; gets those that do not hold now. */
  readonly avoid: Bridge[];
  /** How many proofs may still be made. */
  readonly proofs: { left: number };
}

/** mm: how far beside a place where a bridge did not hold another one is put. */
export const BESIDE = 0.2;

/** So often a plan is made anew round what did not hold, and of no more islands: that takes long, and they hold each other less. */
const [MOST_REPLANS, MOST_REPLANNED] = [2, 24];

/**
 * How often what is to blame is made wider or left out, before all is given up that is left: where faults are worse in sum
 * alone, each proof blames a single bridge.
 */
const MOST_PROOFS = 12;

/** @param examine what proves a set of bridges */
export function asManyAsHold(
  { report, sheet }: Subject,
  islands: readonly Piece[],
  choice: BridgePlanChoice,
  { plan = {}, wider = 1, effects = [] }: Way,
  { avoid, proofs }: Spent,
  examine = examineCut,
): Outcome {
  const bridgeWidth = wider * (bridgeWidthFor(report, sheet, choice.bridgeWidth) - sheet.kerf);
  const planned = (): readonly Bridge[] => {
    const apartFrom = avoid.length > 0 &&
      effects.length === 0 && { apartFrom: { bridges: [...avoid], distance: BESIDE } };
    const own = { ...plan, ...choice, ...(wider !== 1 && { bridgeWidth }), ...apartFrom };
    return planFor(report, sheet, islands, own).bridges;
  };
  let bridges = planned();
  let replans = islands.length <= MOST_REPLANNED && effects.length === 0 ? MOST_REPLANS : 0;
  const left = new Map<Piece, Refusal<VerifiedBridges>>();
  let widened: ReadonlySet<Bridge> = new Set();
  for (let tried = 0; bridges.length > 0 && tried < MOST_PROOFS && proofs.left > 0; tried += 1) {
    proofs.left -= 1;
    const result = examine(report, sheet, bridges, islands, effects);
    if (!isRefusal(result)) return { proven: result, left };
    const wide = new Map(
      [...result.narrow].filter((each) => !widened.has(each)).map((each) => [each, madeWider(each)] as const),
    );
    widened = new Set([...widened, ...wide.values()]);
    const blamed = [...blamedIn(result, bridges)].filter((each) => !wide.has(each));
    avoid.push(...blamed);
    // Others in their place, with all that is wanted of the plan as a whole, before any island is left out.
    const again = blamed.length > 0 && replans > 0 ? planned() : [];
    replans -= 1;
    if (again.length > 0 && holdsAll(again, bridges)) {
      bridges = again;
      continue;
    }
    const good = withoutBlamed(bridges, blamed, choice.alone === true);
    const kept = good.length > 0 || wide.size > 0 ? good : farFromEachOther(bridges);
    for (const { island } of bridges) if (!kept.some((other) => other.island === island)) left.set(island, result);
    bridges = kept.map((each) => wide.get(each) ?? each);
  }
  return { proven: undefined, left };
}

/** Whether the islands of the one plan have bridges in the other. */
function holdsAll(one: readonly Bridge[], other: readonly Bridge[]): boolean {
  const held = new Set(one.flatMap(({ island, target }) => [island, target]));
  return other.every(({ island }) => held.has(island));
}

/** mm between bridges that have nothing to do with each other. */
const APART = 4;

/** Where all are to blame, those of some islands that are far from each other; none where that leaves out nobody. */
function farFromEachOther(bridges: readonly Bridge[]): readonly Bridge[] {
  let kept: readonly Bridge[] = [];
  for (const island of new Set(bridges.map((bridge) => bridge.island))) {
    const own = bridges.filter((bridge) => bridge.island === island);
    const isFar = own.every(({ from }) => kept.every((other) => distance(from, other.from) > APART));
    if (isFar && hangs(island, [...kept, ...own])) kept = [...kept, ...own];
  }
  return kept.length < bridges.length ? kept : [];
}

function madeWider(bridge: Bridge): Bridge {
  return { ...bridge, width: WIDER * bridge.width };
}

/** Where nothing is known, the latter half of the islands. */
function blamedIn({ blamed }: FailedCut, bridges: readonly Bridge[]): ReadonlySet<Bridge> {
  if (blamed.size > 0) return blamed;
  const islands = [...new Set(bridges.map(({ island }) => island))];
  const half = islands.slice(islands.length >> 1);
  return new Set(bridges.filter(({ island }) => half.includes(island)));
}

/** An island goes with all of its bridges, and with it what hangs on it alone. */
function withoutBlamed(bridges: readonly Bridge[], blamed: readonly Bridge[], alone: boolean): readonly Bridge[] {
  const gone = new Set(blamed.map(({ island }) => island));
  let kept = bridges.filter(({ island }) => !gone.has(island));
  for (let size = -1; !alone && size !== kept.length; ) {
    size = kept.length;
    const rest = kept;
    kept = rest.filter(({ island }) => hangs(island, rest));
  }
  return kept;
}

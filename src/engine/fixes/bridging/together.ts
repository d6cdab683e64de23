/**
 * As many islands of a layer as can be bridged: all planned and proven at once; what keeps others from it is made wider,
 * then left out, and tried again in other ways on the sheet as it is bridged so far.
 */
import type { Effect } from '../../../checks/meta';
import { composeEdits } from '../../../edits/path/text-edits';
import type { Bridge } from '../../../edits/plan/index';
import type { Ring } from '../../../geometry/base/polygon-types';
import { distance } from '../../../geometry/base/vector';
import { regionContains } from '../../../geometry/boolean/index';
import { isRefusal, mapResult, type Refusal } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import { examineCut, type FailedCut, hangs, type ProvenCut, type VerifiedBridges } from './cut';
import { type BridgePlanChoice, bridgeWidthFor, planFor } from './plan';

/** What holding an island may do beside it. */
export const BRIDGING_EFFECTS: readonly Effect[] = ['holds-island'];

export interface BridgedTogether {
  /** Undefined where no island could be bridged. Its edits are of the text that was given. */
  readonly proven: ProvenCut | undefined;
  /** Islands that are left, as they were given, and why their bridges do not hold; undefined where none was found. */
  readonly left: ReadonlyMap<Piece, Refusal<VerifiedBridges> | undefined>;
}

/** One way to plan what is left. */
interface Way {
  readonly plan?: Pick<BridgePlanChoice, 'more' | 'thorough'>;
  /** So many times as wide as asked for. */
  readonly wider?: number;
  readonly effects?: readonly Effect[];
}

/** A bridge of exactly the limit may come out narrower, where curves meet it. */
const WIDER = 1.1;

/**
 * Where the usual bridges leave a fault, as a part that hinges, more are tried, and all places round the island. A part of
 * the island itself that would lift still beats an island that falls out: a warning for an error.
 */
const WAYS: readonly Way[] = [
  {},
  { plan: { more: 1 } },
  { plan: { more: 2 } },
  { plan: { thorough: true }, wider: WIDER },
  { effects: BRIDGING_EFFECTS },
  { plan: { thorough: true }, wider: WIDER, effects: BRIDGING_EFFECTS },
];

/** An island may be left where others were tried with it; so many are tried alone at last. */
const MOST_ALONE = 12;

/** Proofs for a layer in all: so many for a small one, and fewer the more edges each has to look at. */
const PROOFS = { least: 6, most: 40, edges: 150_000 };

function proofsFor({ openings }: Sheet): number {
  const edges = openings.reduce((sum, { outer, holes }) => sum + sizeOf(outer) + sizeOf(...holes), 0);
  return Math.min(PROOFS.most, Math.max(PROOFS.least, Math.round(PROOFS.edges / Math.max(1, edges))));
}

function sizeOf(...rings: readonly Ring[]): number {
  return rings.reduce((sum, ring) => sum + ring.length / 2, 0);
}

export function bridgeTogether(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: BridgePlanChoice,
): BridgedTogether {
  let state: State = { report, sheet, proven: undefined, waiting: new Map(islands.map((each) => [each, each])) };
  const reasons = new Map<Piece, Refusal<VerifiedBridges> | undefined>();
  /** Bridges that did not hold: others are looked for beside them. */
  let avoid: Bridge[] = [];
  const proofs = { left: 0 };
  const tryWay = (way: Way, some: readonly Piece[]): void => {
    const now = some.flatMap((each) => state.waiting.get(each) ?? []);
    if (now.length === 0 || proofs.left <= 0) return;
    const { proven, left } = asManyAsHold(state, now, choice, way, { avoid, proofs });
    for (const [original, piece] of state.waiting) {
      const why = left.get(piece);
      if (why) reasons.set(original, onTop(state.proven, why, report.text));
    }
    if (!proven) return;
    state = goOn(state, proven, report.text, choice.alone === true);
    avoid = avoid.flatMap((bridge) => onSheet(bridge, state.sheet) ?? []);
  };
  const ends = [WAYS[0], WAYS.at(-1)] as Way[];
  const tryAll = (): void => {
    proofs.left = proofsFor(state.sheet);
    avoid = [];
    for (const way of WAYS) tryWay(way, islands);
    const alone = islands.length > 1 ? [...state.waiting.keys()].slice(0, MOST_ALONE) : [];
    for (const island of alone) for (const way of ends) tryWay(way, [island]);
  };
  // What was bridged may have made room for others, so that nobody need run it again: the last round is in vain.
  for (let before = -1; state.waiting.size > 0 && state.waiting.size !== before; ) {
    before = state.waiting.size;
    tryAll();
  }
  const left = new Map([...state.waiting.keys()].map((island) => [island, reasons.get(island)]));
  return { proven: state.proven, left };
}

/** How far it has come: what is proven so far, and the islands that wait, as they were given and as they are now. */
interface State {
  readonly report: Report;
  readonly sheet: Sheet;
  readonly proven: ProvenCut | undefined;
  readonly waiting: ReadonlyMap<Piece, Piece>;
}

/** @param alone whether an island is done with that hangs on a loose piece */
function goOn({ sheet, proven, waiting }: State, next: ProvenCut, text: string, alone: boolean): State {
  const now = next.after.sheets.find(({ layer }) => layer.id === sheet.layer.id) ?? sheet;
  const loose = now.pieces.filter(({ island }) => island);
  const still = [...waiting].flatMap(([original, old]) => {
    const { label } = old;
    if (alone && next.bridges.some(({ island }) => island === old)) return [];
    const piece = loose.find(({ polygon }) => regionContains([polygon], label));
    return piece ? [[original, piece] as const] : [];
  });
  return {
    report: next.after,
    sheet: now,
    proven: proven ? oneAfterTheOther(proven, next, text) : next,
    waiting: new Map(still),
  };
}

/** Two sets as one, the second put into the text that the first makes of `text`. */
export function oneAfterTheOther(first: ProvenCut, second: ProvenCut, text: string): ProvenCut {
  return { ...joined(first, second, text), after: second.after };
}

function joined(first: VerifiedBridges, second: VerifiedBridges, text: string): VerifiedBridges {
  return {
    edits: composeEdits(text, first.edits, second.edits),
    bridges: [...first.bridges, ...second.bridges],
    brings: [...first.brings, ...second.brings],
  };
}

/** A refusal of further bridges: what may be had anyway has those in it that are proven already, and is a change of `text`. */
function onTop(proven: ProvenCut | undefined, why: Refusal<VerifiedBridges>, text: string): Refusal<VerifiedBridges> {
  return proven ? (mapResult(why, (more) => joined(proven, more, text)) as Refusal<VerifiedBridges>) : why;
}

interface Outcome {
  readonly proven: ProvenCut | undefined;
  /** Why the bridges of those that were left out did not hold. */
  readonly left: ReadonlyMap<Piece, Refusal<VerifiedBridges>>;
}

interface Spent {
  /** Bridges that did not hold; gets those that do not hold now. */
  readonly avoid: Bridge[];
  /** How many proofs may still be made. */
  readonly proofs: { left: number };
}

/** mm: how far beside a place where a bridge did not hold another one is put. */
const BESIDE = 0.2;

/** So often a plan is made anew round what did not hold, and of no more islands: that takes long, and they hold each other less. */
const [MOST_REPLANS, MOST_REPLANNED] = [2, 24];

/** How often what is to blame is made wider or left out, before all is given up that is left. */
const MOST_PROOFS = 8;

function asManyAsHold(
  { report, sheet }: State,
  islands: readonly Piece[],
  choice: BridgePlanChoice,
  { plan = {}, wider = 1, effects = [] }: Way,
  { avoid, proofs }: Spent,
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
    const result = examineCut(report, sheet, bridges, islands, effects);
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

/** A bridge as one between the pieces that a sheet has now. */
function onSheet(bridge: Bridge, { pieces }: Sheet): Bridge | undefined {
  const [island, target] = [bridge.island, bridge.target].map(({ label }) =>
    pieces.find(({ polygon }) => regionContains([polygon], label)),
  );
  return island && target && { ...bridge, island, target };
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

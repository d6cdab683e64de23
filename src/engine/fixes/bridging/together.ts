/**
 * As many islands of a layer as can be bridged: all planned and proven at once; what keeps others from it is made wider,
 * then left out, and tried again in other ways on the sheet as it is bridged so far.
 */
import type { Effect } from '../../../checks/meta';
import type { Bridge } from '../../../edits/plan/index';
import { edgesIn, ringsOf } from '../../../geometry/base/ring';
import { regionContains } from '../../../geometry/boolean/index';
import type { Refusal } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import { metaOf } from '../../metas';
import { asManyAsHold, type Subject, type Way, WIDER } from './attempt';
import type { ProvenCut, VerifiedBridges } from './cut';
import { oneAfterTheOther, onTop } from './joined';
import type { BridgePlanChoice } from './plan';
import { stiffened } from './stiffened';

/** What holding an island may do beside it. */
export const BRIDGING_EFFECTS: readonly Effect[] = ['holds-island'];

export interface BridgedTogether {
  /** Undefined where no island could be bridged. Its edits are of the text that was given. */
  readonly proven: ProvenCut | undefined;
  /** Islands that are left, as they were given, and why their bridges do not hold; undefined where none was found. */
  readonly left: ReadonlyMap<Piece, Refusal<VerifiedBridges> | undefined>;
}

/** What bridging may do beside it is let pass. */
const LENIENT: Way = { effects: BRIDGING_EFFECTS };

/**
 * Where the usual bridges leave a fault, as a part that hinges, more are tried, and all places round the island. A part of
 * the island itself that would lift still beats an island that falls out: a warning for an error.
 */
const WAYS: readonly Way[] = [
  {},
  { plan: { more: 1 } },
  { plan: { more: 2 } },
  { plan: { thorough: true }, wider: WIDER },
  LENIENT,
  { plan: { thorough: true }, wider: WIDER, ...LENIENT },
];

/** An island may be left where others were tried with it; so many are tried alone at last. */
const MOST_ALONE = 12;

/** Proofs for a layer in all: so many for a small one, and fewer the more edges each has to look at. */
const PROOFS = { least: 6, most: 40, edges: 150_000 };

/** Where those are spent before what bridging may do beside it was let pass, so many more are made that let it pass. */
const MOST_LENIENT = 3;

function proofsFor({ openings }: Sheet): number {
  const edges = edgesIn(openings.flatMap(ringsOf));
  return Math.min(PROOFS.most, Math.max(PROOFS.least, Math.round(PROOFS.edges / Math.max(1, edges))));
}

/** How far it has come: what is proven so far, and the islands that wait, as they were given and as they are now. */
interface State extends Subject {
  readonly proven: ProvenCut | undefined;
  readonly waiting: ReadonlyMap<Piece, Piece>;
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
    if (proofs.left <= 0 && [...state.waiting.keys()].some((island) => mayPass(reasons.get(island)))) {
      proofs.left = MOST_LENIENT;
      tryWay(LENIENT, islands);
      proofs.left = 0;
    }
    const alone = islands.length > 1 ? [...state.waiting.keys()].slice(0, MOST_ALONE) : [];
    for (const island of alone) for (const way of ends) tryWay(way, [island]);
  };
  // What was bridged may have made room for others, so that nobody need run it again: the last round is in vain.
  for (let before = -1; state.waiting.size > 0 && state.waiting.size !== before; ) {
    before = state.waiting.size;
    tryAll();
  }
  const left = new Map([...state.waiting.keys()].map((island) => [island, reasons.get(island)]));
  return { proven: state.proven && stiffened(report, sheet, state.proven, choice), left };
}

/** Whether something spoke against its bridges that bridging may do. */
function mayPass(why: Refusal<VerifiedBridges> | undefined): boolean {
  return (why?.anyway?.brings ?? []).some(({ check }) => {
    const { unless = [] } = metaOf(check)?.afterFix ?? {};
    return BRIDGING_EFFECTS.some((effect) => unless.includes(effect));
  });
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

/** A bridge as one between the pieces that a sheet has now. */
function onSheet(bridge: Bridge, { pieces }: Sheet): Bridge | undefined {
  const [island, target] = [bridge.island, bridge.target].map(({ label }) =>
    pieces.find(({ polygon }) => regionContains([polygon], label)),
  );
  return island && target && { ...bridge, island, target };
}

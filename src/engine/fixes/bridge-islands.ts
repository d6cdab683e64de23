/** Bridges for islands: planned, cut into the text, and proven. */

import type { Effect } from '../../checks/meta';
import type { BridgeStyle } from '../../config/bridge-style';
import type { BroughtFinding } from '../../report/fix';
import { isRefusal, mapResult, type Refusal, type Result, refuse, whyNot } from '../../report/refusal';
import type { Report } from '../../report/report';
import type { Piece, Sheet } from '../../sheet/types';
import { applyEdits, type TextEdit } from '../../text/text';
import { toldBeside, toldOfPlan } from './bridging/along';
import { type PlannedBridge, type ProvenCut, type VerifiedBridges, verifyCut, withoutReport } from './bridging/cut';
import { oneAfterTheOther } from './bridging/joined';
import { refusalForLeft } from './bridging/left';
import { narrowerLimitFor } from './bridging/narrower';
import { type BridgePlanChoice, islandsOf, planFor } from './bridging/plan';
import { BRIDGING_EFFECTS, bridgeTogether } from './bridging/together';

export type { PlannedBridge } from './bridging/cut';

/** Which islands, and how wide a bridge in mm as cut; by default all, at the limit. */
export interface BridgeChoice {
  readonly layer?: string;
  readonly bridgeWidth?: number;
  /** How bridges are to look; by default as the settings say of the layer. */
  readonly style?: BridgeStyle;
  /** Is told how many layers are done, of how many. */
  readonly progress?: (done: number, of: number) => void;
}

export interface BridgeOutcome {
  /** The text with the bridges in it; the old text where there are none. */
  readonly text: string;
  /** The same change as edits of the old text. */
  readonly edits: readonly TextEdit[];
  /** How many bridges were put in. */
  readonly bridges: number;
  /** The bridges themselves, and the layer of each. */
  readonly plan: readonly PlannedBridge[];
  /** What could not be done, an island each: where it is, why, and what would do. */
  readonly refusals: readonly { readonly message: string }[];
  /** Findings, warnings or worse, that come of it and do not speak against it. */
  readonly brings: readonly BroughtFinding[];
}

/** Bridges every island of the report's layers, one layer after the other, as many as can be. */
export function bridgeIslands(report: Report, choice: BridgeChoice = {}): BridgeOutcome {
  const { layer, bridgeWidth, style, progress } = choice;
  const plan = { ...(style && { style }), ...(bridgeWidth !== undefined && { bridgeWidth }) };
  const refusals: { message: string }[] = [];
  let whole: ProvenCut | undefined;
  for (const [done, { layer: each }] of report.sheets.entries()) {
    progress?.(done, report.sheets.length);
    if (layer !== undefined && each.name !== layer) continue;
    const before = whole?.after ?? report;
    const sheet = before.sheets.find((other) => other.layer.id === each.id);
    if (!sheet) continue;
    const { proven, left } = bridgeSheet(before, sheet, plan);
    if (proven) whole = whole ? oneAfterTheOther(whole, proven, report.text) : proven;
    for (const why of left.values()) refusals.push({ message: `Layer "${each.name}": ${whyNot(why)}` });
  }
  progress?.(report.sheets.length, report.sheets.length);
  return outcomeOf(report, whole, refusals);
}

/** @param whole all that was proven, one layer after the other; undefined where nothing was */
export function outcomeOf(
  report: Report,
  whole: ProvenCut | undefined,
  refusals: BridgeOutcome['refusals'],
): BridgeOutcome {
  const { edits = [], bridges = [], brings = [], after } = whole ?? {};
  return {
    text: applyEdits(report.text, edits),
    edits,
    bridges: bridges.length,
    plan: bridges,
    refusals,
    brings: after ? [...brings, ...toldBeside(report, after, brings), ...toldOfPlan(report, bridges)] : [],
  };
}

export interface BridgedSheet {
  readonly proven: ProvenCut | undefined;
  /** Why not, for each island that is left. */
  readonly left: ReadonlyMap<Piece, Refusal<VerifiedBridges>>;
}

/** As many islands of a layer as can be. */
export function bridgeSheet(report: Report, sheet: Sheet, choice: BridgePlanChoice): BridgedSheet {
  const { proven, left } = bridgeTogether(report, sheet, islandsOf(sheet), choice);
  const narrower = narrowerLimitFor(report, sheet, choice);
  const why = [...left].map(
    ([island, tried]) => [island, refusalForLeft(report, sheet, island, choice, tried, narrower)] as const,
  );
  return { proven, left: new Map(why) };
}

/** @returns the bridges if they could be planned, cut and proven for all of the islands; else why not for one */
export function verifyBridges(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: BridgePlanChoice = {},
): Result<VerifiedBridges> {
  if (islands.length === 0) return refuse('There is no island to bridge.');
  if (typeof choice.count === 'number') return verifyCounted(report, sheet, islands, choice);
  const { proven, left } = bridgeTogether(report, sheet, islands, choice);
  const [[island, tried] = []] = left;
  if (island) return tried ?? refusalForLeft(report, sheet, island, choice, undefined);
  return proven ? withoutReport(proven) : refuse('There is no island to bridge.');
}

/** So many as were asked for, and no other way tried. */
function verifyCounted(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: BridgePlanChoice,
): Result<VerifiedBridges> {
  const { bridges, unbridged } = planFor(report, sheet, islands, choice);
  const [none] = unbridged;
  if (none) return refusalForLeft(report, sheet, none, choice, undefined);
  const cut = (effects: readonly Effect[]) => verifyCut(report, sheet, bridges, islands, effects);
  const usual = cut([]);
  // Who places bridges one by one knows that there are more to come.
  return isRefusal(usual) && choice.near ? cut(BRIDGING_EFFECTS) : usual;
}

/** Bridges for the islands of a layer, or of a file, and how many islands are left. */
export interface BridgedMany extends VerifiedBridges {
  readonly left: number;
}

/** As many islands of a layer as can be, at the limit; remembered, for each of its islands offers them. */
export function verifyLayerBridges(report: Report, sheet: Sheet): Result<BridgedMany> {
  const prove = () => manyOf(bridgeSheet(report, sheet, {}));
  return report.session.remember(`bridges of ${sheet.layer.id}`, prove);
}

function manyOf({ proven, left }: BridgedSheet): Result<BridgedMany> {
  const [why] = left.values();
  if (proven) return { ...withoutReport(proven), left: left.size };
  if (!why) return refuse('There is no island to bridge.');
  return mapResult(why, (verified) => ({ ...verified, left: left.size - 1 }));
}

/** As many islands of all layers as can be. */
export function verifyFileBridges(report: Report): Result<BridgedMany> {
  const { edits, plan, brings, refusals } = bridgeIslands(report);
  return plan.length > 0
    ? { edits, bridges: plan, brings, left: refusals.length }
    : refuse(refusals[0]?.message ?? 'There is no island to bridge.');
}

/**
 * The usual bridges for one island and no other, unless it cannot be held without others. Remembered, for other plans are
 * compared with them.
 */
export function verifyIslandBridges(report: Report, sheet: Sheet, piece: Piece): Result<VerifiedBridges> {
  const prove = () => {
    const alone = verifyBridges(report, sheet, [piece], { alone: true });
    if (!isRefusal(alone)) return alone;
    const withOthers = verifyBridges(report, sheet, [piece]);
    return isRefusal(withOthers) ? alone : withOthers;
  };
  return report.session.remember(`bridges of ${sheet.layer.id}/${sheet.pieces.indexOf(piece)}`, prove);
}

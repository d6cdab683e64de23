/** Bridges for islands: planned, cut into the text, and proven. */

import type { Finding } from '../../checks/finding';
import type { Effect } from '../../checks/meta';
import { SPECK } from '../../checks/specks';
import { type BridgeStyle, bridgeStyleOf } from '../../config/bridge-style';
import { limitsOf } from '../../config/limits';
import { formatMillimetres } from '../../config/values';
import { changedRegion, cutStrips, stripsFor } from '../../edits/bridge/cut';
import { type Bridge, type PlanOptions, planBridges } from '../../edits/plan/index';
import { optionsForStyle } from '../../edits/plan/style';
import type { Strip } from '../../edits/strip/strip';
import type { Region } from '../../geometry/base/polygon-types';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { regionContains, union } from '../../geometry/boolean/index';
import { inscribedDisc } from '../../geometry/polygon/inscribed-circle';
import type { BroughtFinding } from '../../report/fix';
import { isRefusal, mapResult, type Refusal, type Result, refuse } from '../../report/refusal';
import type { Report } from '../../report/report';
import type { LayerId } from '../../sheet/layer/layer-id';
import type { Piece, Sheet } from '../../sheet/types';
import { applyEdits, type TextEdit } from '../../text/text';
import { effectiveConfig } from '../check/effective-config';
import { type Expectations, verify } from './verify';

/** Which islands, and how wide a bridge in mm as cut; by default all, at the limit. */
export interface BridgeChoice {
  readonly layer?: string;
  readonly bridgeWidth?: number;
  /** How bridges are to look; by default as the settings say of the layer. */
  readonly style?: BridgeStyle;
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
  /** What could not be done, a sentence each. */
  readonly refusals: readonly { readonly message: string }[];
  /** Findings, warnings or worse, that come of it and do not speak against it. */
  readonly brings: readonly BroughtFinding[];
}

export interface PlannedBridge extends Bridge {
  /** The layer's name, for people. */
  readonly layer: string;
  readonly layerId: LayerId;
  /** mm: its width less the kerf. */
  readonly cutWidth: number;
  /** What stays of the opening: the bridge, reaching a little into both banks. Sheet mm. */
  readonly strip: Strip;
}

/** A proven set of bridges. */
export interface VerifiedBridges {
  readonly edits: readonly TextEdit[];
  readonly bridges: readonly PlannedBridge[];
  readonly expectations: Expectations;
  readonly brings: readonly BroughtFinding[];
}

/** What holding an island may do beside it. */
export const BRIDGING_EFFECTS: readonly Effect[] = ['holds-island'];

/**
 * Bridges every island of the report's layers. Where a layer cannot be done whole, it is done without the islands that
 * there is no place for; where that cannot be done either, island by island.
 */
export function bridgeIslands(report: Report, choice: BridgeChoice = {}): BridgeOutcome {
  const refusals: { message: string }[] = [];
  let whole: VerifiedBridges = { edits: [], bridges: [], expectations: { gone: [], within: new Map() }, brings: [] };
  for (const sheet of report.sheets) {
    if (choice.layer !== undefined && sheet.layer.name !== choice.layer) continue;
    for (const result of bridgeSheet(report, sheet, choice)) {
      const joined = isRefusal(result) ? result : joinBridges(report, whole, result);
      if (isRefusal(joined)) refusals.push({ message: `Layer "${sheet.layer.name}": ${joined.reason}` });
      else whole = joined;
    }
  }
  const { edits, bridges, brings } = whole;
  return { text: applyEdits(report.text, edits), edits, bridges: bridges.length, plan: bridges, refusals, brings };
}

function bridgeSheet(report: Report, sheet: Sheet, { bridgeWidth, style }: BridgeChoice): Result<VerifiedBridges>[] {
  const islands = islandsOf(sheet);
  if (islands.length === 0) return [];
  const choice = { ...(style && { style }), ...(bridgeWidth !== undefined && { bridgeWidth }) };
  const whole =
    bridgeWidth === undefined && style === undefined
      ? verifyLayerBridges(report, sheet)
      : verifyBridges(report, sheet, islands, choice);
  if (!isRefusal(whole) || islands.length === 1) return [whole];
  return (
    dropUnbridged(report, sheet, islands, choice) ??
    islands.map((island) => verifyBridges(report, sheet, [island], choice))
  );
}

/** Islands cut by one path can only be bridged together: those without a place must not keep the others from it. */
function dropUnbridged(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: BridgePlanChoice,
): Result<VerifiedBridges>[] | undefined {
  const { unbridged } = planFor(report, sheet, islands, choice);
  const others = islands.filter((island) => !unbridged.includes(island));
  if (unbridged.length === 0 || others.length === 0) return undefined;
  const width = bridgeWidthFor(report, sheet, choice.bridgeWidth);
  const proven = verifyBridges(report, sheet, others, choice);
  return isRefusal(proven) ? undefined : [proven, ...unbridged.map((island) => noPlaceFor([island], width))];
}

/** Two proven sets as one, proven again together; layers and islands may share the outlines that are cut. */
export function joinBridges(report: Report, first: VerifiedBridges, second: VerifiedBridges): Result<VerifiedBridges> {
  if (first.edits.length === 0) return second;
  if (second.edits.some((edit) => first.edits.some((other) => overlap(edit, other)))) {
    return refuse('An island shares its outline with one that was bridged; run again to bridge it.');
  }
  const within = new Map(first.expectations.within);
  for (const [layer, region] of second.expectations.within)
    within.set(layer, [...(within.get(layer) ?? []), ...region]);
  const effects = [...(first.expectations.effects ?? []), ...(second.expectations.effects ?? [])];
  const pledge = { gone: [...first.expectations.gone, ...second.expectations.gone], within, effects };
  const edits = [...first.edits, ...second.edits];
  const proof = verify(report, edits, pledge);
  const bridges = [...first.bridges, ...second.bridges];
  return mapResult(proof, ({ brings }) => ({ edits, bridges, expectations: pledge, brings }));
}

function overlap({ span: a }: TextEdit, { span: b }: TextEdit): boolean {
  return a.from <= b.to && b.from <= a.to;
}

/** How a plan is to differ from the preferred one. */
export interface BridgePlanChoice extends Pick<PlanOptions, 'count' | 'near' | 'shortestOnly' | 'alone'> {
  /** mm as cut; by default the limit. */
  readonly bridgeWidth?: number;
  /** By default as the settings say of the layer. */
  readonly style?: BridgeStyle;
}

/** Where the usual number of bridges leaves a fault, as a part that hinges, so many more are tried. */
const MAX_EXTRA_BRIDGES = 2;

/** @returns the bridges if they could be planned, cut and proven; else why not */
export function verifyBridges(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: BridgePlanChoice = {},
): Result<VerifiedBridges> {
  const usual = verifyPlan(report, sheet, islands, choice);
  if (typeof choice.count === 'number') {
    // Who places bridges one by one knows that there are more to come.
    return isRefusal(usual) && choice.near ? verifyPlan(report, sheet, islands, choice, BRIDGING_EFFECTS) : usual;
  }
  let [result, more] = [usual, 0];
  while (isRefusal(result) && more < MAX_EXTRA_BRIDGES) {
    more += 1;
    result = verifyPlan(report, sheet, islands, { ...choice, more });
  }
  // A part of the island itself that would lift still beats an island that falls out: a warning for an error.
  return isRefusal(result) ? verifyPlan(report, sheet, islands, choice, BRIDGING_EFFECTS) : result;
}

function verifyPlan(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: PlanChoice,
  effects: readonly Effect[] = [],
): Result<VerifiedBridges> {
  const { bridges, unbridged } = planFor(report, sheet, islands, choice);
  return unbridged.length > 0
    ? noPlaceFor(unbridged, bridgeWidthFor(report, sheet, choice.bridgeWidth))
    : verifyCut(report, sheet, bridges, islands, effects);
}

type PlanChoice = BridgePlanChoice & Pick<PlanOptions, 'more'>;

function planFor(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  { bridgeWidth, style, ...plan }: PlanChoice,
): ReturnType<typeof planBridges> {
  const width = bridgeWidthFor(report, sheet, bridgeWidth);
  const wanted = style ?? bridgeStyleOf(effectiveConfig(report.settings), sheet.layer.name);
  return planBridges(sheet, islands, { ...optionsForStyle(wanted), ...plan, width, hidden: hiddenOn(report, sheet) });
}

/** mm as drawn: the width asked for, else the limit, and what the cut takes from it. */
export function bridgeWidthFor(report: Report, sheet: Sheet, bridgeWidth?: number): number {
  return (bridgeWidth ?? limitsOf(effectiveConfig(report.settings)).bridge) + sheet.kerf;
}

/**
 * @param islands those that must hang on the sheet afterwards, or on the loose piece that a bridge leads to
 * @param others findings that must be gone as well
 */
export function verifyCut(
  report: Report,
  sheet: Sheet,
  bridges: readonly Bridge[],
  islands: readonly Piece[],
  effects: readonly Effect[] = [],
  others: readonly Finding[] = [],
): Result<VerifiedBridges> {
  const strips = stripsFor(sheet, bridges);
  const cut = cutStrips(sheet, strips);
  if ('refusal' in cut) return refuse(cut.refusal);
  const { name: layer, id: layerId } = sheet.layer;
  const pledge = {
    gone: [
      ...others,
      ...islandFindings(
        report,
        islands.filter((island) => hangs(island, bridges)),
      ),
    ],
    within: new Map([[layerId, changedRegion(sheet, strips)]]),
    effects,
  };
  const proof = verify(report, cut.edits, pledge);
  const apart = !isRefusal(proof) && bridges.find((bridge) => !areJoined(proof.after, layerId, bridge));
  if (apart) return refuse('The bridge would not reach from piece to piece.');
  const planned = bridges.map((bridge, i) => ({
    ...bridge,
    layer,
    layerId,
    cutWidth: bridge.width - sheet.kerf,
    strip: strips[i] as Strip,
  }));
  return mapResult(proof, ({ brings }) => ({ edits: cut.edits, bridges: planned, expectations: pledge, brings }));
}

/** Whether bridges lead from a piece to the sheet, if need be by way of others. */
function hangs(piece: Piece, bridges: readonly Bridge[]): boolean {
  const reached = new Set([piece]);
  for (const each of reached) {
    if (!each.island) return true;
    for (const { island, target } of bridges) {
      if (island === each) reached.add(target);
      if (target === each) reached.add(island);
    }
  }
  return false;
}

/** Whether what a bridge ties is one piece now. */
function areJoined({ sheets }: Report, layer: LayerId, { island, target }: Bridge): boolean {
  const pieces = sheets.find((sheet) => sheet.layer.id === layer)?.pieces ?? [];
  const holds = ({ polygon }: Piece, { label }: Piece) => regionContains([polygon], label);
  return pieces.some((piece) => holds(piece, island) && holds(piece, target));
}

/** @param width mm as drawn */
function noPlaceFor(islands: readonly Piece[], width: number): Refusal<never> {
  const [first] = islands;
  if (!first) return refuse('There is no island to bridge.');
  const { label, polygon } = first;
  const where = `${label.x.toFixed(1)}, ${label.y.toFixed(1)} mm`;
  const others = islands.length > 1 ? ` and ${islands.length - 1} more` : '';
  const isNarrow = 2 * inscribedDisc(polygon, DRAWN_ALIKE).radius < width;
  const why = isNarrow
    ? `which is narrower than a bridge of ${formatMillimetres(width)}`
    : 'as the sides of its gap nowhere run parallel for long enough';
  return refuse(`No bridge fits the island at ${where}${others}, ${why}.`);
}

/** What later layers paint over: a bridge there leaves no bare shadow. */
export function hiddenOn({ stack }: Report, sheet: Sheet): Region {
  const { layers, firsts } = stack;
  const own = layers.findIndex((other) => other.sheet.layer.id === sheet.layer.id);
  const later = layers.filter((_, i) => own >= 0 && i > own && firsts[i] !== firsts[own]);
  return union(later.map((other) => other.sheet.openings));
}

/** Bridges for every island of a layer at the limit; remembered, for each of its islands offers them. */
export function verifyLayerBridges(report: Report, sheet: Sheet): Result<VerifiedBridges> {
  const prove = () => verifyBridges(report, sheet, islandsOf(sheet));
  return report.session.remember(`bridges of ${sheet.layer.id}`, prove);
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

/** Those that are worth a bridge: specks are removed rather than held. */
export function islandsOf({ pieces }: Sheet): Piece[] {
  return pieces.filter(({ island, area }) => island && area >= SPECK);
}

function islandFindings(report: Report, islands: readonly Piece[]): Finding[] {
  return report.complete.filter(({ subject }) => subject?.kind === 'island' && islands.includes(subject.piece));
}

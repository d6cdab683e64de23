/** Bridges for islands: planned, cut into the text, and proven. */
import { changedBy, cutStrips, stripsFor } from '../../edits/bridge/cut';
import { planBridges, type Bridge, type PlanOptions } from '../../edits/plan';
import type { Strip } from '../../edits/strip/strip';
import type { Finding } from '../../checks/finding';
import { union } from '../../geometry/boolean';
import type { Region } from '../../geometry/base/polygon-types';
import type { Report } from '../../report/report';
import { limitsOf } from '../../config/limits';
import type { Piece, Sheet } from '../../sheet/types';
import { applyEdits, type TextEdit } from '../../text/text';
import { configOf } from '../check/effective-config';
import { prove, type Pledge } from './verify';

/** Which islands, and how wide a bridge in mm as cut; by default all, at the limit. */
export interface BridgeChoice {
  readonly layer?: string;
  readonly bridgeWidth?: number;
  /** Upright bridges wherever one can stand, as in lettering; by default the shortest. */
  readonly align?: PlanOptions['align'];
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
}

export interface PlannedBridge extends Bridge {
  readonly layer: string;
  /** mm: its width less the kerf. */
  readonly cutWidth: number;
  /** What stays of the opening: the bridge, reaching a little into both banks. Sheet mm. */
  readonly strip: Strip;
}

/** A proven set of bridges. */
export interface ProvenBridges {
  readonly edits: readonly TextEdit[];
  readonly bridges: readonly PlannedBridge[];
  readonly pledge: Pledge;
}

/**
 * Bridges every island of the report's layers. Where a layer cannot be done whole, it is done without the islands that
 * there is no place for; where that cannot be done either, island by island.
 */
export function bridgeIslands(report: Report, choice: BridgeChoice = {}): BridgeOutcome {
  const refusals: { message: string }[] = [];
  let whole: ProvenBridges = { edits: [], bridges: [], pledge: { gone: [], within: new Map() } };
  for (const sheet of report.sheets) {
    if (choice.layer !== undefined && sheet.layer.name !== choice.layer) continue;
    for (const result of bridgeSheet(report, sheet, choice)) {
      const joined = typeof result === 'string' ? result : joinBridges(report, whole, result);
      if (typeof joined === 'string') refusals.push({ message: `Layer "${sheet.layer.name}": ${joined}` });
      else whole = joined;
    }
  }
  const { edits, bridges } = whole;
  return { text: applyEdits(report.text, edits), edits, bridges: bridges.length, plan: bridges, refusals };
}

function bridgeSheet(
  report: Report,
  sheet: Sheet,
  { bridgeWidth, align = 'none' }: BridgeChoice,
): (ProvenBridges | string)[] {
  const islands = sheet.pieces.filter((piece) => piece.island);
  if (islands.length === 0) return [];
  const choice = { align, ...(bridgeWidth === undefined ? {} : { bridgeWidth }) };
  const whole =
    bridgeWidth === undefined && align === 'none'
      ? proveLayerBridges(report, sheet)
      : proveBridges(report, sheet, islands, choice);
  if (typeof whole !== 'string' || islands.length === 1) return [whole];
  return (
    withoutUnbridged(report, sheet, islands, choice) ??
    islands.map((island) => proveBridges(report, sheet, [island], choice))
  );
}

/** Islands cut by one path can only be bridged together: those without a place must not keep the others from it. */
function withoutUnbridged(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: BridgePlanChoice,
): (ProvenBridges | string)[] | undefined {
  const { unbridged } = planFor(report, sheet, islands, choice);
  const others = islands.filter((island) => !unbridged.includes(island));
  if (unbridged.length === 0 || others.length === 0) return undefined;
  const proven = proveBridges(report, sheet, others, choice);
  return typeof proven === 'string' ? undefined : [proven, ...unbridged.map((island) => noPlaceFor([island]))];
}

/** Two proven sets as one, proven again together; layers and islands may share the outlines that are cut. */
export function joinBridges(report: Report, first: ProvenBridges, second: ProvenBridges): ProvenBridges | string {
  if (first.edits.length === 0) return second;
  if (second.edits.some((edit) => first.edits.some((other) => overlap(edit, other)))) {
    return 'An island shares its outline with one that was bridged; run again to bridge it.';
  }
  const within = new Map(first.pledge.within);
  for (const [layer, region] of second.pledge.within) within.set(layer, [...(within.get(layer) ?? []), ...region]);
  const mayCome = [...(first.pledge.mayCome ?? []), ...(second.pledge.mayCome ?? [])];
  const pledge = { gone: [...first.pledge.gone, ...second.pledge.gone], within, mayCome };
  const edits = [...first.edits, ...second.edits];
  const proof = prove(report, edits, pledge);
  return typeof proof === 'string' ? proof : { edits, bridges: [...first.bridges, ...second.bridges], pledge };
}

function overlap({ span: a }: TextEdit, { span: b }: TextEdit): boolean {
  return a.from <= b.to && b.from <= a.to;
}

/** How a plan is to differ from the preferred one. */
export interface BridgePlanChoice extends Pick<PlanOptions, 'count' | 'near' | 'align' | 'shortestOnly'> {
  /** mm as cut; by default the limit. */
  readonly bridgeWidth?: number;
}

/** Where the usual number of bridges leaves a fault, as a part that hinges, so many more are tried. */
const MOST_MORE = 2;

/** @returns the bridges if they could be planned, cut and proven; else the sentence that says why not */
export function proveBridges(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: BridgePlanChoice = {},
): ProvenBridges | string {
  const usual = provePlan(report, sheet, islands, choice);
  if (typeof choice.count === 'number') return usual;
  let [result, more] = [usual, 0];
  while (typeof result === 'string' && more < MOST_MORE) {
    more += 1;
    result = provePlan(report, sheet, islands, { ...choice, more });
  }
  // A part of the island itself that would lift still beats an island that falls out: a warning for an error.
  return typeof result === 'string' ? provePlan(report, sheet, islands, choice, ['loose-tongue']) : result;
}

function provePlan(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  choice: PlanChoice,
  mayCome: Pledge['mayCome'] = [],
): ProvenBridges | string {
  const { bridges, unbridged } = planFor(report, sheet, islands, choice);
  return unbridged.length > 0 ? noPlaceFor(unbridged) : proveCut(report, sheet, bridges, islands, mayCome);
}

type PlanChoice = BridgePlanChoice & Pick<PlanOptions, 'more'>;

function planFor(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  { bridgeWidth, ...plan }: PlanChoice,
): ReturnType<typeof planBridges> {
  const width = bridgeWidthFor(report, sheet, bridgeWidth);
  return planBridges(sheet, islands, { ...plan, width, hidden: hiddenOn(report, sheet) });
}

/** mm as drawn: the width asked for, else the limit, and what the cut takes from it. */
export function bridgeWidthFor(report: Report, sheet: Sheet, bridgeWidth?: number): number {
  return (bridgeWidth ?? limitsOf(configOf(report.settings)).bridge) + sheet.kerf;
}

/** @param islands those that must hang on something afterwards */
export function proveCut(
  report: Report,
  sheet: Sheet,
  bridges: readonly Bridge[],
  islands: readonly Piece[],
  mayCome: Pledge['mayCome'] = [],
): ProvenBridges | string {
  const strips = stripsFor(sheet, bridges);
  const cut = cutStrips(sheet, strips);
  if ('refusal' in cut) return cut.refusal;
  const layer = sheet.layer.name;
  const pledge = {
    gone: islandFindings(report, islands),
    within: new Map([[layer, changedBy(sheet, strips)]]),
    mayCome,
  };
  const proof = prove(report, cut.edits, pledge);
  if (typeof proof === 'string') return proof;
  const planned = bridges.map((bridge, i) => ({
    ...bridge,
    layer,
    cutWidth: bridge.width - sheet.kerf,
    strip: strips[i] as Strip,
  }));
  return { edits: cut.edits, bridges: planned, pledge };
}

function noPlaceFor(islands: readonly Piece[]): string {
  const [first] = islands;
  const where = first ? `${first.label.x.toFixed(1)}, ${first.label.y.toFixed(1)} mm` : 'the sheet';
  const others = islands.length > 1 ? ` and ${islands.length - 1} more` : '';
  return `No place for a bridge was found for the island at ${where}${others}.`;
}

/** What later layers paint over: a bridge there leaves no bare shadow. */
export function hiddenOn({ stack }: Report, sheet: Sheet): Region {
  const sheets = stack.layers.map((layer) => layer.sheet);
  return union(sheets.slice(sheets.indexOf(sheet) + 1).map(({ openings }) => openings));
}

const layerBridges = new WeakMap<Report, Map<Sheet, ProvenBridges | string>>();

/** Bridges for every island of a layer at the limit; remembered, for each of its islands offers them. */
export function proveLayerBridges(report: Report, sheet: Sheet): ProvenBridges | string {
  const known = layerBridges.get(report) ?? new Map<Sheet, ProvenBridges | string>();
  layerBridges.set(report, known);
  const result =
    known.get(sheet) ??
    proveBridges(
      report,
      sheet,
      sheet.pieces.filter((piece) => piece.island),
    );
  known.set(sheet, result);
  return result;
}

function islandFindings(report: Report, islands: readonly Piece[]): Finding[] {
  return report.complete.filter(({ subject }) => subject?.kind === 'island' && islands.includes(subject.piece));
}

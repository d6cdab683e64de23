/** Bridges for islands: planned, cut into the text, and proven. */
import { changedBy, cutBridges } from '../bridges/cut-bridges';
import { planBridges, type Bridge, type PlanOptions } from '../bridges/plan';
import type { Finding } from '../checks/finding';
import { union } from '../geometry/polygons';
import type { Region } from '../geometry/region';
import type { Report } from '../report';
import { limitsOf } from '../sheet/limits';
import type { Piece, Sheet } from '../sheet/sheet';
import { applyEdits, type TextEdit } from '../text';
import { configOf } from './check';
import { prove } from './prove';

/** Which islands, and how wide a bridge in mm as cut; by default all, at the limit. */
export interface BridgeChoice {
  readonly layer?: string;
  readonly bridgeWidth?: number;
}

export interface BridgeOutcome {
  /** The text with the bridges in it; the old text where there are none. */
  readonly text: string;
  /** The same change as edits of the old text. */
  readonly edits: readonly TextEdit[];
  /** How many bridges were put in. */
  readonly bridges: number;
  /** What could not be done, a sentence each. */
  readonly refusals: readonly { readonly message: string }[];
}

/** A proven set of bridges. */
export interface ProvenBridges {
  readonly edits: readonly TextEdit[];
  readonly bridges: readonly Bridge[];
}

/** Bridges every island of the report's layers; a layer that cannot be done whole is done island by island. */
export function bridgeIslands(report: Report, choice: BridgeChoice = {}): BridgeOutcome {
  const edits: TextEdit[] = [];
  const refusals: { message: string }[] = [];
  let bridges = 0;
  for (const sheet of report.sheets) {
    if (choice.layer !== undefined && sheet.layer.name !== choice.layer) continue;
    for (const result of bridgeSheet(report, sheet, choice.bridgeWidth)) {
      if (typeof result === 'string') refusals.push({ message: `Layer "${sheet.layer.name}": ${result}` });
      else {
        edits.push(...result.edits);
        bridges += result.bridges.length;
      }
    }
  }
  return { text: applyEdits(report.text, edits), edits, bridges, refusals };
}

function bridgeSheet(report: Report, sheet: Sheet, width?: number): (ProvenBridges | string)[] {
  const islands = sheet.pieces.filter((piece) => piece.island);
  if (islands.length === 0) return [];
  const whole = width === undefined
    ? proveLayerBridges(report, sheet) : proveBridges(report, sheet, islands, { bridgeWidth: width });
  if (typeof whole !== 'string' || islands.length === 1) return [whole];
  return oneByOne(report, sheet, islands, width);
}

/** Islands that share commands cannot be edited apart from the same text: of those, the first is taken. */
function oneByOne(report: Report, sheet: Sheet, islands: readonly Piece[], width?: number): (ProvenBridges | string)[] {
  const taken: TextEdit[] = [];
  return islands.map((island) => {
    const result = proveBridges(report, sheet, [island], width === undefined ? {} : { bridgeWidth: width });
    if (typeof result === 'string') return result;
    if (result.edits.some((edit) => taken.some((other) => overlap(edit, other)))) {
      return 'An island shares its outline with one that was bridged; run again to bridge it.';
    }
    taken.push(...result.edits);
    return result;
  });
}

function overlap({ span: a }: TextEdit, { span: b }: TextEdit): boolean {
  return a.from < b.to && b.from < a.to;
}

/** How a plan is to differ from the preferred one. */
export interface BridgePlanChoice extends Pick<PlanOptions, 'count' | 'near' | 'align' | 'shortestOnly'> {
  /** mm as cut; by default the limit. */
  readonly bridgeWidth?: number;
}

/** @returns the bridges if they could be planned, cut and proven; else the sentence that says why not */
export function proveBridges(
  report: Report, sheet: Sheet, islands: readonly Piece[], { bridgeWidth, ...plan }: BridgePlanChoice = {},
): ProvenBridges | string {
  const width = (bridgeWidth ?? limitsOf(configOf(report.settings)).bridge) + sheet.kerf;
  const { bridges, unbridged } = planBridges(sheet, islands, { ...plan, width, hidden: hiddenOn(report, sheet) });
  if (unbridged.length > 0) return noPlaceFor(unbridged);
  const cut = cutBridges(sheet, bridges);
  if ('refusal' in cut) return cut.refusal;
  const within = new Map([[sheet.layer.name, changedBy(sheet, bridges)]]);
  const proof = prove(report, cut.edits, { gone: islandFindings(report, islands), within });
  return typeof proof === 'string' ? proof : { edits: cut.edits, bridges };
}

function noPlaceFor(islands: readonly Piece[]): string {
  const [first] = islands;
  const where = first ? `${first.label.x.toFixed(1)}, ${first.label.y.toFixed(1)} mm` : 'the sheet';
  const others = islands.length > 1 ? ` and ${islands.length - 1} more` : '';
  return `No place for a bridge was found for the island at ${where}${others}.`;
}

/** What later layers paint over: a bridge there leaves no bare shadow. */
function hiddenOn({ sheets }: Report, sheet: Sheet): Region {
  return union(sheets.slice(sheets.indexOf(sheet) + 1).map(({ openings }) => openings));
}

const layerBridges = new WeakMap<Report, Map<Sheet, ProvenBridges | string>>();

/** Bridges for every island of a layer at the limit; remembered, for each of its islands offers them. */
export function proveLayerBridges(report: Report, sheet: Sheet): ProvenBridges | string {
  const known = layerBridges.get(report) ?? new Map<Sheet, ProvenBridges | string>();
  layerBridges.set(report, known);
  const result = known.get(sheet) ?? proveBridges(report, sheet, sheet.pieces.filter((piece) => piece.island));
  known.set(sheet, result);
  return result;
}

function islandFindings(report: Report, islands: readonly Piece[]): Finding[] {
  return report.complete.filter(({ subject }) => subject?.kind === 'island' && islands.includes(subject.piece));
}

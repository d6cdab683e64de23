/** The bridges of a whole layer as a plan that is looked at, and perhaps changed, before it is put into the text. */
import type { BridgeStyle } from '../../../config/bridge-style';
import { stripsFor } from '../../../edits/bridge/cut';
import type { Bridge } from '../../../edits/plan/types';
import { regionOfStrip } from '../../../edits/roots/outline';
import type { Strip } from '../../../edits/strip/strip';
import type { Point } from '../../../geometry/base/curve-types';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import { add, normalise, scale, subtract } from '../../../geometry/base/vector';
import { regionContains } from '../../../geometry/boolean/index';
import type { Fix } from '../../../report/fix';
import { isRefusal, type Refusal, type Result, refuse } from '../../../report/refusal';
import type { BridgePreview, Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import { type BridgedMany, bridgeSheet } from '../bridge-islands';
import { bridgePreviewOf, manyBridgesAsChange } from '../bridges-as-change';
import { toldOfPlan } from '../bridging/along';
import { type PlannedBridge, type VerifiedBridges, withoutReport } from '../bridging/cut';
import { islandsOf, planFor, rootsOn } from '../bridging/plan';
import { BRIDGING_EFFECTS } from '../bridging/together';
import { fixResult } from '../fix-of';

export interface LayerBridges {
  /** Between pieces of the sheet as it is. */
  readonly bridges: readonly PlannedBridge[];
  /** The same as hosts show them. */
  readonly previews: readonly BridgePreview[];
  /** Undefined where no island can be bridged. */
  readonly proven: VerifiedBridges | undefined;
  /** Islands that stay loose, and why. */
  readonly left: ReadonlyMap<Piece, Refusal<VerifiedBridges>>;
}

/** The bridges that are tried first, before any is cut or proven: most often they are those that hold. */
export function sketchedBridges(report: Report, sheet: Sheet, style: BridgeStyle): BridgePreview[] {
  return planFor(report, sheet, islandsOf(sheet), { style }).bridges.map((bridge) =>
    uncutPreview(report, sheet, bridge),
  );
}

/** A bridge that was not cut yet, as hosts show it. */
export function uncutPreview(report: Report, sheet: Sheet, bridge: Bridge): BridgePreview {
  const { from, to, length, width, hiddenShare = 0 } = bridge;
  const strip = regionOfStrip(stripsFor(sheet, [bridge], rootsOn(report))[0] as Strip);
  const { name: layer, id: layerId } = sheet.layer;
  return { layer, layerId, strip, from, to, length, width: width - sheet.kerf, shown: 1 - hiddenShare };
}

/** mm beyond a bridge's end, where the piece begins that it leads to. */
const BEYOND = 2 * DRAWN_ALIKE;

/** As many islands of a layer as can be, in a style; remembered, for what is changed of it begins with it. */
export function layerBridges(report: Report, sheet: Sheet, style: BridgeStyle): LayerBridges {
  return report.session.remember(`plan of ${sheet.layer.id} in style ${style}`, () => {
    const { proven, left } = bridgeSheet(report, sheet, { style });
    const bridges = (proven?.bridges ?? []).map((bridge) => betweenPiecesOf(sheet, bridge));
    return { bridges, previews: bridges.map(bridgePreviewOf), proven: proven && withoutReport(proven), left };
  });
}

/** One that was planned when others stood already, between the pieces that are there without them. */
function betweenPiecesOf(sheet: Sheet, bridge: PlannedBridge): PlannedBridge {
  const { from, to } = bridge;
  const out = scale(normalise(subtract(to, from)) ?? { x: 1, y: 0 }, sheet.kerf / 2 + BEYOND);
  const island = pieceAt(sheet, subtract(from, out)) ?? bridge.island;
  const target = pieceAt(sheet, add(to, out)) ?? bridge.target;
  return { ...bridge, island, target };
}

function pieceAt({ pieces }: Sheet, point: Point): Piece | undefined {
  return pieces.find(({ polygon }) => regionContains([polygon], point));
}

const LAYER_PLAN = { kind: 'bridge-layer', scope: 'layer', safe: false, effects: BRIDGING_EFFECTS } as const;

/** The plan as a fix, in the words of the lightbulb. */
export function layerPlanFix(report: Report, sheet: Sheet, style: BridgeStyle): Result<Fix> {
  const { proven, left } = layerBridges(report, sheet, style);
  const [why] = left.values();
  if (!proven) return asFix(report, sheet, why ?? refuse('There is no island to bridge.'), left.size);
  return asFix(report, sheet, proven, left.size);
}

/** @param left how many islands stay loose */
export function asFix(report: Report, sheet: Sheet, result: Result<VerifiedBridges>, left: number): Result<Fix> {
  const { name, id: layerId } = sheet.layer;
  const many = isRefusal(result) ? withoutAnyway(result) : { ...result, left };
  const title = `Bridge every island in layer "${name}"`;
  const offered = { title, layerId, asked: LAYER_PLAN.effects };
  const fix = fixResult(report, LAYER_PLAN, offered, manyBridgesAsChange(many, title));
  if (isRefusal(fix) || isRefusal(result)) return fix;
  // Told, though no reason to prefer another plan: there is none that is better.
  return { ...fix, brings: [...fix.brings, ...toldOfPlan(report, result.bridges)] };
}

/** A plan that leaves new faults behind is changed on, not put in. */
function withoutAnyway({ anyway: _anyway, ...why }: Refusal<VerifiedBridges>): Refusal<BridgedMany> {
  return why;
}

/** What the page asks the server by way of the extension, and what it is answered. */
import type { LayerId } from '../engine/index';
import type { CutFigures, CutOrder } from './cutting';
import type { BridgeAtParams, BridgeOffer, BridgePlanParams, BridgeRefusal } from './index';
import type {
  LayerPlan,
  LayerPlanParams,
  LayerSketch,
  LayerSketchParams,
  PlanGhost,
  PlanGhostParams,
} from './layer-plan';
import type { PartAtParams, PartParams, PlaceAnswer } from './parts';
import type { ChangeBridgeParams, GhostAnswer, StandingBridges } from './standing-bridges';
import type { BareAfterSlip, BestOrderAnswer, LayerNecks, SlipParams, SlipSweep } from './views';

/** Questions about the document that the page shows. */
export type BenchRequest =
  | { readonly kind: 'necks'; readonly layer: LayerId }
  | { readonly kind: 'slip'; readonly places: SlipParams['places'] }
  | { readonly kind: 'sweep'; readonly layer: LayerId }
  | { readonly kind: 'bestOrder' }
  | { readonly kind: 'cutFigures' }
  | { readonly kind: 'cutOrder'; readonly layer: LayerId }
  | ({ readonly kind: 'partAt' } & Omit<PartAtParams, 'uri'>)
  | ({ readonly kind: 'part' } & Omit<PartParams, 'uri'>)
  | ({ readonly kind: 'bridgeAt' } & Omit<BridgeAtParams, 'uri'>)
  | ({ readonly kind: 'bridgePlan' } & Omit<BridgePlanParams, 'uri'>)
  | { readonly kind: 'standingBridges' }
  | ({ readonly kind: 'bridgeGhost' } & Omit<ChangeBridgeParams, 'uri'>)
  | ({ readonly kind: 'changeBridge' } & Omit<ChangeBridgeParams, 'uri'>)
  | ({ readonly kind: 'layerSketch' } & Omit<LayerSketchParams, 'uri'>)
  | ({ readonly kind: 'layerPlan' } & Omit<LayerPlanParams, 'uri'>)
  | { readonly kind: 'dropLayerPlan' }
  | ({ readonly kind: 'planGhost' } & Omit<PlanGhostParams, 'uri'>)
  /**
   * Of the extension itself: put the bridges of the last offer into the text, and keep the style of a plan in
   * `tombolo.json` where that is wanted.
   */
  | { readonly kind: 'putIn'; readonly keep?: boolean };

export interface BenchAnswers {
  readonly necks: LayerNecks;
  readonly slip: BareAfterSlip;
  readonly sweep: SlipSweep;
  readonly bestOrder: BestOrderAnswer;
  readonly cutFigures: CutFigures;
  readonly cutOrder: CutOrder;
  readonly partAt: PlaceAnswer;
  readonly part: PlaceAnswer;
  readonly bridgeAt: BridgeOffer | BridgeRefusal;
  readonly bridgePlan: BridgeOffer | BridgeRefusal;
  readonly standingBridges: StandingBridges;
  readonly bridgeGhost: GhostAnswer;
  readonly changeBridge: BridgeOffer | BridgeRefusal;
  readonly layerSketch: LayerSketch;
  readonly layerPlan: LayerPlan;
  readonly dropLayerPlan: undefined;
  readonly planGhost: PlanGhost;
  /** False where the text has changed since. */
  readonly putIn: boolean;
}

/** What the bench asks about the bridges of a whole layer before they are put in. Plain data only. */
import type { BridgeStyle } from '../config/bridge-style';
import type { LayerId } from '../engine/index';
import type { Point } from '../geometry/base/curve-types';
import type { BridgeOffer, BridgePreviewData, BridgeRefusal, DocumentParams, VersionedEdits } from './index';

/**
 * Editor to server: the bridges that are tried first for every island of a layer. Quick: planned, but not proven. Answers
 * `LayerSketch | null`.
 */
export const LAYER_SKETCH = 'tombolo/layerSketch';
/**
 * Editor to server: bridges for every island of a layer, proven. Of sketches and plans the last question counts. Answers
 * `LayerPlan | null`.
 */
export const LAYER_PLAN = 'tombolo/layerPlan';
/** Editor to server: nobody waits for the plan that was asked for last. Answers null. */
export const DROP_LAYER_PLAN = 'tombolo/dropLayerPlan';
/** Editor to server: where a bridge of a plan, and what follows it, would stand. Answers `PlanGhost | null`. */
export const PLAN_GHOST = 'tombolo/planGhost';

export interface LayerSketchParams extends DocumentParams {
  readonly layer: LayerId;
  /** Of the document that the layer is cut from: a plan is made for no other. */
  readonly version: number;
  /** By default as the settings say of the layer. */
  readonly style?: BridgeStyle;
}

export interface LayerPlanParams extends LayerSketchParams {
  /** What stands elsewhere than it was planned. */
  readonly moved?: readonly MovedInPlan[];
}

/** A bridge of a plan, by its number there, and where its middle line runs now, sheet mm. */
export interface MovedInPlan {
  readonly bridge: number;
  readonly from: Point;
  readonly to: Point;
}

export interface PlanGhostParams extends LayerPlanParams {
  readonly move: {
    readonly bridge: number;
    /** Where its middle shall be, sheet mm. */
    readonly to: Point;
    /** Whether its mirror twin and its likes stay where they are. */
    readonly apart: boolean;
  };
}

export interface LayerSketch {
  /** Of the document that the layer is cut from. */
  readonly version: number;
  readonly layer: LayerId;
  /** What it was planned in, and what the settings say of the layer. */
  readonly style: BridgeStyle;
  readonly stated: BridgeStyle;
  readonly bridges: readonly BridgePreviewData[];
}

/** All of its bridges go by their numbers; those that were moved are where they were planned. */
export interface LayerPlan extends LayerSketch {
  /** What would be put in; or why not. */
  readonly answer: BridgeOffer | BridgeRefusal;
  /** What comes with the bridges, and where they hold less well than they ought to: a sentence each. */
  readonly told: readonly string[];
  /** Islands that stay loose. */
  readonly left: readonly LeftIsland[];
  /** What keeps the style for the layer in `tombolo.json`; left out where it says so already, or where there is none. */
  readonly keep?: VersionedEdits & { readonly uri: string };
}

export interface LeftIsland {
  /** On it, sheet mm. */
  readonly at: Point;
  /** Path data as in the stack. */
  readonly outline: string;
  /** One sentence. */
  readonly reason: string;
  /** What would do, as a sentence. */
  readonly first?: string;
}

export interface PlanGhost {
  readonly version: number;
  /** The one that is moved first, then what follows it; those that have no place are left out. */
  readonly ghosts: readonly { readonly bridge: number; readonly preview: BridgePreviewData }[];
  /** Why they cannot stand so. */
  readonly reason?: string;
}

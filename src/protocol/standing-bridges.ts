/** What the bench asks about bridges that stand: which there are, and what would become of one. Plain data only. */

import type { LayerId } from '../engine/index';
import type { Point } from '../geometry/base/curve-types';
import type { BridgePreviewData, DocumentParams } from './index';

/** Editor to server: the bridges of all layers of a stack. Answers `StandingBridges | null`. */
export const STANDING_BRIDGES = 'tombolo/standingBridges';
/** Editor to server: where a bridge would stand, unproven, as a pointer drags it. Answers `GhostAnswer | null`. */
export const BRIDGE_GHOST = 'tombolo/bridgeGhost';
/** Editor to server: the same as a change of the text, proven. Answers `BridgeAnswer`. */
export const CHANGE_BRIDGE = 'tombolo/changeBridge';

/** Stable for a version of the document that the layer is cut from. */
export type BridgeId = string;

export interface StandingBridgeData {
  readonly id: BridgeId;
  readonly layer: LayerId;
  /** Sheet mm. */
  readonly centre: Point;
  /** Of length 1, from bank to bank. */
  readonly along: Point;
  /** mm as cut */
  readonly width: number;
  /** mm from bank to bank */
  readonly length: number;
  /** The document whose text draws it, and there the command that draws one of its sides. */
  readonly uri: string;
  readonly from: number;
  readonly to: number;
}

export interface StandingBridges {
  /** Of the document that was asked about. */
  readonly version: number;
  readonly bridges: readonly StandingBridgeData[];
}

/** What is to become of a bridge: gone, or at another place of its gap (sheet mm), or of another width (mm as cut). */
export type WantedBridge = { readonly remove: true } | { readonly to?: Point; readonly width?: number };

export interface ChangeBridgeParams extends DocumentParams {
  readonly layer: LayerId;
  /** Of the document that the layer is cut from: a bridge is changed for no other. */
  readonly version: number;
  readonly bridge: BridgeId;
  readonly wanted: WantedBridge;
}

/** Where the bridge would stand, and what that change is called; or one sentence that says why it cannot. */
export type GhostAnswer =
  | { readonly version: number; readonly title: string; readonly ghost: BridgePreviewData }
  | { readonly version: number; readonly reason: string };

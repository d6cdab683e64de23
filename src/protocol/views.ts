/** What the bench asks the server for its ways of looking, beyond the stack itself. Plain data only. */

import type { LayerId } from '../engine/index';
import type { Matrix } from '../geometry/base/curve-types';
import type { PictureNeck } from '../picture/scene';
import type { DocumentParams, VersionedEdits } from './index';

/** Editor to server: the necks of one layer's sheet, those within the limits too. Answers `LayerNecks | null`. */
export const NECKS = 'tombolo/necks';
/** Editor to server: the ground that slipped sheets leave bare. Answers `BareAfterSlip | null`. */
export const SLIP = 'tombolo/slip';
/** Editor to server: one sheet slips to every side by the allowance. Answers `SlipSweep | null`. */
export const SWEEP = 'tombolo/sweep';
/** Editor to server: a layer gets another place in the painting order. Answers `Reordering | null`. */
export const REORDER = 'tombolo/reorder';
/** Editor to server: the spray order that leaves the fewest islands. Answers `BestOrderAnswer | null`. */
export const BEST_ORDER = 'tombolo/bestOrder';

export interface LayerParams extends DocumentParams {
  readonly layer: LayerId;
}

export interface SlipParams extends DocumentParams {
  /** The layers that lie elsewhere than they should. */
  readonly places: readonly SlippedLayer[];
}

export interface SlippedLayer {
  readonly layer: LayerId;
  /** From where the layer should lie to where it lies, in sheet mm. */
  readonly place: Matrix;
}

export interface ReorderParams extends LayerParams {
  /** The version that the order was shown for. */
  readonly version: number;
  /** The layer whose place it shall have. */
  readonly to: LayerId;
}

export interface LayerNecks extends VersionOf {
  readonly layer: LayerId;
  readonly necks: readonly PictureNeck[];
}

export interface BareAfterSlip extends VersionOf {
  /** Between colours: path data as in the stack. */
  readonly seams: string;
  readonly places: number;
  /** mm² of them */
  readonly area: number;
  /** mm² of all that was painted and is bare now, the edges of what moved included. */
  readonly whole: number;
}

export interface SlipSweep extends VersionOf {
  readonly layer: LayerId;
  /** mm */
  readonly slip: number;
  /** mm² of bare ground between colours, by direction: the first to the right, then on clockwise. */
  readonly areas: readonly number[];
  /** All ground that may come bare: path data as in the stack. */
  readonly seams: string;
  /** mm: the farthest slip to any side that lays nothing bare; `slip` where that does not either. */
  readonly safe: number;
}

/** Edits of one document that change the order, or one sentence that says why there are none. */
export type Reordering = (VersionedEdits & { readonly uri: string }) | (VersionOf & { readonly refusal: string });

/** What the best spray order is, or one sentence that says why none can be found. */
export type BestOrderAnswer = BestOrder | (VersionOf & { readonly refusal: string });

export interface BestOrder extends VersionOf {
  /** All islands of the stack. */
  readonly islands: number;
  /** Those that no later paint covers: as the order stands, and in the best one. */
  readonly before: number;
  readonly after: number;
  /** The best order, first sprayed first. */
  readonly order: readonly OrderedLayer[];
  /** The edits that make it; undefined where the order is the best already. */
  readonly change: Reordering | undefined;
}

export interface OrderedLayer {
  readonly name: string;
  /** Where it is now, counted from 1; undefined where it stays between its neighbours. */
  readonly now: number | undefined;
}

/** Of the document that was asked about. */
interface VersionOf {
  readonly version: number;
}

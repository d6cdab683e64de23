/** What server, editor and bench say about single parts of the picture. Plain data only. */

import type { LayerId } from '../engine/index';
import type { Point } from '../geometry/base/curve-types';
import type { DocumentParams } from './index';

/** Editor to server: what lies at a place of the picture. Answers `PlaceAnswer | null`. */
export const PART_AT = 'tombolo/partAt';
/** Editor to server: one part of a layer by its number. Answers `PlaceAnswer | null`. */
export const PART = 'tombolo/part';

/** A `tie` is a narrow place of the material, a `slot` one of an opening; the `sheet` is what is left beside them. */
export type PartKind = 'opening' | 'island' | 'tie' | 'slot' | 'sheet';

/** Where one layer's sheet lies under the pointer. */
export interface LayerPlace {
  readonly layer: LayerId;
  /** mm of that sheet */
  readonly point: Point;
}

export interface PartAtParams extends DocumentParams {
  /** The uppermost first: the first that has something there is meant. */
  readonly places: readonly LayerPlace[];
  /** mm: how near to a narrow place, an edge or an outline point is near enough. */
  readonly reach: number;
  /** Whether the sheet itself is a part, too: where sheets are shown, not their paint. */
  readonly sheets: boolean;
}

export interface PartParams extends DocumentParams {
  readonly layer: LayerId;
  /** Counted from 0; any whole number, in rounds. */
  readonly number: number;
}

export interface PlaceAnswer {
  /** The version of the document that was asked about. */
  readonly version: number;
  readonly part: PickedPart | undefined;
  /** The nearest outline point, else the nearest place of an edge, within reach. */
  readonly snap: SnapPoint | undefined;
}

export interface PickedPart {
  readonly kind: PartKind;
  readonly layer: LayerId;
  /** Its number among the parts of the layer, and how many there are; for `sheet` both are 0. */
  readonly number: number;
  readonly count: number;
  /** Path data as in the stack; a line across for narrow places; empty for the sheet. */
  readonly outline: string;
  /** A place on it, in mm of its sheet. */
  readonly at: Point;
  /** Of the upright box around it, in mm. */
  readonly width: number;
  readonly height: number;
  /** mm²; 0 for narrow places */
  readonly area: number;
  /** mm of cut line; 0 for narrow places */
  readonly cutLength: number;
  /** mm as cut, for narrow places. */
  readonly across: number | undefined;
  /** The document whose text draws it. */
  readonly uri: string;
  readonly version: number;
  /** The text: of the edge that the place is near to, else of the contour. Offsets into that document. */
  readonly from: number;
  readonly to: number;
}

export interface SnapPoint extends LayerPlace {
  /** A `point` is where two of the artist's curves meet. */
  readonly kind: 'point' | 'edge';
}

/** Sheets as they are cut. Millimetres; page coordinates have their origin at the page's upper left corner, y down. */
import type { Curve, Point } from '../geometry/base/curve-types';
import type { RoundHole } from './round-holes';

export type ContourKind =
  /** The outer edge of an opening. */
  | 'opening'
  /** The edge of a loose piece inside an opening. */
  | 'piece'
  /** A register mark. */
  | 'mark'
  /** The sheet's own edge. */
  | 'edge';

/** One line that is cut in one go. */
export interface CutContour {
  readonly kind: ContourKind;
  /** End to end, in the course of the cut. */
  readonly curves: readonly Curve[];
  /** Whether it ends where it begins: not with a lead-in or an overcut. */
  readonly closed: boolean;
  /** mm */
  readonly length: number;
}

/** One layer's sheet, ready to be written. */
export interface CutSheet {
  /** From 1, in painting order; of how many. */
  readonly number: number;
  readonly count: number;
  /** As the artist calls the layer. */
  readonly name: string;
  /** `#rrggbb` */
  readonly paint: string;
  readonly width: number;
  readonly height: number;
  /** The page's origin in sheet mm. */
  readonly origin: Point;
  /** In the order of cutting, each from where it is entered. */
  readonly contours: readonly CutContour[];
  /** Drawn with a pen or engraved, never cut: each a line through points. */
  readonly pen: readonly (readonly Point[])[];
  /** mm between the cuts, from the page's origin and back to it. */
  readonly travel: number;
  /** What the artist should know: one sentence each. */
  readonly notes: readonly string[];
}

/** What is asked for. Lengths in mm. */
export interface CutOptions {
  /** The width that the tool takes away: the path then runs half of it inside each opening. */
  readonly kerf?: number;
  /** Whether the sheet's own edge is cut; it is unless this says no. */
  readonly edge?: boolean;
  /** Let the cut begin so far off the line, on the side that falls away. */
  readonly leadIn?: number;
  /** Let it go on so far beyond where it began. */
  readonly overcut?: number;
  /** Write number, paint, title and an arrow on the sheet. */
  readonly labels?: boolean;
  /** Register holes that are cut beside what is drawn, in sheet mm. */
  readonly holes?: readonly RoundHole[];
  /** Notch the sheet's edge, so that it can be told. */
  readonly notches?: boolean;
}

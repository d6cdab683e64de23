/** What is found between the layers of a stack. Indices of layers are those of the stack: the first painted is 0. */
import type { Point } from '../geometry/base/curve-types';
import type { Box } from '../geometry/base/polygon-types';
import type { Segment } from '../geometry/spatial/segment-distance';

/** Two layers, the one painted earlier first. */
export interface Neighbours {
  readonly earlier: number;
  readonly later: number;
}

/** A stretch of the seam of two neighbours that a slip of less than `Seams.slip` opens. */
export interface ShortOverlap extends Neighbours {
  /** The one of the two whose slip opens it first. */
  readonly slipping: number;
  /**
   * mm: the shortest slip of either sheet, in any direction, that lets bare ground show; 0 where the colours only
   * touch.
   */
  readonly width: number;
  /** Where bare ground first shows. */
  readonly at: Point;
  /** The place on the edge of the sheet that slips which comes to lie there. */
  readonly facing: Point;
  /** mm along the seam */
  readonly length: number;
  /** Its course, as both sheets see it; in no particular order. */
  readonly course: readonly Segment[];
  /** Whether it ends where bare ground is nearer than twice the slip, as at the crossing of two outlines. */
  readonly runsOut: boolean;
}

/** Bare ground between two neighbours. */
export interface BareGap extends Neighbours {
  /** mm, at its narrowest; of a gap that is closed all round and nowhere as wide as a slip, at its widest. */
  readonly width: number;
  /** Whether it is closed all round. */
  readonly closed: boolean;
  /** The facing places on the edges of the two neighbours' openings. */
  readonly onEarlier: Point;
  readonly onLater: Point;
  /** mm along its course */
  readonly length: number;
  /** Round the edges on both sides of it. */
  readonly extent: Box;
}

/** An opening whose paint is nowhere seen. */
export interface HiddenOpening {
  readonly layer: number;
  /** Which of the layer's openings. */
  readonly opening: number;
}

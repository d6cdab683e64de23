/** What is measured between the layers of a stack: overlaps that are too short, bare gaps, buried openings. */
import type { Point } from '../geometry/curve';
import { findBuried, type Buried } from './buried';
import type { Sheet } from './sheet';

/** Indices of layers are those of the stack: the first painted is 0. */
export interface Seams {
  /** mm: how far a sheet may land from where it should; shorter overlaps and narrower gaps are listed. */
  readonly slip: number;
  readonly overlaps: readonly ShortOverlap[];
  readonly gaps: readonly BareGap[];
  readonly buried: readonly BuriedOpening[];
  /** What the next run can use of this one. */
  readonly memory: Memory;
}

/** Two layers, the one painted earlier first. */
export interface Neighbours {
  readonly earlier: number;
  readonly later: number;
}

/** A stretch of the seam of two neighbours that a slip of less than `Seams.slip` opens. */
export interface ShortOverlap extends Neighbours {
  /** mm: the shortest slip of either sheet, in any direction, that lets bare ground show; 0 where the colours only touch. */
  readonly width: number;
  /** Where bare ground first shows. */
  readonly at: Point;
  /** The place on the edge of the sheet that slips which comes to lie there. */
  readonly facing: Point;
  /** mm along the seam */
  readonly length: number;
}

/** Bare ground between two neighbours. */
export interface BareGap extends Neighbours {
  /** mm, at its narrowest; of a gap that is closed all round, at its widest. */
  readonly width: number;
  /** The facing places on the edges of the two neighbours' openings. */
  readonly onEarlier: Point;
  readonly onLater: Point;
  /** mm along its course */
  readonly length: number;
}

/** An opening whose paint is nowhere seen. */
export interface BuriedOpening {
  readonly layer: number;
  /** Which of the layer's openings. */
  readonly opening: number;
}

export interface Memory {
  readonly buried: Buried;
}

/**
 * @param sheets in painting order
 * @param slip mm
 * @param earlier of an earlier state of the stack: kept where it still holds
 */
export function measureSeams(sheets: readonly Sheet[], slip: number, earlier?: Seams): Seams {
  const buried = findBuried(sheets.map(({ openings }) => openings), earlier?.memory.buried);
  return { slip, overlaps: [], gaps: [], buried: buried.found, memory: { buried } };
}

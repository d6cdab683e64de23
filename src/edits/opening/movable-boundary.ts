/** What outlines are moved by: a boundary that gives way, and how far. */
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import type { BoundaryPlace } from './facing';

/** Which of two banks that face each other gives way. */
export type Bank = 'both' | 'from' | 'to';

/** A boundary that gives way, some of it farther than the rest. */
export interface MovableBoundary {
  /** Sheet mm: what of the drawing may have to move. */
  readonly extent: Box;
  /** The boundary's places at a point, one for each direction that it looks to there. */
  placesAt(point: Point): BoundaryPlace[];
  /** The outward normal at a point of a curve, of the two given; undefined where the curve is no boundary there. */
  outwardAt(point: Point, normal: Point): Point | undefined;
  /** mm, outward. @param bank where two stretches face each other, which of them gives way */
  needAt(place: BoundaryPlace, bank: Bank): number;
}

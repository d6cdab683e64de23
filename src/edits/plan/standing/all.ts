/** All bridges of a sheet that are in its drawing already. */

import type { Point } from '../../../geometry/base/curve-types';
import { PLAINLY_BESIDE } from '../../../geometry/base/tolerances';
import { distance, interpolate } from '../../../geometry/base/vector';
import { buildSegmentIndex } from '../../../geometry/spatial/segment-index';
import type { ThinPlace } from '../../../sheet/thin-places';
import type { Sheet } from '../../../sheet/types';
import type { Side } from '../../bridge/rejoin-fill';
import { type StandingBridge, standingBridgeAt } from './detect';
import { middlesOfCutSides } from './straight-sides';

/**
 * What is longer than so many of its widths is a web of the picture, as the ground between two brush strokes: the sooner
 * where it was not cut with corners. What is shorter than this share of its width is where two points nearly meet.
 * Common practice, no source.
 */
const LONGEST_CUT = 25;
const LONGEST_ROUNDED = 12;
const SHORTEST = 0.3;
/** The shorter of two sides is at least this share of the longer one. */
const ALIKE = 0.4;
/** mm: middles nearer than this are of one bridge. */
const SAME_PLACE = PLAINLY_BESIDE;

/**
 * The bridges of a sheet, row by row from the upper left corner.
 * @param widest mm, as drawn: wider necks are parts of the picture
 * @param narrow places of the material that are known to be narrow: there a bridge may have rounded sides
 */
export function standingBridges(sheet: Sheet, widest: number, narrow: readonly ThinPlace[]): StandingBridge[] {
  const edges = buildSegmentIndex(sheet.material);
  const found: StandingBridge[] = [];
  const look = (place: Point, longest: number): void => {
    const bridge = standingBridgeAt(sheet, place, widest, edges);
    if (!bridge || !isDeliberate(bridge, longest)) return;
    if (!found.some((other) => isSame(other, bridge))) found.push(bridge);
  };
  for (const middle of middlesOfCutSides(edges, widest)) look(middle, LONGEST_CUT);
  for (const { kind, from, to } of narrow) if (kind === 'neck') look(interpolate(from, to, 0.5), LONGEST_ROUNDED);
  return found.sort(({ centre: a }, { centre: b }) => a.y - b.y || a.x - b.x);
}

/** mm, from bank to bank: along the longer side. */
export function lengthOf({ sides }: StandingBridge): number {
  return Math.max(...sides.map(lengthOfSide));
}

function isDeliberate(bridge: StandingBridge, longest: number): boolean {
  const [shorter, longer] = [Math.min(...bridge.sides.map(lengthOfSide)), lengthOf(bridge)];
  return shorter >= ALIKE * longer && shorter >= SHORTEST * bridge.width && longer <= longest * bridge.width;
}

const lengthOfSide = ([from, to]: Side): number => distance(from, to);

const isSame = (a: StandingBridge, b: StandingBridge): boolean => distance(a.centre, b.centre) < SAME_PLACE;

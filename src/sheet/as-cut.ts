/** What the tool makes of a sheet: a kerf k takes k/2 from every edge. */

import { growBox } from '../geometry/base/ring';
import { type CachedCluster, resultOf } from '../geometry/boolean/cluster-cache';
import { complementInBox, offsetByCluster, type PinchSplit, splitAtPinchPointsAgain } from '../geometry/boolean/index';
import { reuseUnchanged } from '../geometry/polygon/diff';
import { type HairlineSplit, splitAtHairlines } from './hairlines';
import { piecesOf } from './pieces';
import type { Piece, SheetMeasures } from './types';

export interface CutSheet {
  readonly pieces: readonly Piece[];
  readonly memory: CutMemory;
}

/** What a later cut of the same sheet can take over. */
export interface CutMemory {
  /** The openings, wider by half the kerf a side; none where there is no kerf. */
  readonly widened: readonly CachedCluster[];
  /** The material as cut, and where it held together by nothing. */
  readonly parted: PinchSplit;
  /** The same, and where it held together by next to nothing. */
  readonly held: HairlineSplit;
}

/**
 * The pieces as cut. It is the openings that are widened, for they stand apart in small clusters, where the material is
 * one.
 * @param previous of the same sheet before an edit, under the same configuration; what did not change is taken from it
 */
export function sheetAsCut(
  { openings, material, frame, kerf }: Pick<SheetMeasures, 'openings' | 'material' | 'frame' | 'kerf'>,
  previous: CutSheet | undefined,
): CutSheet {
  const known = previous?.memory.parted;
  const rim = growBox(frame, -kerf / 2);
  const widened = kerf > 0 ? offsetByCluster(openings, kerf / 2, 'round', undefined, previous?.memory.widened) : [];
  // The complement is made anew as a whole: no key tells which of its rings are as they were.
  const cut = kerf > 0 ? reuseUnchanged(complementInBox(resultOf(widened), rim), known?.given ?? []) : material;
  const parted = splitAtPinchPointsAgain(cut, known);
  const held = splitAtHairlines(parted.result, previous?.memory.held);
  return { pieces: piecesOf(held.result, rim, previous?.pieces), memory: { parted, held, widened } };
}

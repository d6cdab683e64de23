/** What the tool makes of a sheet: a kerf k takes k/2 from every edge. */

import { growBox } from '../geometry/base/ring';
import { type CachedCluster, resultOf } from '../geometry/boolean/cluster-cache';
import { complementInBox, offsetByCluster, type PinchSplit, splitAtPinchPointsAgain } from '../geometry/boolean/index';
import { reuseUnchanged } from '../geometry/polygon/diff';
import { piecesOf } from './pieces';
import type { Piece, Sheet } from './types';

export interface CutSheet {
  readonly pieces: readonly Piece[];
  readonly parted: PinchSplit;
  readonly widened: readonly CachedCluster[];
}

/**
 * The pieces as cut. It is the openings that are widened, for they stand apart in small clusters, where the material is
 * one.
 * @param earlier a sheet of the same configuration; what did not change is taken from it
 */
export function sheetAsCut(
  { openings, material, frame, kerf }: Pick<Sheet, 'openings' | 'material' | 'frame' | 'kerf'>,
  earlier: Sheet | undefined,
): CutSheet {
  const known = earlier?.cache.parted;
  const rim = growBox(frame, -kerf / 2);
  const widened = kerf > 0 ? offsetByCluster(openings, kerf / 2, 'round', undefined, earlier?.cache.widened) : [];
  const cut = kerf > 0 ? reuseUnchanged(complementInBox(resultOf(widened), rim), known?.given ?? []) : material;
  const parted = splitAtPinchPointsAgain(cut, known);
  return { pieces: piecesOf(parted.result, rim, earlier?.pieces), parted, widened };
}

/** What the tool makes of a sheet: a kerf k takes k/2 from every edge. */
import { recognise } from '../geometry/polygon/diff';
import { complementInBox, offsetByCluster, partAtPinches, type Parted } from '../geometry/boolean';
import { growBox } from '../geometry/base/ring';
import { resultOf, type SolvedCluster } from '../geometry/boolean/cluster-cache';
import { piecesOf } from './pieces';
import type { Piece, Sheet } from './types';

export interface CutSheet {
  readonly pieces: readonly Piece[];
  readonly parted: Parted;
  readonly widened: readonly SolvedCluster[];
}

/**
 * The pieces as cut. It is the openings that are widened, for they stand apart in small clusters, where the material is
 * one.
 * @param earlier a sheet of the same configuration; what did not change is taken from it
 */
export function cutSheet(
  { openings, material, frame, kerf }: Pick<Sheet, 'openings' | 'material' | 'frame' | 'kerf'>,
  earlier: Sheet | undefined,
): CutSheet {
  const known = earlier?.kept.parted;
  const rim = growBox(frame, -kerf / 2);
  const widened = kerf > 0 ? offsetByCluster(openings, kerf / 2, 'round', undefined, earlier?.kept.widened) : [];
  const cut = kerf > 0 ? recognise(complementInBox(resultOf(widened), rim), known?.given ?? []) : material;
  const parted = partAtPinches(cut, known);
  return { pieces: piecesOf(parted.result, rim, earlier?.pieces), parted, widened };
}

/** A strip of material across an opening: commonly from an island to what it shall hang on. */
import type { Point } from '../../geometry/base/curve-types';
import type { Piece } from '../../sheet/types';

export interface Bridge {
  /** The piece that it leaves. */
  readonly island: Piece;
  /** On that piece's boundary, sheet mm. */
  readonly from: Point;
  /** On the other side of the opening, sheet mm. */
  readonly to: Point;
  /** mm, as drawn: the width as cut plus the kerf. */
  readonly width: number;
  /** mm, from `from` to `to`. */
  readonly length: number;
  /** Which share of it a later layer paints over, 0..1; undefined where that was not asked. */
  readonly hiddenShare?: number;
}

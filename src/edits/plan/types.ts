/** A strip of material across an opening: commonly from an island to what it shall hang on. */
import type { Point } from '../../geometry/base/curve-types';
import type { Region } from '../../geometry/base/polygon-types';
import type { Bending } from '../../sheet/lift/index';
import type { Piece } from '../../sheet/types';

export interface Bridge {
  /** The piece that it leaves. */
  readonly island: Piece;
  /** The piece that it leads to. */
  readonly target: Piece;
  /** On the island's boundary, sheet mm. */
  readonly from: Point;
  /** On the other side of the opening, sheet mm. */
  readonly to: Point;
  /** mm, as drawn: the width as cut plus the kerf. Long bridges, and those that hold much, are wider than the least. */
  readonly width: number;
  /** mm, from `from` to `to`. */
  readonly length: number;
  /** Which share of it a later layer paints over, 0..1; undefined where that was not asked. */
  readonly hiddenShare?: number;
}

/** Why an island has no bridge: its gap is too wide all round, or nowhere takes a straight bridge of the least width. */
export type Unbridged = 'too-far' | 'no-place';

export interface PlanOptions {
  /** mm, as drawn: the least width of a bridge plus the kerf. */
  readonly width: number;
  /** No bridge is wider than that, however long it is. */
  readonly exact?: boolean;
  /** Another sheet paints over them: none is wider or more like another than it must be, and they may be of any length. */
  readonly unseen?: boolean;
  /** How many for each island that is asked for; by default its size decides, as it does for those on the way. */
  readonly count?: 'auto' | number;
  /**
   * Only bridges that leave the islands asked for: to what hangs on the frame where that is next to them, else to the
   * piece around them, which may be loose itself.
   */
  readonly alone?: boolean;
  /** So many more for each island than its size asks for. */
  readonly more?: number;
  /** A place that the artist chose, in sheet mm: the first bridge of each island asked for goes as near to it as can be. */
  readonly near?: Point;
  readonly align?: 'none' | 'vertical' | 'level';
  /** The shortest ones, wherever they are: an island may hinge. */
  readonly shortestOnly?: boolean;
  /** What later layers paint over, in sheet mm: bridges there leave no bare shadow, so they are preferred. */
  readonly hidden?: Region;
  /** Places under later paint come before nearly all others. */
  readonly preferHidden?: boolean;
  /** Bridges of another sheet, as the same `sheet` plans them, and how far, in mm, to keep away from them. */
  readonly apartFrom?: { readonly bridges: readonly Bridge[]; readonly distance: number };
  /** Every place round an island is looked at, not only the shortest way of each direction: takes a few times as long. */
  readonly thorough?: boolean;
  /** What bends the sheet, and how stiff it is; by default the usual material under the usual can. */
  readonly bending?: Bending;
}

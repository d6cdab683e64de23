/** Root fillets: where a side of a bridge meets a bank, an arc takes the place of the sharp inner corner. Sheet mm. */
import type { Point } from '../../geometry/base/curve-types';
import type { Polygon } from '../../geometry/base/polygon-types';
import { ringOfPoints } from '../../geometry/base/ring';

/** The material that is added in one inner corner, at one of a bridge's four roots. */
export interface RootFillet {
  /** Where the strip's side meets the bank. */
  readonly corner: Point;
  /** Where the arc leaves the bank, and the bank's points on the way there. */
  readonly onBank: Point;
  readonly bank: readonly Point[];
  /** Where the arc meets the strip's side. */
  readonly onSide: Point;
  /** Of the arc; it lies in the opening. */
  readonly centre: Point;
  readonly radius: number;
}

/** The corner with its two tangents: the fillet, and beyond its arc a little of the opening. */
export function polygonAround({ corner, bank, onBank, onSide }: RootFillet): Polygon {
  return { outer: ringOfPoints([corner, ...bank, onBank, onSide]), holes: [] };
}

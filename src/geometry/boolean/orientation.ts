/** On which side of a line a point lies, decided exactly. */
import { orient2d } from 'robust-predicates';

/**
 * Positive when c lies on that side of the line from a to b to which a quarter turn from +x to +y points (clockwise on
 * the screen), 0 exactly when the three are on one line. Shewchuk's adaptive predicate (robust-predicates).
 */
export function orientation(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return -orient2d(ax, ay, bx, by, cx, cy);
}

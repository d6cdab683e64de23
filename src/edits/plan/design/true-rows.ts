/** Rows that are letters by all that is known of the layer. */
import type { Point } from '../../../geometry/base/curve-types';
import { cross, dot } from '../../../geometry/base/vector';
import type { LetterRow, Likeness, Mirror } from './types';

/** Sine of the angle within which two directions are one. */
const SAME_DIRECTION = 0.05;

/** Letters are repeated upright, or upside down as n and u are; petals and spokes are turned by other angles. */
export function withoutTurned(rows: readonly LetterRow[], alike: readonly Likeness[]): LetterRow[] {
  const turned = alike.flatMap(({ members }) =>
    members.some(({ motion }) => Math.abs(motion.b) > SAME_DIRECTION) ? members.map(({ piece }) => piece) : [],
  );
  const isTurned = new Set(turned);
  return rows.filter(({ counters }) => !counters.some(({ piece }) => isTurned.has(piece)));
}

/** Where the whole is mirrored about a slanted axis as well, upright bridges would not be. */
export function withoutMirrored(rows: readonly LetterRow[], mirrors: readonly Mirror[]): LetterRow[] {
  const axes = mirrors.filter(({ whole }) => whole).map(({ along }) => along);
  const agrees = (stems: Point) => (axis: Point) =>
    Math.abs(cross(stems, axis)) < SAME_DIRECTION || Math.abs(dot(stems, axis)) < SAME_DIRECTION;
  return rows.filter(({ along }) => axes.every(agrees(along)));
}

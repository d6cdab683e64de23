/** How a corner of an outline moves, so that both of its sides come to lie where they must. Millimetres. */
import type { Point } from '../../geometry/base/curve-types';
import { add, cross, dot, normalise, scale, vectorLength } from '../../geometry/base/vector';

/** Along `outward` a corner must move by `need` mm at least. */
export interface Pull {
  readonly outward: Point;
  readonly need: number;
}

/** What meets in a corner: directions in the course of the outline, and to the side that gives way. */
export interface Corner {
  readonly into: Point;
  readonly out: Point;
  readonly before: Pull | undefined;
  readonly after: Pull | undefined;
}

/** Where the end of the one side and the start of the other go: the same place, unless a point becomes blunt. */
export interface CornerMove {
  readonly end: Point;
  readonly start: Point;
}

const NONE: Point = { x: 0, y: 0 };
const ROUNDS = 60;
/** In widths: a corner that would have to move farther is too sharp for that. */
const FARTHEST = 1.5;

/**
 * @param exact whether each side is to move by just what it must
 * @param pulls of all directions in which the corner looks, its sides' included
 * @returns undefined where it cannot be
 */
export function moveOfCorner(
  corner: Corner,
  pulls: readonly Pull[],
  width: number,
  exact: boolean,
): CornerMove | undefined {
  const blunt = bluntEnd(corner, width);
  if (blunt) return blunt;
  let by = (exact ? bothSides(corner) : undefined) ?? NONE;
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const { outward, need } of pulls) {
      const short = need - dot(by, outward);
      if (short > 0) by = add(by, scale(outward, short));
    }
  }
  return vectorLength(by) <= FARTHEST * width ? { end: by, start: by } : undefined;
}

/** Both sides are moved by exactly what they must, so that one that need not move goes on in its own line. */
function bothSides({ before, after }: Corner): Point | undefined {
  if (!before || !after) return undefined;
  const determinant = cross(before.outward, after.outward);
  if (Math.abs(determinant) < LEAST_ANGLE) return undefined;
  return {
    x: (before.need * after.outward.y - after.need * before.outward.y) / determinant,
    y: (after.need * before.outward.x - before.need * after.outward.x) / determinant,
  };
}

/** Sine of the angle below which sides go on into each other. */
const LEAST_ANGLE = 0.4;

/** An opening that runs out into a point ends as wide as it must be, in place of the point. */
function bluntEnd({ into, out, before, after }: Corner, width: number): CornerMove | undefined {
  if (!before || !after || !(before.need > 0.25 * width && after.need > 0.25 * width)) return undefined;
  const isPoint = cross(into, out) * cross(into, before.outward) < 0 && dot(into, out) < -0.3;
  const along = normalise({ x: into.x - out.x, y: into.y - out.y });
  if (!isPoint || !along) return undefined;
  const across = { x: -along.y, y: along.x };
  const half = scale(across, dot(across, before.outward) > 0 ? width / 2 : -width / 2);
  return { end: half, start: scale(half, -1) };
}

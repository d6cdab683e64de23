/**
 * The bank of a gap where a bridge stood: from one cut end of the artist's curve to the other, as smooth as they are.
 */
import type { Curve, Point } from '../../geometry/base/curve-types';
import { add, distance, dot, normalise, scale, subtract } from '../../geometry/base/vector';

/** Cosine of the angle below which an end goes on straight ahead. */
const COLLINEAR_COSINE = Math.cos((0.05 * Math.PI) / 180);
/**
 * Cosine of the angle above which the ends are not those of one smooth curve: where the roots were rounded, the ends are up to
 * twice as far from each other, and a curve turns farther.
 */
const CORNER_COSINE = { square: Math.cos((50 * Math.PI) / 180), rounded: Math.cos((75 * Math.PI) / 180) };

/**
 * A line between ends that point at each other, else the cubic that has the tangents of both ends. Its handles are
 * those of the circular arc that turns as far: 4/3·tan(θ/4) radii for a turn of θ (common formula, from memory).
 * @param startTangent of length 1, in the course of the outline, as is `endTangent`
 * @param roots of the bridge that stood there
 * @returns undefined where there is nothing between the ends
 */
export function blendCurve(
  start: Point,
  startTangent: Point,
  end: Point,
  endTangent: Point,
  roots: 'square' | 'rounded' = 'square',
): Curve | undefined {
  const ahead = normalise(subtract(end, start));
  if (!ahead) return undefined;
  const line: Curve = { kind: 'line', start, end };
  const [out, into] = [dot(startTangent, ahead), dot(endTangent, ahead)];
  const corner = CORNER_COSINE[roots];
  if ((out > COLLINEAR_COSINE && into > COLLINEAR_COSINE) || out < corner || into < corner) return line;
  const turn = Math.acos(Math.max(-1, Math.min(1, dot(startTangent, endTangent))));
  const share = turn < 1e-6 ? 1 / 3 : (2 / 3) * (Math.tan(turn / 4) / Math.sin(turn / 2));
  const handle = share * distance(start, end);
  return {
    kind: 'cubic',
    start,
    end,
    control1: add(start, scale(startTangent, handle)),
    control2: subtract(end, scale(endTangent, handle)),
  };
}

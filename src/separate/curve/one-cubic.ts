/**
 * One line or one cubic through a stretch of a chain.
 * P. J. Schneider, "An algorithm for automatically fitting digitized curves", Graphics Gems, 1990: least squares for the
 * lengths of the two tangents, and better parameters by Newton's method in turns.
 */
import { defined } from '../../base/defined';
import type { Cubic, Line, Point } from '../../geometry/base/curve-types';
import { chordLength, xOf, yOf } from './chain';

const ROUNDS = 6;

/** A fit that is so many times too far off does not get there. */
const HOPELESS = 4;

/** Lines are drawn a little better than curves: an edge that bends is seen. */
const LINE_SHARE = 0.8;

/** Of the chain's length: a tangent is no longer than so many times it, */
const LONGEST = 3;
/** nor shorter than so much of the chord. */
const SHORTEST = 1e-3;

/** Points may lie off along the curve rather than across it; that counts so much. */
const ALONG = 0.15;

/**
 * @param from and `to`: the first and last point
 * @param tangent direction at the start, `back` at the end, pointing into the stretch; each of length one
 * @returns undefined where some point would lie farther off than `tolerance`
 */
export function fitOne(
  chain: Float64Array,
  from: number,
  to: number,
  tangent: Point,
  back: Point,
  tolerance: number,
): Line | Cubic | undefined {
  const start = { x: xOf(chain, from), y: yOf(chain, from) };
  const end = { x: xOf(chain, to), y: yOf(chain, to) };
  if (isStraight(chain, from, to, LINE_SHARE * tolerance)) return { kind: 'line', start, end };
  const { parameters, length } = chordParameters(chain, from, to);
  for (let round = 0; round < ROUNDS; round += 1) {
    const cubic = leastSquares(chain, from, parameters, { start, end, tangent, back, length });
    const hopeless = round > 0 ? HOPELESS * tolerance : Infinity;
    const worst = improve(chain, from, parameters, cubic, hopeless);
    if (worst <= tolerance) return cubic;
    if (worst > hopeless) return undefined;
  }
  return undefined;
}

function isStraight(chain: Float64Array, from: number, to: number, tolerance: number): boolean {
  const length = chordLength(chain, from, to);
  if (length === 0) return false;
  const [x, y] = [xOf(chain, from), yOf(chain, from)];
  const [dx, dy] = [(xOf(chain, to) - x) / length, (yOf(chain, to) - y) / length];
  for (let at = from + 1; at < to; at += 1) {
    const u = xOf(chain, at) - x;
    const v = yOf(chain, at) - y;
    if (Math.abs(u * dy - v * dx) > tolerance) return false;
    // A chain that turns back on itself is no line.
    const along = u * dx + v * dy;
    if (along < -tolerance || along > length + tolerance) return false;
  }
  return true;
}

function chordParameters(chain: Float64Array, from: number, to: number): { parameters: Float64Array; length: number } {
  const parameters = new Float64Array(to - from + 1);
  let length = 0;
  for (let at = from + 1; at <= to; at += 1) {
    length += chordLength(chain, at - 1, at);
    parameters[at - from] = length;
  }
  if (length > 0) for (let i = 0; i < parameters.length; i += 1) parameters[i] = defined(parameters[i]) / length;
  return { parameters, length };
}

interface Ends {
  readonly start: Point;
  readonly end: Point;
  readonly tangent: Point;
  readonly back: Point;
  /** Of the chain. */
  readonly length: number;
}

/** The cubic whose tangents have the best lengths for the parameters. */
function leastSquares(
  chain: Float64Array,
  from: number,
  parameters: Float64Array,
  { start, end, tangent, back, length }: Ends,
): Cubic {
  let [aa, ab, bb, ar, br] = [0, 0, 0, 0, 0];
  const dot = tangent.x * back.x + tangent.y * back.y;
  for (let i = 0; i < parameters.length; i += 1) {
    const t = defined(parameters[i]);
    const s = 1 - t;
    const [b0, b1, b2, b3] = [s * s * s, 3 * t * s * s, 3 * t * t * s, t * t * t];
    const rx = xOf(chain, from + i) - start.x * (b0 + b1) - end.x * (b2 + b3);
    const ry = yOf(chain, from + i) - start.y * (b0 + b1) - end.y * (b2 + b3);
    aa += b1 * b1;
    ab += b1 * b2 * dot;
    bb += b2 * b2;
    ar += b1 * (tangent.x * rx + tangent.y * ry);
    br += b2 * (back.x * rx + back.y * ry);
  }
  const determinant = aa * bb - ab * ab;
  let along = (ar * bb - br * ab) / determinant;
  let against = (aa * br - ab * ar) / determinant;
  const least = SHORTEST * Math.hypot(end.x - start.x, end.y - start.y);
  const usual = along > least && against > least && along < LONGEST * length && against < LONGEST * length;
  if (!usual) along = against = length / 3;
  return {
    kind: 'cubic',
    start,
    control1: { x: start.x + along * tangent.x, y: start.y + along * tangent.y },
    control2: { x: end.x + against * back.x, y: end.y + against * back.y },
    end,
  };
}

/**
 * Moves each parameter nearer to its point, and tells how far the farthest point lies from the curve.
 * @param hopeless where some point lies farther off, the others do not matter any more
 */
function improve(chain: Float64Array, from: number, parameters: Float64Array, cubic: Cubic, hopeless: number): number {
  const { start, control1, control2, end } = cubic;
  let worst = 0;
  for (let i = 1; i + 1 < parameters.length; i += 1) {
    const t = defined(parameters[i]);
    const s = 1 - t;
    const [b0, b1, b2, b3] = [s * s * s, 3 * t * s * s, 3 * t * t * s, t * t * t];
    const ex = b0 * start.x + b1 * control1.x + b2 * control2.x + b3 * end.x - xOf(chain, from + i);
    const ey = b0 * start.y + b1 * control1.y + b2 * control2.y + b3 * end.y - yOf(chain, from + i);
    const [q0, q1, q2] = [3 * s * s, 6 * s * t, 3 * t * t];
    const dx = q0 * (control1.x - start.x) + q1 * (control2.x - control1.x) + q2 * (end.x - control2.x);
    const dy = q0 * (control1.y - start.y) + q1 * (control2.y - control1.y) + q2 * (end.y - control2.y);
    const ddx = 6 * (s * (control2.x - 2 * control1.x + start.x) + t * (end.x - 2 * control2.x + control1.x));
    const ddy = 6 * (s * (control2.y - 2 * control1.y + start.y) + t * (end.y - 2 * control2.y + control1.y));
    const off = Math.sqrt(ex * ex + ey * ey);
    const across = Math.abs(ex * dy - ey * dx) / (Math.sqrt(dx * dx + dy * dy) || 1);
    worst = Math.max(worst, Math.min(off, across + ALONG * off));
    if (worst > hopeless) return worst;
    const slope = dx * dx + dy * dy + ex * ddx + ey * ddy;
    if (slope !== 0) parameters[i] = Math.max(0, Math.min(1, t - (ex * dx + ey * dy) / slope));
  }
  return worst;
}

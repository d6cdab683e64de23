/** Directions that look calm: level and upright ones, and between them those that are plainly oblique. */
import type { Point } from '../../geometry/base/curve-types';
import { cross, dot, scale, subtract } from '../../geometry/base/vector';
import { WEIGHTS } from './search/weights';

const DEGREE = Math.PI / 180;
/** Up to here nobody sees that a bridge is not quite level. */
const UNSEEN = 0.5 * DEGREE;
/** From here on an oblique direction looks meant. */
const CROOKED_TO = 14 * DEGREE;
const MEANT = 24 * DEGREE;
/** Directions this near to level or upright have a level or upright one tried beside them. */
const TRIED = 30 * DEGREE;
/** Across lines, whose ends are cut square to their course and not along the bridge, so that it becomes wider. */
const TRIED_ACROSS_LINES = 3 * DEGREE;
/** Nearer than this they are level or upright but for rounding. */
const EXACT = 1e-6;

/**
 * The direction, level or upright and of length 1, that a direction is near to; undefined where none is, or where it is that.
 * @param acrossLines whether openings are lines with a width
 */
export function nearlyUpright({ x, y }: Point, acrossLines: boolean): Point | undefined {
  const off = offAxis(x, y);
  if (off < EXACT || off > (acrossLines ? TRIED_ACROSS_LINES : TRIED)) return undefined;
  return Math.abs(x) > Math.abs(y) ? { x: Math.sign(x), y: 0 } : { x: 0, y: Math.sign(y) };
}

/** Cosine of the angle to a direction that is asked for within which that one is tried as well. */
const TRIED_ALONG = Math.cos((60 * Math.PI) / 180);

/** Along a direction, or against it, where another is not too far from it. */
export function nearlyAlong(way: Point, along: Point): Point | undefined {
  const share = dot(way, along) / Math.hypot(way.x, way.y);
  return Math.abs(share) > TRIED_ALONG ? scale(along, Math.sign(share)) : undefined;
}

/** mm: the length of a way across, made longer where it does not stand in the direction that is asked for. */
export function standingLength({ from, to, length }: { from: Point; to: Point; length: number }, stand: Point): number {
  return length + WEIGHTS.notUpright.value * Math.abs(cross(subtract(to, from), stand));
}

/** The angle between a direction and the nearer one of level and upright, 0 to π/4. */
function offAxis(x: number, y: number): number {
  return Math.atan2(Math.min(Math.abs(x), Math.abs(y)), Math.max(Math.abs(x), Math.abs(y)));
}

/** Of the weight of crookedness: across a line a bridge had better be square to its course. */
const CROOKED_ACROSS_LINES = 0.25;

/** mm: the length of a way across, made longer where its direction is not calm. */
export function calmLength(
  { from, to, length }: { from: Point; to: Point; length: number },
  acrossLines = false,
): number {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const oblique = WEIGHTS.oblique.value * Math.min(Math.abs(x), Math.abs(y));
  const crooked = WEIGHTS.crooked.value * (acrossLines ? CROOKED_ACROSS_LINES : 1);
  return length * (1 + crooked * crookedness(offAxis(x, y))) + oblique;
}

function crookedness(off: number): number {
  if (off < UNSEEN) return 0;
  return off < CROOKED_TO ? 1 : Math.max(0, (MEANT - off) / (MEANT - CROOKED_TO));
}

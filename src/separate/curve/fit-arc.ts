/** A border as lines and cubics: cut at its corners, each stretch by the longest curves. */
import { defined } from '../../base/defined';
import type { Cubic, Line } from '../../geometry/base/curve-types';
import { countOf, fitLine, xOf, yOf } from './chain';
import { type Corner, type CornerRule, cornersOf } from './corners';
import { longestCubics, type Piece } from './longest-cubics';

/** Points nearer to a sharpened corner than this, in pixels, were rounded off by the pixels. */
const ROUNDED_OFF = 0.9;

/** So many points on either side of its seam give a smooth closed border its direction there. */
const SEAM = 7;

export type Curves = readonly (Line | Cubic)[];

/**
 * @param chain points in pixels; the first again at its end where it is closed
 * @param tolerance pixels
 * @param rule what a corner is; undefined where there are none to be kept
 */
export function fitArc(chain: Float64Array, closed: boolean, tolerance: number, rule?: CornerRule): Piece[] {
  const corners = rule ? cornersOf(chain, closed, rule) : [];
  if (closed && corners.length === 0) return longestCubics(chain, tolerance, seamOf(chain));
  const stretches = closed ? closedStretches(chain, corners) : openStretches(chain, corners);
  return stretches.flatMap(({ chain: points, startMoved, endMoved }) => {
    const pieces = longestCubics(points, tolerance);
    return pieces.map((piece, i) =>
      (startMoved && i === 0) || (endMoved && i + 1 === pieces.length) ? { ...piece, isSharpened: true } : piece,
    );
  });
}

/** The points of the chain themselves, as lines. */
export function polyline(chain: Float64Array): Piece[] {
  return Array.from({ length: countOf(chain) - 1 }, (_, at) => ({
    curve: {
      kind: 'line',
      start: { x: xOf(chain, at), y: yOf(chain, at) },
      end: { x: xOf(chain, at + 1), y: yOf(chain, at + 1) },
    },
    chain: chain.subarray(2 * at, 2 * at + 4),
  }));
}

function seamOf(chain: Float64Array) {
  const count = countOf(chain) - 1;
  const around: number[] = [];
  for (let step = -Math.min(SEAM, count >> 1); step < Math.min(SEAM, count >> 1); step += 1) {
    const at = (step + count) % count;
    around.push(xOf(chain, at), yOf(chain, at));
  }
  const { dx, dy } = fitLine(Float64Array.from(around), 0, around.length / 2 - 1);
  return { start: { x: dx, y: dy }, end: { x: -dx, y: -dy } };
}

/** The chain between two joints. */
interface Stretch {
  readonly chain: Float64Array;
  /** Whether its ends lie beside the border. */
  readonly startMoved: boolean;
  readonly endMoved: boolean;
}

interface Joint extends Corner {
  /** Whether pixels rounded the border off here; they do not at ends. */
  readonly isCorner: boolean;
}

function closedStretches(chain: Float64Array, corners: readonly Corner[]): Stretch[] {
  const count = countOf(chain) - 1;
  const joints = corners.map((corner): Joint => ({ ...corner, isCorner: true }));
  return joints.map((joint, i) => {
    const next = defined(joints[(i + 1) % joints.length]);
    return stretch(chain, joint, next, next.at > joint.at ? next.at : next.at + count, count);
  });
}

function openStretches(chain: Float64Array, corners: readonly Corner[]): Stretch[] {
  const last = countOf(chain) - 1;
  const end = (at: number): Joint => ({ at, place: { x: xOf(chain, at), y: yOf(chain, at) }, isCorner: false });
  const joints = [end(0), ...corners.map((corner): Joint => ({ ...corner, isCorner: true })), end(last)];
  return joints.slice(1).map((joint, i) => stretch(chain, defined(joints[i]), joint, joint.at, last + 1));
}

/** The chain between two places, without what was rounded off next to those that are corners. */
function stretch(chain: Float64Array, start: Joint, end: Joint, to: number, count: number): Stretch {
  const points = [start.place.x, start.place.y];
  for (let at = start.at + 1; at < to; at += 1) {
    const [x, y] = [xOf(chain, at % count), yOf(chain, at % count)];
    const isRoundedOff = ({ place, isCorner }: Joint): boolean =>
      isCorner && Math.hypot(x - place.x, y - place.y) < ROUNDED_OFF;
    if (!isRoundedOff(start) && !isRoundedOff(end)) points.push(x, y);
  }
  points.push(end.place.x, end.place.y);
  return { chain: Float64Array.from(points), startMoved: isMoved(chain, start), endMoved: isMoved(chain, end) };
}

function isMoved(chain: Float64Array, { at, place }: Corner): boolean {
  return xOf(chain, at) !== place.x || yOf(chain, at) !== place.y;
}

/** A border as lines and cubics: cut at its corners, each stretch by the longest curves. */
import { defined } from '../../base/defined';
import type { Cubic, Line, Point } from '../../geometry/base/curve-types';
import { countOf, fitLine, xOf, yOf } from './chain';
import { type Corner, type CornerRule, cornersOf } from './corners';
import { longestCubics } from './longest-cubics';

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
export function fitArc(chain: Float64Array, closed: boolean, tolerance: number, rule?: CornerRule): Curves {
  const corners = rule ? cornersOf(chain, closed, rule) : [];
  if (closed && corners.length === 0) return longestCubics(chain, tolerance, seamOf(chain));
  const stretches = closed ? closedStretches(chain, corners) : openStretches(chain, corners);
  return stretches.flatMap((stretch) => longestCubics(stretch, tolerance));
}

/** The points of the chain themselves, as lines. */
export function polyline(chain: Float64Array): Line[] {
  return Array.from({ length: countOf(chain) - 1 }, (_, at) => ({
    kind: 'line',
    start: { x: xOf(chain, at), y: yOf(chain, at) },
    end: { x: xOf(chain, at + 1), y: yOf(chain, at + 1) },
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

function closedStretches(chain: Float64Array, corners: readonly Corner[]): Float64Array[] {
  const count = countOf(chain) - 1;
  return corners.map((corner, i) => {
    const next = defined(corners[(i + 1) % corners.length]);
    const end = next.at > corner.at ? next.at : next.at + count;
    return stretch(chain, corner.at + 1, end, count, corner.place, next.place, true, true);
  });
}

function openStretches(chain: Float64Array, corners: readonly Corner[]): Float64Array[] {
  const last = countOf(chain) - 1;
  const place = (at: number): Point => ({ x: xOf(chain, at), y: yOf(chain, at) });
  const joints = [{ at: 0, place: place(0) }, ...corners, { at: last, place: place(last) }];
  return joints.slice(1).map((joint, i) => {
    const before = defined(joints[i]);
    const [first, final] = [i > 0, i + 2 < joints.length];
    return stretch(chain, before.at + 1, joint.at, last + 1, before.place, joint.place, first, final);
  });
}

/** The chain between two places, without what was rounded off next to those that are corners. */
function stretch(
  chain: Float64Array,
  from: number,
  to: number,
  count: number,
  start: Point,
  end: Point,
  cutStart: boolean,
  cutEnd: boolean,
): Float64Array {
  const points = [start.x, start.y];
  for (let at = from; at < to; at += 1) {
    const [x, y] = [xOf(chain, at % count), yOf(chain, at % count)];
    if (cutStart && Math.hypot(x - start.x, y - start.y) < ROUNDED_OFF) continue;
    if (cutEnd && Math.hypot(x - end.x, y - end.y) < ROUNDED_OFF) continue;
    points.push(x, y);
  }
  points.push(end.x, end.y);
  return Float64Array.from(points);
}

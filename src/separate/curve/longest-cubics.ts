/** As few lines and cubics as pass a chain within a stated distance: each one goes as far as it can. */
import { checkpoint } from '../../base/checkpoint';
import type { Cubic, Line, Point } from '../../geometry/base/curve-types';
import { chordLength, countOf, fitLine, xOf, yOf } from './chain';
import { fitOne } from './one-cubic';

/** Pixels along the chain from which the direction at its end, and at both sides of a joint, is taken. */
const AT_END = 3;
const AT_JOINT = 2.5;

/** So many points are tried first; twice as many each time after. */
const FIRST_STEP = 8;

/** A stretch that was fitted. */
interface Fit {
  readonly to: number;
  readonly curve: Line | Cubic;
  /** The curve's own direction at its end; undefined for lines. */
  readonly forth: Point | undefined;
}

/** Directions that a closed chain has at its seam, of length one. */
export interface Seam {
  readonly start: Point | undefined;
  /** Pointing back into the chain. */
  readonly end: Point | undefined;
}

/** A curve with the points that it stands for. */
export interface Piece {
  readonly curve: Line | Cubic;
  readonly chain: Float64Array;
  /** Whether an end of it is a corner that was put beside the chain. */
  readonly isSharpened?: boolean;
}

/**
 * @param chain points in pixels; its ends stay where they are
 * @param tolerance pixels
 */
export function longestCubics(chain: Float64Array, tolerance: number, seam?: Seam): Piece[] {
  const last = countOf(chain) - 1;
  const pieces: Piece[] = [];
  let tangent = seam?.start ?? directionAtEnd(chain, 0, last);
  for (let from = 0; from < last; ) {
    checkpoint(20);
    const back = (to: number): Point => {
      if (to === last) return seam?.end ?? directionAtEnd(chain, last, from);
      const { x, y } = directionAt(chain, to);
      return { x: -x, y: -y };
    };
    const { to, curve, forth } = longest(chain, from, tangent, back, tolerance);
    pieces.push({ curve, chain: chain.subarray(2 * from, 2 * to + 2) });
    if (to < last) tangent = forth ?? directionAt(chain, to);
    from = to;
  }
  return pieces;
}

function longest(
  chain: Float64Array,
  from: number,
  tangent: Point,
  back: (to: number) => Point,
  tolerance: number,
): Fit {
  const last = countOf(chain) - 1;
  const attempt = (to: number): Fit | undefined => {
    checkpoint(to - from);
    const direction = back(to);
    const curve = fitOne(chain, from, to, tangent, direction, tolerance);
    if (!curve) return undefined;
    return { to, curve, forth: curve.kind === 'line' ? undefined : { x: -direction.x, y: -direction.y } };
  };
  let best: Fit | undefined;
  let tooFar = last + 1;
  for (let step = FIRST_STEP, to = Math.min(last, from + step); ; ) {
    const fit = attempt(to);
    if (!fit) tooFar = to;
    else best = fit;
    if (!fit || to === last) break;
    step *= 2;
    to = Math.min(last, to + step);
  }
  for (let near = best?.to ?? from + 1; tooFar - near > 1; ) {
    const middle = (near + tooFar) >> 1;
    const fit = attempt(middle);
    if (fit) best = fit;
    if (fit) near = middle;
    else tooFar = middle;
  }
  return best ?? { to: from + 1, curve: edgeFrom(chain, from), forth: undefined };
}

function edgeFrom(chain: Float64Array, at: number): Line {
  return {
    kind: 'line',
    start: { x: xOf(chain, at), y: yOf(chain, at) },
    end: { x: xOf(chain, at + 1), y: yOf(chain, at + 1) },
  };
}

/** From the chain's end towards another point of it. */
function directionAtEnd(chain: Float64Array, end: number, towards: number): Point {
  const step = towards > end ? 1 : -1;
  let [at, length] = [end, 0];
  while (at !== towards && length < AT_END) {
    length += chordLength(chain, at, at + step);
    at += step;
  }
  const { dx, dy } = fitLine(chain, end, at);
  return { x: dx, y: dy };
}

/** In the course of the chain. */
function directionAt(chain: Float64Array, at: number): Point {
  let [from, to] = [at, at];
  for (let length = 0; from > 0 && length < AT_JOINT; from -= 1) length += chordLength(chain, from - 1, from);
  for (let length = 0; to + 1 < countOf(chain) && length < AT_JOINT; to += 1) length += chordLength(chain, to, to + 1);
  const { dx, dy } = fitLine(chain, from, to);
  return { x: dx, y: dy };
}

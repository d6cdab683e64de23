/** In which direction the stems of some letters run: upright, or slanted as the face is. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { forEachEdge } from '../../../geometry/base/ring';
import { add, dot, normalise, scale } from '../../../geometry/base/vector';
import type { Frame } from './frame';

/** Degrees: no stem leans more. */
const MOST = 45;
/** Bins of a degree. */
const FINE = 4;
const BINS = 2 * MOST * FINE + 1;
/**
 * Degrees within which stems are of one direction, straight ones of type and bent ones of a script; from which share of
 * the strongest direction on upright edges count before it, since diagonals stand beside stems; and degrees below which
 * a lean is meant to be none.
 */
const STRAIGHT = { window: 0.75, upright: 0.2, least: 1 };
const BENT = { window: 3, upright: 0.4, least: 2.5 };
/** A face leans if no such share of its edges leans the other way as well, as the legs of A and V do. */
const OTHER_WAY = 0.45;
/** Straight edges tell the direction if so much of all strength is in them. */
const STRAIGHT_SHARE = 0.25;

/** So many of the letters must show what is said of all: O, S and some others have no stems. */
const AGREED = 0.5;

/**
 * Of length 1, upwards in the frame; exactly its upright where the letters do not lean.
 * @param letters the rings of each
 */
export function stemDirection(letters: readonly (readonly Ring[])[], frame: Frame): Point {
  const lean = leanOf(letters.flat(), frame);
  const leans = (rings: readonly Ring[]): boolean => {
    const strengths = strengthsOf(rings, frame);
    return strengthWithin(strengths, lean, BENT.window) > strengthWithin(strengths, 0, BENT.window);
  };
  if (lean === 0 || !isAgreed(letters, leans)) return frame.up;
  return normalise(add(frame.up, scale(frame.right, Math.tan((lean * Math.PI) / 180)))) ?? frame.up;
}

/** Whether letters stand in a frame: more of their edges run upwards than across. */
export function standIn(letters: readonly (readonly Ring[])[], { right, up }: Frame): boolean {
  return isAgreed(letters, (rings) => {
    const stems = strengthWithin(strengthsOf(rings, { right, up }), 0, BENT.window);
    return stems > strengthWithin(strengthsOf(rings, { right: up, up: right }), 0, BENT.window);
  });
}

function isAgreed(letters: readonly (readonly Ring[])[], shows: (rings: readonly Ring[]) => boolean): boolean {
  return letters.filter(shows).length >= AGREED * letters.length;
}

/** Degrees to the right of upright. */
export function leanOf(rings: readonly Ring[], frame: Frame): number {
  const strengths = strengthsOf(rings, frame);
  const straight = peakOf(strengths, STRAIGHT.window);
  const kind = straight.strength >= STRAIGHT_SHARE * sum(strengths) ? STRAIGHT : BENT;
  const { lean, strength } = peakOf(strengths, kind.window);
  const upright = strengthWithin(strengths, 0, kind.window);
  if (Math.abs(lean) < kind.least || upright >= kind.upright * strength) return 0;
  return strengthWithin(strengths, -lean, kind.window) > OTHER_WAY * strength ? 0 : lean;
}

interface Peak {
  /** Degrees. */
  readonly lean: number;
  readonly strength: number;
}

/** For each direction how much of the outlines runs that way: by the squares of lengths, which single out stems. */
function strengthsOf(rings: readonly Ring[], { right, up }: Frame): Float64Array {
  const strengths = new Float64Array(BINS);
  for (const ring of rings) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const way = { x: x1 - x0, y: y1 - y0 };
      const [across, along] = [dot(way, right), dot(way, up)];
      const lean = (Math.atan2(along < 0 ? -across : across, Math.abs(along)) * 180) / Math.PI;
      if (Math.abs(lean) > MOST) return;
      const bin = Math.round((lean + MOST) * FINE);
      strengths[bin] = defined(strengths[bin]) + across * across + along * along;
    });
  }
  return strengths;
}

function peakOf(strengths: Float64Array, window: number): Peak {
  checkpoint(BINS);
  let best: Peak = { lean: 0, strength: 0 };
  for (let bin = 0; bin < BINS; bin += 1) {
    const lean = bin / FINE - MOST;
    const strength = strengthWithin(strengths, lean, window);
    if (strength > best.strength * (1 + 1e-9)) best = { lean, strength };
  }
  return { ...best, lean: meanWithin(strengths, best.lean, window) };
}

function strengthWithin(strengths: Float64Array, lean: number, window: number): number {
  return binsWithin(lean, window).reduce((total, bin) => total + defined(strengths[bin]), 0);
}

function meanWithin(strengths: Float64Array, lean: number, window: number): number {
  const bins = binsWithin(lean, window);
  const strength = strengthWithin(strengths, lean, window);
  return strength > 0
    ? bins.reduce((total, bin) => total + defined(strengths[bin]) * (bin / FINE - MOST), 0) / strength
    : lean;
}

function binsWithin(lean: number, window: number): number[] {
  const first = Math.max(0, Math.ceil((lean - window + MOST) * FINE));
  const last = Math.min(BINS - 1, Math.floor((lean + window + MOST) * FINE));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}

function sum(strengths: Float64Array): number {
  return strengths.reduce((total, strength) => total + strength, 0);
}

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
/** Degrees within which stems are of one direction: straight ones of type, bent ones of a script. */
const STRAIGHT = 0.75;
const BENT = 4;
/** Degrees: stems that lean less are meant to be upright. */
const UPRIGHT = 1.5;
/** Upright edges count before slanted ones that are so many times as strong: diagonals stand beside stems. */
const UPRIGHT_SHARE = 0.2;
/** A face leans if no such share of its edges leans the other way as well, as the legs of A and V do. */
const OTHER_WAY = 0.45;
/** Straight edges tell the direction if so much of all strength is in them. */
const STRAIGHT_SHARE = 0.25;

/** Of length 1, upwards in the frame; exactly its upright where the letters do not lean. */
export function stemDirection(rings: readonly Ring[], frame: Frame): Point {
  const lean = leanOf(rings, frame);
  if (lean === 0) return frame.up;
  return normalise(add(frame.up, scale(frame.right, Math.tan((lean * Math.PI) / 180)))) ?? frame.up;
}

/** Degrees to the right of upright. */
export function leanOf(rings: readonly Ring[], frame: Frame): number {
  const { straight, bent } = strengthsOf(rings, frame);
  const sharp = peakOf(straight, STRAIGHT);
  if (sharp.strength >= STRAIGHT_SHARE * sum(straight)) return settle(straight, sharp, STRAIGHT);
  return settle(bent, peakOf(bent, BENT), BENT);
}

interface Peak {
  /** Degrees. */
  readonly lean: number;
  readonly strength: number;
}

function settle(strengths: Float64Array, { lean, strength }: Peak, window: number): number {
  const upright = strengthWithin(strengths, 0, window);
  if (Math.abs(lean) < UPRIGHT || upright >= UPRIGHT_SHARE * strength * (window / STRAIGHT) ** 0.5) return 0;
  return strengthWithin(strengths, -lean, window) > OTHER_WAY * strength ? 0 : lean;
}

/** For each direction how much of the outlines runs that way: by the squares of lengths, which single out stems, and by lengths. */
function strengthsOf(rings: readonly Ring[], { right, up }: Frame): { straight: Float64Array; bent: Float64Array } {
  const [straight, bent] = [new Float64Array(BINS), new Float64Array(BINS)];
  for (const ring of rings) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const way = { x: x1 - x0, y: y1 - y0 };
      const [across, along] = [dot(way, right), dot(way, up)];
      const lean = (Math.atan2(along < 0 ? -across : across, Math.abs(along)) * 180) / Math.PI;
      if (Math.abs(lean) > MOST) return;
      const bin = Math.round((lean + MOST) * FINE);
      const length = Math.hypot(across, along);
      straight[bin] = defined(straight[bin]) + length * length;
      bent[bin] = defined(bent[bin]) + length;
    });
  }
  return { straight, bent };
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

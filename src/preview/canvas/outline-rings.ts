/** Path data of the stack as rings, and rings as path data again with no more points than the screen can show. */

import type { Box, Ring } from '../../geometry/base/polygon-types';
import { boxContainsBox, boxesTouch, boxOfRing } from '../../geometry/base/ring';
import { simplifyRing } from '../../geometry/polygon/simplify';
import { clipRingToBox } from './clip-ring';

/** Largest distance in CSS pixels between what is drawn and what was measured. */
const PIXELS = 0.25;

/** mm: below it all points are drawn; path data is rounded to twice as much. */
const MIN_TOLERANCE = 0.0005;

/** Rings with fewer points than this are drawn whole when a part of them is seen. */
const MIN_CLIPPED_POINTS = 64;

interface KnownRing {
  readonly points: Ring;
  readonly box: Box;
  /** Fewer points, and their path data, by level. */
  readonly levels: Map<number, { readonly points: Ring; readonly text: string }>;
}

/**
 * How coarsely rings may be drawn at a scale: a tolerance of 2^level mm, between an eighth and a quarter of a pixel.
 * @param scale CSS pixels to the mm
 */
export function levelFor(scale: number): number {
  return Math.max(Math.floor(Math.log2(PIXELS / scale)), Math.floor(Math.log2(MIN_TOLERANCE)));
}

export class OutlineRings {
  private text = '';
  private rings: readonly KnownRing[] = [];
  private byText = new Map<string, KnownRing>();

  /**
   * Takes path data of rings, each `M…L…Z`. Rings that were there before are not read again.
   * @returns whether it differs from what was there
   */
  set(text: string): boolean {
    if (text === this.text) return false;
    this.text = text;
    const pieces = text.split('Z').filter((piece) => piece !== '');
    this.rings = pieces.map((piece) => this.byText.get(piece) ?? readRing(piece));
    this.byText = new Map(pieces.map((piece, index) => [piece, this.rings[index] as KnownRing]));
    return true;
  }

  /** Path data of all that lies in a box of sheet mm, and of nothing that is far from it. */
  within(area: Box, level: number): string {
    const parts: string[] = [];
    for (const ring of this.rings) if (boxesTouch(ring.box, area)) parts.push(drawn(ring, area, level));
    return parts.join('');
  }
}

function drawn(ring: KnownRing, area: Box, level: number): string {
  const coarse = coarsened(ring, level);
  if (coarse.points.length < 2 * MIN_CLIPPED_POINTS || boxContainsBox(area, ring.box)) return coarse.text;
  return ringText(clipRingToBox(coarse.points, area));
}

function coarsened({ points, levels }: KnownRing, level: number): { readonly points: Ring; readonly text: string } {
  const known = levels.get(level);
  if (known) return known;
  const tolerance = 2 ** level;
  const fewer = tolerance < MIN_TOLERANCE ? points : simplifyRing(points, tolerance);
  const made = { points: fewer, text: ringText(fewer) };
  levels.set(level, made);
  return made;
}

/** @param piece "M0 0L10 0L10 10", or with `H` and `V` in it */
function readRing(piece: string): KnownRing {
  const points = /[HV]/.test(piece) ? readSquare(piece) : Float64Array.from(piece.slice(1).split(/[L ]/), Number);
  return { points, box: boxOfRing(points), levels: new Map() };
}

function readSquare(piece: string): Ring {
  const points: number[] = [];
  for (const [, command, values = ''] of piece.matchAll(/([MLHV])([^MLHV]*)/g)) {
    const [first = 0, second = 0] = values.split(' ').map(Number);
    const [x, y] = [points.at(-2) ?? 0, points.at(-1) ?? 0];
    points.push(command === 'V' ? x : first, command === 'H' ? y : command === 'V' ? first : second);
  }
  return Float64Array.from(points);
}

function ringText(ring: Ring): string {
  if (ring.length < 6) return '';
  const points: string[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2) points.push(`${ring[i] ?? 0} ${ring[i + 1] ?? 0}`);
  return `M${points.join('L')}Z`;
}

/** Sections of a loose part: straight cuts from bank to bank, and what of them is material. Sheet mm. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';

/**
 * mm of material on the line through a place of the part, as far as the outline on either side.
 * @param across the line's direction, of length 1
 */
export function materialAcross(outline: Ring, holes: readonly Ring[], place: Point, across: Point): number {
  const banks = crossingsOf(outline, place, across);
  const [back, ahead] = [Math.max(...banks.filter((at) => at <= 0)), Math.min(...banks.filter((at) => at > 0))];
  if (!Number.isFinite(ahead - back)) return 0;
  const open = holes.reduce((sum, hole) => sum + openWithin(hole, place, across, back, ahead), 0);
  return ahead - back - open;
}

/** mm along the line from the place to where it meets the ring. A part has hundreds of sections: so edges are not called back. */
function crossingsOf(ring: Ring, { x, y }: Point, across: Point): number[] {
  checkpoint(ring.length);
  const found: number[] = [];
  let x0 = defined(ring[ring.length - 2]);
  let y0 = defined(ring[ring.length - 1]);
  let side0 = across.x * (y0 - y) - across.y * (x0 - x);
  for (let index = 0; index + 1 < ring.length; index += 2) {
    const x1 = defined(ring[index]);
    const y1 = defined(ring[index + 1]);
    const side1 = across.x * (y1 - y) - across.y * (x1 - x);
    if (side0 >= 0 !== side1 >= 0) {
      const t = side0 / (side0 - side1);
      found.push((x0 + t * (x1 - x0) - x) * across.x + (y0 + t * (y1 - y0) - y) * across.y);
    }
    x0 = x1;
    y0 = y1;
    side0 = side1;
  }
  return found;
}

/** mm of the line, from `back` to `ahead`, that lie in a hole. */
export function openWithin(hole: Ring, place: Point, across: Point, back: number, ahead: number): number {
  const crossings = crossingsOf(hole, place, across).sort((a, b) => a - b);
  let within = 0;
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    within += Math.max(0, Math.min(ahead, defined(crossings[i + 1])) - Math.max(back, defined(crossings[i])));
  }
  return within;
}

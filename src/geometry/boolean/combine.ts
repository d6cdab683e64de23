/** Union, difference and intersection of rings in mm, by the exact overlay, on the grid of 0.1 µm. */
import type { FillRule, Ring } from '../base/polygon-types';
import { clipRings, type Operation } from './clipper';
import { fromGrid, toGrid } from './grid';
import { type Filled, overlayRings } from './overlay';

/**
 * Subject and clip rings are each read by the fill rule, then combined. The result is as `overlayRings` says; the
 * clipping library steps in should the overlay's rounding ever not come to rest.
 */
export function combineRings(
  operation: Operation,
  subject: readonly Ring[],
  clip: readonly Ring[],
  fillRule: FillRule,
): Ring[] {
  const usable = (rings: readonly Ring[]): Ring[] =>
    rings.map((ring) => toGrid(ring)).filter((ring) => ring.length >= 6);
  const result = overlayRings(usable(subject), usable(clip), isFilledBy(operation, fillRule));
  return result ? result.map((ring) => fromGrid(ring)) : clipRings(operation, subject, clip, fillRule);
}

function isFilledBy(operation: Operation, fillRule: FillRule): Filled {
  const inside = fillRule === 'nonzero' ? (turns: number) => turns !== 0 : (turns: number) => (turns & 1) !== 0;
  switch (operation) {
    case 'union':
      return (first, second) => inside(first) || inside(second);
    case 'difference':
      return (first, second) => inside(first) && !inside(second);
    case 'intersection':
      return (first, second) => inside(first) && inside(second);
  }
}

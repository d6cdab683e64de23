/** Puts bridges into the artist's text. */
import type { Sheet } from '../sheet/sheet';
import type { Bridge } from './bridge';
import { cutStripsFromShapes } from './cut-shapes';
import type { Outcome } from './outcome';
import { stripsApart } from './strips-apart';
import { reachingStrip } from './strip-reach';
import type { Strip } from './strip';

export type { Bridge } from './bridge';

/** In mm, added to widths so that rounding to the author's digits leaves nothing under its limit. */
export const ROUNDING_ROOM = 0.002;

/**
 * Edits of `sheet.drawing.document.text` that leave the bridges' strips standing: every shape of the layer that paints
 * there is opened at the strip's edges and its cut ends are joined along them.
 */
export function cutBridges(sheet: Sheet, bridges: readonly Bridge[]): Outcome {
  return cutStrips(sheet, stripsFor(sheet, bridges));
}

/** The strips in sheet mm that bridges keep free of paint. */
export function stripsFor(sheet: Sheet, bridges: readonly Bridge[]): Strip[] {
  return bridges.map(({ from, to, width }) => reachingStrip(sheet.openings, from, to, width + ROUNDING_ROOM));
}

/** As `cutBridges`, for strips in sheet mm. */
export function cutStrips(sheet: Sheet, strips: readonly Strip[]): Outcome {
  if (overlap(strips)) return { refusal: 'Two of the bridges run into each other; put them in one after the other.' };
  return cutStripsFromShapes(sheet.drawing, sheet.layer.shapes, strips);
}

function overlap(strips: readonly Strip[]): boolean {
  return strips.some((strip, index) => strips.slice(index + 1).some((other) => !stripsApart(strip, other)));
}

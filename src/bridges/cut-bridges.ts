/** Puts bridges into the artist's text. */
import type { Bridge } from './bridge';
import { cutStripsFromShapes } from './cut-shapes';
import type { Outcome } from './outcome';
import { reachingStrip } from './strip-reach';
import { intersection } from '../geometry/polygons';
import type { Sheet } from '../sheet/sheet';
import { polygonOf } from './strip-reach';
import type { Strip } from './strip';

export type { Bridge } from './bridge';

/**
 * Edits of `sheet.drawing.document.text` that leave the bridges' strips standing: every shape of the layer that paints
 * there is opened at the strip's edges and its cut ends are joined along them.
 */
export function cutBridges(sheet: Sheet, bridges: readonly Bridge[]): Outcome {
  const strips = bridges.map(({ from, to, width }) => reachingStrip(sheet.openings, from, to, width));
  return cutStrips(sheet, strips);
}

/** As `cutBridges`, for strips in sheet mm. */
export function cutStrips(sheet: Sheet, strips: readonly Strip[]): Outcome {
  if (overlap(strips)) return { refusal: 'Two of the bridges run into each other; put them in one after the other.' };
  return cutStripsFromShapes(sheet.drawing, sheet.layer.shapes, strips);
}

function overlap(strips: readonly Strip[]): boolean {
  return strips.some((strip, index) =>
    strips.slice(index + 1).some((other) => intersection([polygonOf(strip)], [polygonOf(other)]).length > 0));
}

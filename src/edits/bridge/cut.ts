/** Puts bridges into the artist's text. */
import type { BridgeRoots } from '../../config/bridge-style';
import type { Shape } from '../../drawing/types';
import type { Region } from '../../geometry/base/polygon-types';
import { DRAWN_ALIKE, WRITTEN_STEP } from '../../geometry/base/tolerances';
import { offset } from '../../geometry/boolean/index';
import { buildSegmentIndex } from '../../geometry/spatial/segment-index';
import type { Sheet } from '../../sheet/types';
import type { EditResult } from '../element/result';
import type { Bridge } from '../plan/types';
import { polygonAround } from '../roots/fillet';
import { withFillets } from '../roots/find';
import { extendStrip } from '../strip/reach';
import { shapesNearStrips } from '../strip/shapes-near';
import { areStripsApart, lengthenStrip, polygonOf, type Strip, widenStrip } from '../strip/strip';
import { addStrips } from './add-strips';
import { cutStripsFromShapes } from './cut-fills';
import { cutOutlines } from './cut-outlines';

export type { Bridge } from '../plan/types';

/** In mm: new points are rounded and curves flattened anew, so a strip's edges may lie a little beside their place. */
const SLACK = DRAWN_ALIKE;

/**
 * In mm: a mitred corner of a line reaches up to two widths beyond it, by the usual limit of mitres. It goes with the stretch
 * that is cut out of a jagged line, a border of a map; of a wide line no more than this is expected.
 */
const MOST_CORNER = 2;

/** In mm, added to widths so that rounding to the author's digits leaves nothing under its limit. */
export const ROUNDING_ROOM = 2 * WRITTEN_STEP;

/** The strips in sheet mm that bridges keep free of paint. */
export function stripsFor(sheet: Sheet, bridges: readonly Bridge[], roots: BridgeRoots = 'square'): Strip[] {
  const openings = buildSegmentIndex(sheet.openings);
  const strips = bridges.map(({ from, to, width }) => extendStrip(openings, from, to, width + ROUNDING_ROOM));
  return roots === 'rounded' ? withFillets(openings, strips) : strips;
}

/**
 * Where `cutStrips` may change what is painted, in sheet mm: the strips with their fillets, and beside them the places where
 * cut lines end in their caps or at right angles to a curve. Dots go whole, which reach beyond the strip's ends, too.
 */
export function changedRegion(sheet: Sheet, strips: readonly Strip[]): Region {
  const fillets = strips.flatMap((strip) => strip.fillets ?? []).map(polygonAround);
  return [...alongStrips(sheet, strips), ...(fillets.length > 0 ? offset(fillets, SLACK) : [])];
}

function alongStrips(sheet: Sheet, strips: readonly Strip[]): Region {
  const near = shapesNearStrips(
    sheet.layer.shapes.filter(({ part }) => part === 'stroke'),
    strips,
  );
  return strips.map((strip) => {
    const strokes = [...near].filter(([, met]) => met.includes(strip)).map(([stroke]) => stroke);
    const corner = strokes.length > 0 ? Math.min(widest(strokes), MOST_CORNER) : 0;
    const wider = widenStrip(strip, 2 * (widest(strokes) + corner));
    return polygonOf(lengthenStrip(wider, corner + 2 * widest(strokes.filter(({ dashed }) => dashed))));
  });
}

function widest(strokes: readonly Shape[]): number {
  return Math.max(SLACK, ...strokes.map(({ strokeWidth = 0 }) => strokeWidth));
}

/**
 * Edits of `sheet.drawing.document.text` that leave the strips standing: every shape of the layer that paints there is
 * opened at the strip's edges and its cut ends are joined along them. Fillets round the corners between; lines, whose ends
 * are caps, have none.
 * @param strips in sheet mm
 */
export function cutStrips(sheet: Sheet, strips: readonly Strip[]): EditResult {
  if (overlap(strips)) return { refusal: 'Two of the bridges run into each other; put them in one after the other.' };
  if (sheet.layer.reading === 'sheet') return addStrips(sheet.drawing, sheet.layer.shapes, strips);
  if (sheet.layer.reading === 'outlines') return cutOutlines(sheet.drawing, sheet.layer.shapes, strips);
  return cutStripsFromShapes(sheet.drawing, sheet.layer.shapes, strips);
}

function overlap(strips: readonly Strip[]): boolean {
  return strips.some((strip, index) => strips.slice(index + 1).some((other) => !areStripsApart(strip, other)));
}

/** Makes a small opening larger as a whole: a dot stays a dot. */

import type { Shape } from '../../drawing/types';
import { maxScale, minScale, multiply, scaling, translation } from '../../geometry/base/matrix';
import type { Box } from '../../geometry/base/polygon-types';
import { boxContainsBox, growBox, joinBoxes } from '../../geometry/base/ring';
import { NEAR_EDGE } from '../../geometry/base/tolerances';
import { interpolate } from '../../geometry/base/vector';
import { boxOfPolygon } from '../../geometry/boolean/index';
import { boundsOf } from '../../geometry/curve/index';
import { attributeOf } from '../../markup/query';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { type EditResult, mergeResults } from '../element/result';
import { formatNumber } from '../path/path-style';
import { decimalsFor } from '../path/precision';
import { outlineOf } from './move-outlines';
import { isDrawnAgain, transformSubpaths } from './transform-subpaths';
import { WRITING_ROOM } from './widen-opening';

/** In widths: what is longer than this is no dot. */
const DOT = 2.5;

/** @param width mm, as drawn */
export function enlargeSmall(sheet: Sheet, part: ThinPlace, width: number): EditResult {
  const opening = sheet.openings[part.polygon];
  if (part.kind !== 'whole' || !opening) return { refusal: 'It is no opening of its own.' };
  const box = boxOfPolygon(opening);
  const makers = makersOf(sheet, box);
  const [only] = makers;
  const basic = only && makers.length === 1 ? resizedShape(sheet, only.shape, part, width) : undefined;
  if (basic) return { edits: basic };
  const long = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (makers.length === 0 || long > DOT * width) return { refusal: 'It is no dot.' };
  const { x, y } = interpolate(part.from, part.to, 0.5);
  const factor = (width + WRITING_ROOM) / part.drawnWidth;
  const change = multiply(translation(x, y), multiply(scaling(factor), translation(-x, -y)));
  return mergeResults(makers.map(({ shape, subpaths }) => transformSubpaths(sheet, shape, subpaths, change)));
}

interface Maker {
  readonly shape: Shape;
  readonly subpaths: ReadonlySet<number>;
}

/** The outlines that lie within a box, by shape. */
export function makersOf(sheet: Sheet, box: Box): Maker[] {
  const room = growBox(box, NEAR_EDGE);
  return sheet.layer.shapes.flatMap((shape): Maker[] => {
    const within = outlineOf(sheet, shape).flatMap(({ curves }, number) =>
      curves.length > 0 && boxContainsBox(room, joinBoxes(curves.map(boundsOf))) ? [number] : [],
    );
    return within.length > 0 ? [{ shape, subpaths: new Set(within) }] : [];
  });
}

/** The sizes of basic shapes: how many times the size it is how wide the shape is, and what says where it begins. */
const SIZES: Readonly<
  Record<string, readonly { readonly name: string; readonly times: number; readonly from?: string }[]>
> = {
  circle: [{ name: 'r', times: 2 }],
  ellipse: [
    { name: 'rx', times: 2 },
    { name: 'ry', times: 2 },
  ],
  rect: [
    { name: 'width', times: 1, from: 'x' },
    { name: 'height', times: 1, from: 'y' },
  ],
};

/** A circle, an ellipse or a rectangle whose sizes are plain numbers: those that are too small become large enough. */
function resizedShape(sheet: Sheet, shape: Shape, part: ThinPlace, width: number): TextEdit[] | undefined {
  const { element, toMm } = shape;
  const sizes = SIZES[element.localName];
  const factor = maxScale(toMm);
  if (!sizes || shape.part !== 'fill' || factor > 1.001 * minScale(toMm) || isDrawnAgain(sheet, shape))
    return undefined;
  if (attributeOf(element, 'rx') && element.localName === 'rect') return undefined;
  const least = (width + 1e-9) / factor;
  const decimals = decimalsFor(factor);
  const edits: TextEdit[] = [];
  for (const { name, times, from } of sizes) {
    const attribute = attributeOf(element, name);
    const value = Number(attribute?.value.trim() || Number.NaN);
    if (!attribute || !Number.isFinite(value)) return undefined;
    const wanted = Math.ceil((least / times) * 10 ** decimals - 1e-6) / 10 ** decimals;
    if (value >= wanted) continue;
    const zero = !/^\s*\./.test(attribute.value);
    edits.push({ span: attribute.valueSpan, text: formatNumber(wanted, decimals, zero) });
    const start = from ? attributeOf(element, from) : undefined;
    if (!from) continue;
    const place = Number(start?.value.trim() || Number.NaN);
    if (!start || !Number.isFinite(place)) return undefined;
    edits.push({ span: start.valueSpan, text: formatNumber(place - (wanted - value) / 2, decimals + 1, zero) });
  }
  return edits.length > 0 && part.drawnWidth < width ? edits : undefined;
}

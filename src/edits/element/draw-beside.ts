/** One more shape in a layer, that looks as the shape beside it. */
import type { Drawing, Shape } from '../../drawing/types';
import type { Cubic, Line, Point } from '../../geometry/base/curve-types';
import { apply, invert, maxScale } from '../../geometry/base/matrix';
import type { Region } from '../../geometry/base/polygon-types';
import { ringsOf } from '../../geometry/base/ring';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { fitRing } from '../../geometry/curve/fit';
import { simplifyRing } from '../../geometry/polygon/simplify';
import { prefixOf } from '../../markup/query';
import { SourceIndex } from '../../sheet/source-index';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { formatNumber } from '../path/path-style';
import { decimalsFor } from '../path/precision';
import { indentBefore } from './element-text';

/** mm: how near the written curves come to what was worked out. */
const FIT = 0.6 * PLAINLY_BESIDE;

/**
 * The shape that has the edge at one of these places, if what stands beside it is drawn as it is; else the last of the
 * layer that will do.
 * @param places in sheet mm
 */
export function shapeBeside({ layer }: Pick<Sheet, 'layer'>, places: readonly Point[]): Shape | undefined {
  const usable = (shape: Shape): boolean =>
    shape.instances.length === 0 && shape.clips.length === 0 && invert(shape.toMm) !== undefined;
  const sources = new SourceIndex(layer.shapes, false);
  const found = places.map((place) => sources.at(place)?.shape).find((shape) => shape && usable(shape));
  return found ?? layer.shapes.findLast(usable);
}

/**
 * Draws a region as one more shape after a shape that looks as it is to look, or before any other one.
 * @param region in sheet mm; curves are fitted to it, and come as near as `FIT`; what is narrower is left out
 * @param colour `#rrggbb`: the new shape stands before the other, under it, and has this colour
 * @returns no edits where nothing is left of the region
 */
export function drawBeside(drawing: Drawing, shape: Shape, region: Region, colour?: string): TextEdit[] {
  const toUser = invert(shape.toMm);
  if (!toUser) return [];
  const data = pathData(region, (point) => apply(toUser, point), Math.max(0, decimalsFor(maxScale(shape.toMm)) - 1));
  if (data === '') return [];
  const { element } = shape;
  const prefix = prefixOf(element);
  const { from, to } = element.span;
  const indent = indentBefore(drawing.document.text, from);
  const path = `<${prefix}path${presentationAttributes(drawing, shape, colour)} d="${data}"/>`;
  return colour === undefined
    ? [{ span: { from: to, to }, text: `${indent}${path}` }]
    : [{ span: { from, to: from }, text: `${path}${indent}` }];
}

function pathData(region: Region, toUser: (point: Point) => Point, decimals: number): string {
  const pair = (point: Point): string => {
    const { x, y } = toUser(point);
    return `${formatNumber(x, decimals)} ${formatNumber(y, decimals)}`;
  };
  const command = (curve: Line | Cubic): string =>
    curve.kind === 'line'
      ? `L${pair(curve.end)}`
      : `C${pair(curve.control1)} ${pair(curve.control2)} ${pair(curve.end)}`;
  return (
    region
      .flatMap(ringsOf)
      // Of a sliver nothing is left.
      .filter((ring) => simplifyRing(ring, FIT).length > 0)
      .map((ring) => fitRing(ring, FIT))
      .map((curves) => (curves[0] ? `M${pair(curves[0].start)}${curves.map(command).join('')}Z` : ''))
      .join('')
  );
}

/** As its neighbour looks, where that is only filled; else its colour. */
function presentationAttributes({ document, shapes }: Drawing, shape: Shape, other?: string): string {
  const { element, paint } = shape;
  const alone =
    other === undefined && shape.part === 'fill' && !shapes.some((each) => each.element === element && each !== shape);
  const kept = element.attributes.filter(
    ({ name }) => name === 'transform' || (alone && PRESENTATION_ATTRIBUTES.includes(name)),
  );
  const written = kept.map(({ span }) => ` ${document.text.slice(span.from, span.to)}`).join('');
  const colour = other ?? (paint.kind === 'none' ? '#000000' : paint.colour);
  return alone ? written : `${written} style="fill:${colour};stroke:none"`;
}

const PRESENTATION_ATTRIBUTES = ['class', 'style', 'fill', 'fill-opacity', 'opacity'];

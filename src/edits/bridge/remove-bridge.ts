/** Takes a bridge out of the artist's text: the openings on its two sides are one again. */
import type { Drawing, Shape } from '../../drawing/types';
import type { Point } from '../../geometry/base/curve-types';
import { apply, invert, maxScale } from '../../geometry/base/matrix';
import type { Box } from '../../geometry/base/polygon-types';
import { boxesTouch, growBox, joinBoxes } from '../../geometry/base/ring';
import { NECK_MARGIN } from '../../geometry/base/tolerances';
import { add, distance, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { areaOf, difference } from '../../geometry/boolean/index';
import { boundsOf } from '../../geometry/curve/index';
import type { ElementNode } from '../../markup/tree';
import { shapeRegion } from '../../sheet/layer/shape-region';
import type { Sheet } from '../../sheet/types';
import { type ElementGeometry, elementGeometry } from '../element/element-geometry';
import { type EditResult, mergeResults } from '../element/result';
import { removeElement } from '../outline/remove-outline';
import { decimalsFor } from '../path/precision';
import type { StandingBridge } from '../plan/standing/detect';
import { boxOfCorners, polygonOf, stripAlong } from '../strip/strip';
import { painted } from './cut-element';
import { cutStripsFromShapes } from './cut-fills';
import { reconnectPathData, type Side } from './rejoin-fill';
import { reconnectLineData } from './rejoin-line';

/** mm: a command this near to a bridge's side, all along, is that side. */
const SAME_LINE = NECK_MARGIN;
/** A strip of its own reaches at most so many widths into the material. */
const MAX_REACH = 1.1;

export function removeBridge(sheet: Sheet, bridge: StandingBridge): EditResult {
  const {
    drawing,
    layer: { reading, shapes },
  } = sheet;
  if (reading === 'sheet') return removeStrip(drawing, shapes, bridge);
  const box = growBox(boxOfCorners(bridge.sides.flat()), bridge.width + bridge.flare);
  const part = reading === 'outlines' ? 'stroke' : undefined;
  const near = shapes.filter((shape) => (!part || shape.part === part) && touches(shape, box));
  const elements = [...new Set(near.map(({ element }) => element))];
  const outcome = mergeResults(elements.map((element) => reconnectElement(sheet, element, bridge)));
  if ('refusal' in outcome || outcome.edits.length > 0) return outcome;
  return { refusal: 'The two sides of this bridge are no straight cuts through one shape; join the openings by hand.' };
}

function touches({ subpaths }: Shape, box: Box): boolean {
  return boxesTouch(joinBoxes(subpaths.flatMap(({ curves }) => curves.map(boundsOf))), box);
}

function reconnectElement({ drawing, layer }: Sheet, element: ElementNode, bridge: StandingBridge): EditResult {
  const { fill, stroke } = painted(layer.shapes.filter((shape) => shape.element === element));
  const shape = fill ?? stroke;
  const toUser = shape && invert(shape.toMm);
  if (!shape || !toUser) return { edits: [] };
  const asLines = layer.reading === 'openings' && !fill;
  const decimals = decimalsFor(maxScale(shape.toMm));
  const outline = (fill ? fill.subpaths : stroke?.centreline) ?? [];
  const geometry = elementGeometry(drawing.document, shape, outline, decimals);
  // What cannot be edited is left as it is: whether the bridge is gone without it, the proof tells.
  if (typeof geometry === 'string') return { edits: [] };
  const offset = fill && stroke ? (stroke.strokeWidth ?? 0) / 2 : 0;
  const edits = asLines
    ? reconnectLines(geometry, shape, bridge, decimals)
    : reconnectPathData(geometry.data, {
        sides: gapWidth(bridge.sides, offset).map(([a, b]): Side => [apply(toUser, a), apply(toUser, b)]) as [
          Side,
          Side,
        ],
        tolerance: SAME_LINE * maxScale(toUser),
        roots: { toMm: shape.toMm, width: bridge.width, middle: bridge.centre },
        decimals,
        numbers: geometry.numbers,
        lined: stroke !== undefined,
      });
  if (!edits) {
    return { refusal: `The sides of this bridge are in different outlines of a <${element.name}>; join them by hand.` };
  }
  if (edits.length === 0) return { edits: [] };
  if (isDrawnTwice(drawing, shape)) {
    return { refusal: `This <${element.name}> is drawn more than once, through a <use>; draw it directly first.` };
  }
  return { edits: geometry.editsFor(edits) };
}

function reconnectLines(
  geometry: ElementGeometry,
  { toMm, strokeWidth = 0 }: Shape,
  { centre, width }: StandingBridge,
  decimals: number,
): ReturnType<typeof reconnectLineData> {
  const toUser = invert(toMm);
  if (!toUser) return [];
  const unit = maxScale(toUser);
  return reconnectLineData(geometry.data, {
    centre: apply(toUser, centre),
    apart: (width + 2 * strokeWidth) * unit,
    beside: (width + strokeWidth / 4) * unit,
    decimals,
    numbers: geometry.numbers,
    lined: true,
  });
}

function isDrawnTwice(drawing: Drawing, { element, instances }: Shape): boolean {
  return (
    instances.length > 0 || drawing.shapes.some((other) => other.element === element && other.instances.length > 0)
  );
}

/** Both sides moved away from each other, each by `offset`. */
function gapWidth([a, b]: readonly [Side, Side], offset: number): readonly [Side, Side] {
  const between = subtract(interpolate(b[0], b[1], 0.5), interpolate(a[0], a[1], 0.5));
  const outward = (side: Side, sign: number): Point => {
    const square = normalise(perpendicular(subtract(side[1], side[0]))) ?? { x: 0, y: 0 };
    const way = square.x * between.x + square.y * between.y > 0 ? sign : -sign;
    return scale(square, way * offset);
  };
  const moved = (side: Side, by: Point): Side => [add(side[0], by), add(side[1], by)];
  return [moved(a, outward(a, -1)), moved(b, outward(b, 1))];
}

/** Where what is filled is the material: a strip of its own goes, one that is part of a shape is cut out of it. */
function removeStrip(drawing: Drawing, shapes: readonly Shape[], bridge: StandingBridge): EditResult {
  const { sides, width, flare } = bridge;
  const [a, b] = sides;
  const flared = width + 2 * flare;
  const [from, to] = [interpolate(a[0], b[0], 0.5), interpolate(a[1], b[1], 0.5)];
  const around = [polygonOf(stripAlong(from, to, flared + 2 * SAME_LINE, MAX_REACH * width))];
  const own = shapes.filter((shape) => {
    const region = shapeRegion(shape);
    return areaOf(region) > (width * distance(from, to)) / 2 && areaOf(difference(region, around)) < SAME_LINE * width;
  });
  const [only] = own;
  if (only && own.length === 1 && !isDrawnTwice(drawing, only)) return { edits: removeElement(drawing, only.element) };
  return cutStripsFromShapes(drawing, shapes, [stripAlong(from, to, flared, 0)]);
}

/** What keys and drags do to a bridge that is selected: steps along its gap, other widths. Sheet mm. */

import type { Point } from '../../geometry/base/curve-types';
import { add, dot, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import type { BridgePreviewData } from '../../protocol/index';
import type { BridgeShape } from '../canvas/bridge-handles';

/** mm for one press of an arrow key, and with Shift; mm of width for one press of a bracket. */
const STEP = 0.2;
const LONG_STEP = 1;
const WIDTH_STEP = 0.1;
/** mm: widths that a drag gives are multiples of it; nothing narrower can be asked for. */
const WIDTH_GRID = 0.05;
export const LEAST_WIDTH = 0.1;
/** The cosine between an arrow and the gap's course beyond which the arrow goes across it, and nowhere. */
const ACROSS = 0.2;

const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

export interface KeyPress {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** Where a bridge shall stand and how wide. */
export interface Aim {
  readonly to: Point;
  readonly width: number;
}

/** @returns undefined where the key means nothing to a bridge; the shape's own place where it leads nowhere */
export function aimOfKey(shape: BridgeShape, { key, shiftKey, altKey }: KeyPress): Aim | undefined {
  const arrow = ARROWS[key];
  if (arrow && altKey) return widened(shape, key === 'ArrowRight' || key === 'ArrowUp' ? WIDTH_STEP : -WIDTH_STEP);
  if (key === ']' || key === '[') return widened(shape, key === ']' ? WIDTH_STEP : -WIDTH_STEP);
  if (!arrow) return undefined;
  const course = perpendicular(shape.along);
  const way = dot(arrow, course);
  const step = Math.abs(way) < ACROSS ? 0 : Math.sign(way) * (shiftKey ? LONG_STEP : STEP);
  return { to: add(shape.centre, scale(course, step)), width: shape.width };
}

function widened({ centre, width }: BridgeShape, by: number): Aim {
  return { to: centre, width: Math.max(LEAST_WIDTH, rounded(width + by, WIDTH_STEP / 10)) };
}

/** A drag of the bridge itself: from where it was taken hold of, to the pointer. */
export function aimOfMove({ centre, width }: BridgeShape, from: Point, to: Point): Aim {
  return { to: add(centre, subtract(to, from)), width };
}

/** A drag of one of its handles: both sides go out by as much. */
export function aimOfStretch({ centre, along, width }: BridgeShape, from: Point, to: Point): Aim {
  const out = (point: Point): number => Math.abs(dot(subtract(point, centre), perpendicular(along)));
  const wide = rounded(width + 2 * (out(to) - out(from)), WIDTH_GRID);
  return { to: centre, width: Math.max(LEAST_WIDTH, wide) };
}

/** A bridge as it is shown, by its measures. @param before it, for the direction of one without a length */
export function shapeOf(
  { from, to, width, length }: Pick<BridgePreviewData, 'from' | 'to' | 'width' | 'length'>,
  before?: BridgeShape,
): BridgeShape {
  const along = normalise(subtract(to, from)) ?? before?.along ?? { x: 1, y: 0 };
  return { centre: interpolate(from, to, 0.5), along, width, length };
}

/** What is drawn until the engine has answered: the same bridge, shifted along its course, as wide as is asked for. */
export function provisional(shape: BridgeShape, { to, width }: Aim): BridgeShape {
  const course = perpendicular(shape.along);
  return { ...shape, centre: add(shape.centre, scale(course, dot(subtract(to, shape.centre), course))), width };
}

function rounded(value: number, step: number): number {
  return Math.round(value / step) * step;
}

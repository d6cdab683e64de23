/** `viewBox` and `preserveAspectRatio`: how a viewport's content is fitted into it. */

import { defined } from '../../base/defined';
import type { Matrix } from '../../geometry/base/curve-types';
import { parseViewBoxNumbers as parseNumbers } from '../../markup/number-lists';
import type { ViewportSize } from './units';

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface AspectRatio {
  /** 0, 0.5 or 1: where the content lies in the room left over; undefined for `none` (stretched to fit). */
  readonly align: { readonly x: number; readonly y: number } | undefined;
  /** True for `slice`: the content covers the viewport, false for `meet`: it fits inside. */
  readonly slice: boolean;
}

export const DEFAULT_ASPECT_RATIO: AspectRatio = { align: { x: 0.5, y: 0.5 }, slice: false };

/** Undefined where the text is not four numbers, or a size is negative: the attribute then counts as absent. */
export function parseViewBoxAttribute(text: string): ViewBox | undefined {
  const { values, error } = parseNumbers(text);
  const [x, y, width, height] = values;
  if (error || x === undefined || y === undefined || width === undefined || height === undefined) return undefined;
  return { x, y, width, height };
}

const ALIGNMENT: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/** Undefined where the text is none of SVG's values: the default counts then. */
export function parseAspectRatio(text: string): AspectRatio | undefined {
  const match = /^\s*(?:defer\s+)?(none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?\s*$/.exec(text);
  if (!match) return undefined;
  const [, word, alongX = '', alongY = ''] = match;
  const align = word === 'none' ? undefined : { x: defined(ALIGNMENT[alongX]), y: defined(ALIGNMENT[alongY]) };
  return { align, slice: match[4] === 'slice' };
}

/**
 * From the viewBox's user units to the viewport's, whose origin is 0,0.
 * SVG 2, "Computing the equivalent transform of an SVG viewport". The box must have a positive size.
 */
export function viewportTransform(box: ViewBox, viewport: ViewportSize, { align, slice }: AspectRatio): Matrix {
  let scaleX = viewport.width / box.width;
  let scaleY = viewport.height / box.height;
  if (align) scaleX = scaleY = slice ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
  const roomX = align ? (viewport.width - box.width * scaleX) * align.x : 0;
  const roomY = align ? (viewport.height - box.height * scaleY) * align.y : 0;
  return { a: scaleX, b: 0, c: 0, d: scaleY, e: roomX - box.x * scaleX, f: roomY - box.y * scaleY };
}

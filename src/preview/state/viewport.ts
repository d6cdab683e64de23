/** How the sheet lies in the window: a scale and a shift. Sheet coordinates in mm, window coordinates in CSS pixels. */
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply, IDENTITY, invert } from '../../geometry/base/matrix';
import type { Box } from '../../geometry/base/polygon-types';

export interface Viewport {
  /** CSS pixels for one mm. */
  readonly scale: number;
  /** Where the sheet's origin lies in the window. */
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** CSS pixels to the mm when a sheet is shown at its own size, on an unknown screen: CSS 2.1, 4.3.2. */
export const TRUE_SIZE = 96 / 25.4;

const MIN_SCALE = 0.05;
const MAX_SCALE = 2000;

export const toWindow = (view: Viewport, { x, y }: Point): Point => ({
  x: view.x + x * view.scale,
  y: view.y + y * view.scale,
});

export const toSheet = (view: Viewport, { x, y }: Point): Point => ({
  x: (x - view.x) / view.scale,
  y: (y - view.y) / view.scale,
});

/**
 * The box around all that the window shows.
 * @param place from the mm that are asked for to those of the picture
 */
export function viewportBox(view: Viewport, { width, height }: Size, place: Matrix = IDENTITY): Box {
  const back = invert(place) ?? IDENTITY;
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: 0, y: height },
    { x: width, y: height },
  ].map((corner) => apply(back, toSheet(view, corner)));
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}

/** CSS pixels that stay free between the edges of the window and a picture that is shown whole. */
export interface Inset {
  readonly side: number;
  readonly top: number;
  readonly bottom: number;
}

/** A small rim; below room for the scale bar, where the window is not too low for that. */
export function insetFor({ height }: Size): Inset {
  return height < 240 ? { side: 8, top: 8, bottom: 8 } : { side: 12, top: 12, bottom: 32 };
}

/** The whole box in the middle of the window's room, as large as it goes. */
export function fit(window: Size, box: Box, { side, top, bottom }: Inset): Viewport {
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const room = { width: Math.max(window.width - 2 * side, 1), height: Math.max(window.height - top - bottom, 1) };
  const scale = clampScale(width > 0 && height > 0 ? Math.min(room.width / width, room.height / height) : TRUE_SIZE);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  // Where nothing else is in the way it stands in the very middle.
  const lower = Math.max((bottom - top) / 2 - (room.height - height * scale) / 2, 0);
  return pan(centreOn(window, middle, scale), 0, -lower);
}

export function centreOn(window: Size, point: Point, scale: number): Viewport {
  return { scale, x: window.width / 2 - point.x * scale, y: window.height / 2 - point.y * scale };
}

/** @param at the place of the window that keeps its place on the sheet */
export function zoomAt(view: Viewport, at: Point, factor: number): Viewport {
  const scale = clampScale(view.scale * factor);
  const ratio = scale / view.scale;
  return { scale, x: at.x - (at.x - view.x) * ratio, y: at.y - (at.y - view.y) * ratio };
}

export const pan = (view: Viewport, dx: number, dy: number): Viewport => ({ ...view, x: view.x + dx, y: view.y + dy });

/** The least shift that brings a point of the sheet inside the window, `margin` pixels from its edges. */
export function bringIntoView(view: Viewport, point: Point, window: Size, margin: number): Viewport {
  const { x, y } = toWindow(view, point);
  return pan(view, shiftInto(x, margin, window.width - margin), shiftInto(y, margin, window.height - margin));
}

function shiftInto(value: number, least: number, most: number): number {
  if (least > most) return (least + most) / 2 - value;
  return Math.min(Math.max(value, least), most) - value;
}

const clampScale = (scale: number): number => Math.min(Math.max(scale, MIN_SCALE), MAX_SCALE);

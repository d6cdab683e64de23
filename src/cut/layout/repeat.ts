/**
 * A sheet that is sprayed again and again along a wall: register holes one step apart, so that those at the near side fall on
 * what the last print left of those at the far side, and whether the pattern goes on where one print meets the next. mm.
 */
import { limitsOf } from '../../config/limits';
import { type Config, DEFAULT_CONFIG } from '../../config/types';
import type { Box, Region } from '../../geometry/base/polygon-types';
import { growBox } from '../../geometry/base/ring';
import { areaOf, clipToBox, difference } from '../../geometry/boolean/index';
import { transformRegion } from '../../geometry/polygon/transform';
import type { Sheet } from '../../sheet/types';
import { isFree } from '../marking/label';
import { boxOfHole, type RoundHole } from '../round-holes';

export interface Repeat {
  /** To the right, or down. */
  readonly axis: 'x' | 'y';
  /** mm from one print to the next. */
  readonly step: number;
}

/** mm: a pencil goes through, and the eye finds the mark under it. Common practice, no source. */
export const HOLE_RADIUS = 1.5;

/** mm: places for holes are tried at every one. */
const GRID = 1;

/** mm beside the joint within which two edges are compared, and how much of them may differ unseen. */
const [STRIP, UNSEEN] = [0.05, 0.2] as const;

/**
 * Two holes at the near side, as far apart as there is room, and the two that lie a step farther; they are free on every
 * sheet of the stack, so that each sheet can be laid by them.
 * @returns undefined where there is no room: the sheets then need a margin
 */
export function repeatHoles(
  sheets: readonly Sheet[],
  { axis, step }: Repeat,
  config: Config = DEFAULT_CONFIG,
): RoundHole[] | undefined {
  const frame = commonFrame(sheets);
  if (!frame) return undefined;
  const clearance = limitsOf(config).bridge;
  const room = growBox(frame, -(HOLE_RADIUS + clearance));
  const [from, to, low, high] =
    axis === 'x'
      ? [room.minX, room.maxX - step, room.minY, room.maxY]
      : [room.minY, room.maxY - step, room.minX, room.maxX];
  const holeAt = (along: number, across: number): RoundHole => ({
    centre: axis === 'x' ? { x: along, y: across } : { x: across, y: along },
    radius: HOLE_RADIUS,
  });
  const isRoom = (along: number, across: number): boolean =>
    [along, along + step].every((place) =>
      sheets.every((sheet) => isFree(sheet, boxOfHole(holeAt(place, across)), clearance)),
    );
  let best: { readonly along: number; readonly first: number; readonly last: number } | undefined;
  for (let along = from; along <= to + 1e-9; along += GRID) {
    const across = placesBetween(low, high);
    const first = across.find((place) => isRoom(along, place));
    const last = across.findLast((place) => isRoom(along, place));
    if (first === undefined || last === undefined || last - first <= 2 * (HOLE_RADIUS + clearance)) continue;
    if (!best || last - first > best.last - best.first + 1e-9) best = { along, first, last };
  }
  if (!best) return undefined;
  const { along, first, last } = best;
  return [along, along + step].flatMap((place) => [holeAt(place, first), holeAt(place, last)]);
}

/** What all sheets have. */
function commonFrame(sheets: readonly Sheet[]): Box | undefined {
  if (sheets.length === 0) return undefined;
  const [frames, most, least] = [sheets.map(({ frame }) => frame), Math.max, Math.min];
  return {
    minX: most(...frames.map(({ minX }) => minX)),
    minY: most(...frames.map(({ minY }) => minY)),
    maxX: least(...frames.map(({ maxX }) => maxX)),
    maxY: least(...frames.map(({ maxY }) => maxY)),
  };
}

function placesBetween(low: number, high: number): number[] {
  const count = Math.max(0, Math.floor((high - low) / GRID + 1e-9) + 1);
  return Array.from({ length: count }, (_, i) => low + i * GRID);
}

/**
 * How much of a sheet's paint does not go on where the next print begins. Where prints lie over each other, mm² that only one
 * of them paints; where they meet edge to edge, mm of the edge.
 * @returns 0 where the pattern closes, and where prints do not reach each other
 */
export function mismatchAfter({ openings, drawing: { width, height } }: Sheet, { axis, step }: Repeat): number {
  const [length, across] = axis === 'x' ? [width, height] : [height, width];
  const band = (from: number, to: number): Box =>
    axis === 'x' ? { minX: from, maxX: to, minY: 0, maxY: across } : { minX: 0, maxX: across, minY: from, maxY: to };
  const over = length - step;
  if (over < -1e-6) return 0;
  if (over > STRIP) {
    const next = moved(clipToBox(openings, band(0, over)), axis, 1, step);
    return settled(unlike(clipToBox(openings, band(step, length)), next));
  }
  // Edge to edge: a narrow strip of the one, mirrored at the joint, is laid over a strip of the other.
  const before = moved(clipToBox(openings, band(step - STRIP, step)), axis, -1, step);
  return settled(unlike(before, clipToBox(openings, band(0, STRIP))) / STRIP);
}

function settled(amount: number): number {
  return amount < UNSEEN ? 0 : amount;
}

function unlike(a: Region, b: Region): number {
  return areaOf(difference(a, b)) + areaOf(difference(b, a));
}

/** Each place along the axis times `factor`, plus `by`. */
function moved(region: Region, axis: 'x' | 'y', factor: 1 | -1, by: number): Region {
  const still = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
  return transformRegion(region, axis === 'x' ? { ...still, a: factor, e: by } : { ...still, d: factor, f: by });
}

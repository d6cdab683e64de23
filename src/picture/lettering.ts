/** How large notes are written, and how the measure of a narrow place is drawn. */
import type { Point } from '../geometry/base/curve-types';
import type { Box } from '../geometry/base/polygon-types';

/** The height of letters in mm on a picture that shows the box. */
export function lettering({ minX, minY, maxX, maxY }: Box): number {
  return Math.max(Math.hypot(maxX - minX, maxY - minY) / 56, 0.1);
}

export interface MeasureLines {
  /** Path data: the line across, and the two arrows. */
  readonly lines: string;
  /** Where the writing begins, at half its height. */
  readonly label: Point;
}

/**
 * A narrow distance as on a working drawing: arrows from outside point at its two ends, and the measure stands at the
 * end of the longer one.
 * @param size height of the letters, in the unit of the points
 */
export function measureLines(from: Point, to: Point, size: number): MeasureLines {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 1, y: 0 };
  // The writing stands at the right end, where that is told from the left one.
  const [start, end, way] = along.x < 0 ? [to, from, { x: -along.x, y: -along.y }] : [from, to, along];
  const place = ({ x, y }: Point, forth: number, aside = 0): Point => ({
    x: x + way.x * forth - way.y * aside,
    y: y + way.y * forth + way.x * aside,
  });
  const [head, wing, reach] = [size * 0.5, size * 0.22, size * 1.6];
  const arrow = (tip: Point, side: 1 | -1) =>
    `M${text(place(tip, side * head, wing))}L${text(tip)}L${text(place(tip, side * head, -wing))}`;
  const lines = `M${text(place(start, -reach * 0.7))}L${text(place(end, reach))}${arrow(start, -1)}${arrow(end, 1)}`;
  return { lines, label: place(end, reach + size * 0.35) };
}

const text = ({ x, y }: Point): string => `${Number(x.toFixed(3))} ${Number(y.toFixed(3))}`;

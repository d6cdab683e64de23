/** Which shapes stand side by side as letters do. All by their boxes in a frame, mm, y upwards. */
import { checkpoint } from '../../../base/checkpoint';
import { defined } from '../../../base/defined';
import type { Box } from '../../../geometry/base/polygon-types';

/** How alike shapes must be to stand in one row. All are common practice, no source. */
export interface RowRules {
  /** How much taller one may be than its neighbour. */
  readonly heights: number;
  /** How far apart neighbours may be, in heights of the taller one. */
  readonly gap: number;
  /** How far neighbours may reach over each other sideways, in widths of the narrower one: slanted letters do. */
  readonly reach: number;
}

/** So many make a row. */
const LEAST = 3;
/** Neighbours have so much of the shorter one's height in common. */
const SHARED_HEIGHT = 0.5;
/** So much of a row stands on one line, or hangs from one. */
const ON_LINE = 0.6;
/** Heights of the row's tallest: round letters overshoot the line by less. */
const LINE = 0.08;

/** The rows among some boxes, as lists of their numbers from left to right. */
export function standingRows(boxes: readonly Box[], rules: RowRules): number[][] {
  const order = boxes.map((_, i) => i).sort((a, b) => defined(boxes[a]).minX - defined(boxes[b]).minX);
  const rows: number[][] = [];
  const widest = 4;
  for (const number of order) {
    checkpoint(rows.length);
    const box = defined(boxes[number]);
    if (!(box.maxX > box.minX && box.maxY > box.minY)) continue;
    const row = rows.find((members) =>
      members.slice(-widest).some((member) => areNeighbours(defined(boxes[member]), box, rules)),
    );
    if (row) row.push(number);
    else rows.push([number]);
  }
  return rows.filter((row) => row.length >= LEAST && shareLine(row.map((number) => defined(boxes[number]))));
}

function areNeighbours(left: Box, right: Box, rules: RowRules): boolean {
  const heights = [left.maxY - left.minY, right.maxY - right.minY];
  const [shorter, taller] = [Math.min(...heights), Math.max(...heights)];
  const narrower = Math.min(left.maxX - left.minX, right.maxX - right.minX);
  const common = Math.min(left.maxY, right.maxY) - Math.max(left.minY, right.minY);
  const gap = right.minX - left.maxX;
  return (
    taller <= rules.heights * shorter &&
    common >= SHARED_HEIGHT * shorter &&
    gap <= rules.gap * taller &&
    gap >= -rules.reach * narrower
  );
}

/** Whether most of them have their lower ends, their upper ends or their middles on one level. */
function shareLine(boxes: readonly Box[]): boolean {
  const slack = LINE * Math.max(...boxes.map(({ minY, maxY }) => maxY - minY));
  const levels = [boxes.map(({ minY }) => minY), boxes.map(({ maxY }) => maxY)];
  return levels.some((ends) => {
    const sorted = [...ends].sort((a, b) => a - b);
    const within = sorted.map((end, i) => sorted.slice(i).filter((other) => other - end <= 2 * slack).length);
    return Math.max(...within) >= Math.max(2, ON_LINE * boxes.length);
  });
}
